import { count, type Issue, length, type QuantityValue, share } from "../../errors/issue.js";
import { materialDensity } from "../../materials/material-density.js";
import { suggestMaterials } from "../../materials/materials.js";
import { lengthIssues, positiveIssues } from "../number-issues.js";
import type { Banded } from "../shop.js";
import { type MixedStackSpec, type StackBar, stackRestacks } from "./spec.js";

const wrong = (code: string, path: string, text: string, value: QuantityValue): Issue => ({
  code,
  path,
  text,
  values: { value },
});

/**
 * What is wrong with a stack of two or more steels; nothing where it can be worked with. Paths begin with `stack`.
 *
 * @example
 * const core = { steel: { name: "1095" }, thickness: 0.3 };
 * const stack = { kind: "clad", core, cladding: core, width: 30 } as const;
 * checkMixedStack(stack, 0.2).map(({ code }) => code); // ["bar-lost-to-cleaning"]
 *
 * @param cleaning - The shop's cleaning of a face on the high side, mm, where the stack says nothing.
 */
export function checkMixedStack(stack: MixedStackSpec, cleaning: number): readonly Issue[] {
  const clean = stack.cleaning?.high ?? cleaning;
  const bars: readonly (readonly [path: string, bar: StackBar, cleanedFaces: number])[] =
    stack.kind === "clad"
      ? [
          ["stack.core", stack.core, 2],
          ["stack.cladding", stack.cladding, 1],
        ]
      : stack.layers.map((bar, i) => ["stack.layers", bar, i === 0 || i === stack.layers.length - 1 ? 1 : 2]);
  return unlike([
    ...positive("stack.width", stack.width),
    ...bars.flatMap(([path, bar, faces]) => [
      ...steelIssues(`${path}.steel`, bar),
      ...positive(`${path}.thickness`, bar.thickness),
      ...(bar.thickness > 0 && bar.thickness <= faces * clean
        ? [
            wrong(
              "bar-lost-to-cleaning",
              `${path}.thickness`,
              "Nothing is left of a bar {value} thick when its faces are cleaned. Clean less, or take a thicker bar.",
              length(bar.thickness),
            ),
          ]
        : []),
    ]),
    ...(bars.length < 2 && stack.kind === "pattern-welded"
      ? [
          wrong(
            "one-layer",
            "stack.layers",
            "A stack needs two bars or more, not {value}.",
            count(bars.length),
          ),
        ]
      : []),
    ...stackRestacks(stack).flatMap(({ pieces, bar }, i) => [
      ...(Number.isInteger(pieces) && pieces >= 2
        ? []
        : [
            wrong(
              "not-a-count",
              `stack.restacks[${i}]`,
              "{value} has to be a whole number, 2 or more.",
              count(pieces),
            ),
          ]),
      ...(bar === undefined ? [] : section(`stack.restacks[${i}].bar`, bar)),
    ]),
    ...cleaningIssues(stack.cleaning),
    ...yieldIssues(stack.yields, stackRestacks(stack).length + 1),
    ...(stack.lastBar === undefined ? [] : section("stack.lastBar", stack.lastBar)),
    ...(stack.kind === "pattern-welded" ? grooveIssues(stack) : []),
  ]);
}

/** One issue of a kind at a place is enough. */
function unlike(issues: readonly Issue[]): readonly Issue[] {
  return issues.filter(
    ({ code, path }, i) => issues.findIndex((other) => other.code === code && other.path === path) === i,
  );
}

const positive = (path: string, value: number): Issue[] =>
  positiveIssues(path, value, length, "length-not-positive");

function section(path: string, { width, thickness }: { width: number; thickness: number }): Issue[] {
  return [...positive(`${path}.width`, width), ...positive(`${path}.thickness`, thickness)];
}

function steelIssues(path: string, { steel }: StackBar): Issue[] {
  if (materialDensity(steel) !== undefined) return [];
  const near = suggestMaterials(steel.name, 2, "steel");
  return [
    {
      code: "unknown-material",
      path,
      text: `{name} is not in the table of materials.${near.length > 0 ? " Did you mean {near}? If not, give" : " Give"} its own density, like { name: {name}, density: 7.85 g/cm3 }.`,
      values: { name: steel.name, near: near.join(" or ") },
    },
  ];
}

function cleaningIssues(cleaning: Banded | undefined): Issue[] {
  if (cleaning === undefined) return [];
  const { value, low, high } = cleaning;
  return [value, low, high].flatMap((each) => lengthIssues("stack.cleaning", each));
}

function yieldIssues(yields: readonly Banded[] | undefined, welds: number): Issue[] {
  if (yields === undefined) return [];
  const range = yields.flatMap(({ value, low, high }) =>
    [value, low, high].some((each) => !(each > 0 && each <= 1))
      ? [
          wrong(
            "share-out-of-range",
            "stack.yield",
            "A weld cannot leave {value} of the steel; write what is left, such as 85 %.",
            share(value),
          ),
        ]
      : [],
  );
  if (yields.length === 1 || yields.length === welds) return range;
  return [
    ...range,
    {
      code: "yields-and-welds",
      path: "stack.yield",
      text: `{given} yields are given for {welds} ${welds === 1 ? "weld. Give one." : "welds. Give one for all, or one for each."}`,
      values: { given: count(yields.length), welds: count(welds) },
    },
  ];
}

function grooveIssues({ grooves, lastBar }: Extract<MixedStackSpec, { kind: "pattern-welded" }>): Issue[] {
  if (grooves === undefined) return [];
  if ("share" in grooves) {
    return grooves.share >= 0 && grooves.share < 1
      ? []
      : [
          wrong(
            "share-out-of-range",
            "stack.grooves.share",
            "Grooves cannot take {value} of the bar.",
            share(grooves.share),
          ),
        ];
  }
  const { depth, width, form } = grooves;
  return [
    ...positive("stack.grooves.depth", depth),
    ...positive("stack.grooves.width", width),
    ...(form === "round" && depth > width / 2
      ? [
          wrong(
            "groove-too-deep",
            "stack.grooves.depth",
            "A round groove cannot be deeper than half its width, {value}. Write its form, or another size.",
            length(width / 2),
          ),
        ]
      : []),
    ...(lastBar !== undefined && depth >= lastBar.thickness
      ? [
          wrong(
            "groove-too-deep",
            "stack.grooves.depth",
            "A groove cannot be as deep as the bar is thick, {value}.",
            length(lastBar.thickness),
          ),
        ]
      : []),
    ...("count" in grooves && !(Number.isInteger(grooves.count) && grooves.count >= 1)
      ? [
          wrong(
            "not-a-count",
            "stack.grooves.count",
            "{value} has to be a whole number, 1 or more.",
            count(grooves.count),
          ),
        ]
      : []),
    ...("faces" in grooves && ![1, 2].includes(grooves.faces)
      ? [wrong("not-a-count", "stack.grooves.faces", "{value} has to be 1 or 2.", count(grooves.faces))]
      : []),
    ...("pitch" in grooves ? positive("stack.grooves.pitch", grooves.pitch) : []),
    ...("pitch" in grooves && grooves.pitch < width
      ? [
          wrong(
            "grooves-overlap",
            "stack.grooves.pitch",
            "Grooves run into each other: they have to be at least their width, {value}, apart.",
            length(width),
          ),
        ]
      : []),
  ];
}
