import {
  ANY_KNIFE,
  FINDING_LIMIT_NAMES,
  FINDING_LIMITS,
  type FindingLimitName,
  KNIFE_TYPE_NAMES,
  type KnifeTypeName,
  type Quantity,
  USUAL_QUANTITIES,
  type UsualName,
} from "@scantling/geometry";
import { type FileUnits, formatQuantity } from "@scantling/geometry/units";
import { z } from "zod";
import { plainNumber, type QuantityRule, quantity } from "./fields.js";
import { GROUP } from "./shared-fields.js";

/** What a limit of each kind may be; inside units. */
const RANGES = {
  length: { above: 0 },
  angle: { above: 0, below: Math.PI / 2 },
  share: { from: 0, to: 1 },
  temperature: { from: 0, to: 1400 },
  mass: { above: 0 },
} as const satisfies Partial<Record<Quantity, Partial<QuantityRule>>>;

const isKind = (kind: Quantity): kind is keyof typeof RANGES => Object.hasOwn(RANGES, kind);

function limitField(name: FindingLimitName, units: FileUnits) {
  const { quantity: kind, value, about } = FINDING_LIMITS[name];
  // What is nothing as published may be written so too.
  const range = isKind(kind) && (value === 0 ? { from: 0 } : RANGES[kind]);
  return isKind(kind)
    ? quantity(kind, units, { ...range, tolerance: false, about }).optional()
    : plainNumber(about, name === "wheelRoom" ? 1 : 0).optional();
}

type LimitField = ReturnType<typeof limitField>;

/** Limits that belong together: the first is no greater than the second. */
const RISING: readonly (readonly [FindingLimitName, FindingLimitName])[] = [
  ["holeEdgeStop", "holeEdgeGood"],
  ["quenchThinSpine", "quenchThickSpine"],
  ["stopError", "stopFar"],
  ["dryMoisture", "greenMoisture"],
  ["lowestTemper", "hottestTemper"],
];

/** The group `findings` of the shop's limits: where a value becomes unwise, each by its name in the published table. */
export function findingLimitFields(units: FileUnits) {
  const fields = Object.fromEntries(
    FINDING_LIMIT_NAMES.map((name) => [name, limitField(name, units)]),
  ) as Record<FindingLimitName, LimitField>;
  return z
    .strictObject(fields, { error: GROUP })
    .superRefine((given, ctx) => {
      for (const [low, high] of RISING) {
        const [least, most] = [low, high].map((name) => limitOf(given[name], name));
        if (least === undefined || most === undefined || least <= most) continue;
        ctx.addIssue({
          code: "custom",
          path: [given[low] === undefined ? high : low],
          message: `${low} must not be greater than ${high}`,
          params: { code: "limits-swapped" },
        });
      }
    })
    .meta({ description: "Where a value becomes unwise; docs/limits.md lists every name with its default" });
}

const limitOf = (given: number | { readonly value: number } | undefined, name: FindingLimitName): number => {
  return given === undefined ? FINDING_LIMITS[name].value : numberOf(given);
};

const numberOf = (given: number | { readonly value: number }): number =>
  typeof given === "number" ? given : given.value;

const ABOUT_USUAL: Readonly<Record<UsualName, string>> = {
  length: "Edge, heel to tip",
  height: "Height above the heel",
  spine: "Spine at the heel",
  edge: "Edge at the heel before sharpening",
  angle: "Sharpening angle per side",
  hardness: "HRC",
  mass: "Mass of the whole knife",
  balance: "Balance ahead of the heel",
};

/** A range that lies more than so many times outside what any knife has is meant for something else. */
const SENSELESS = 2;

/** What is complained of a range that no knife lies in: another unit, or another name, is meant. */
function senselessRange(name: UsualName, low: number, high: number, units: FileUnits): string | undefined {
  const any = ANY_KNIFE[name];
  const over = low > SENSELESS * any.high;
  const under = high < (any.low > 0 ? any.low / SENSELESS : SENSELESS * any.low);
  if (!over && !under) return undefined;
  const show = (value: number): string => formatQuantity({ quantity: USUAL_QUANTITIES[name], value }, units);
  const other = over && name === "edge" ? "; the length of the edge is called length" : "";
  const what = ABOUT_USUAL[name].replace(/^\p{Lu}(?=\p{Ll})/u, (first) => first.toLowerCase());
  return `is no range of a knife: ${what} is ${show(any.low)} to ${show(any.high)} at the most${other}. Is the unit right?`;
}

/** The group `types` of the shop's limits: what types of knives usually measure, low and high. */
export function typeRangeFields(units: FileUnits) {
  const side = (name: UsualName) => {
    const kind = USUAL_QUANTITIES[name];
    const about = ABOUT_USUAL[name];
    return kind === "length" || kind === "mass" || kind === "angle"
      ? quantity(kind, units, { tolerance: false, about })
      : plainNumber(about, 0);
  };
  const range = (name: UsualName) =>
    z
      .tuple([side(name), side(name)], { error: "needs two values, [low, high]" })
      .refine(([low, high]) => numberOf(low) <= numberOf(high), {
        error: "has the greater value first; write [low, high]",
        params: { code: "limits-swapped" },
      })
      .superRefine(([low, high], ctx) => {
        const words = senselessRange(name, numberOf(low), numberOf(high), units);
        if (words !== undefined)
          ctx.addIssue({ code: "custom", message: words, params: { code: "limits-senseless" } });
      })
      .transform(([low, high]) => ({ low, high }))
      .meta({ description: `${ABOUT_USUAL[name]}: from and to` })
      .optional();
  const names = Object.keys(USUAL_QUANTITIES) as readonly UsualName[];
  const type = z.strictObject(
    Object.fromEntries(names.map((name) => [name, range(name)])) as Record<
      UsualName,
      ReturnType<typeof range>
    >,
    { error: "needs a group of ranges, such as { spine: [2, 3.5] }" },
  );
  const optional = type.optional();
  return z
    .strictObject(
      Object.fromEntries(KNIFE_TYPE_NAMES.map((name) => [name, optional])) as Record<
        KnifeTypeName,
        typeof optional
      >,
      { error: GROUP },
    )
    .meta({ description: "What types of knives usually measure, where this shop thinks otherwise" });
}
