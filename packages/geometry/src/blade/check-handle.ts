import { type Issue, length, mass, type QuantityValue, share } from "../errors/issue.js";
import { findMaterial } from "../materials/materials.js";
import { leastOf } from "./handle-law.js";
import { handleMaterials } from "./handle-materials.js";
import type { BlockSpec, HandleBlockSpec, HandleSpec, KnifeSpec, LawSpec, MaterialSpec } from "./spec.js";

/** Rounding of stated sizes, mm. */
const ROUNDING = 1e-9;

/** Green wood holds up to about twice its dry mass in water (common practice, no source); more is a slip of the unit. */
const MOST_MOISTURE = 2;

/**
 * Checks every number of the handle that can be judged without the outline, in the order of the file.
 *
 * @example
 * checkHandleNumbers(spec); // []
 */
export function checkHandleNumbers(spec: KnifeSpec): Issue[] {
  const { handle } = spec;
  if (handle === undefined) return [];
  return [
    ...checkForm(handle, spec.tang.form),
    ...checkSlabs(handle),
    ...checkBlock(handle.block),
    ...blocksOf(handle).flatMap(([path, block]) => checkFitting(path, block)),
    ...handleMaterials(handle).flatMap(([path, material]) => checkMaterial(path, material)),
    ...(handle.parts ?? []).flatMap((part, i) => [
      ...sizeIssues(`handle.parts[${i}].mass`, part.mass, "zero-or-more", mass),
      ...sizeIssues(`handle.parts[${i}].at`, part.at.x, "any"),
      ...sizeIssues(`handle.parts[${i}].at`, part.at.y, "any"),
    ]),
  ];
}

/** Bolsters, guard and pommel with their places in the file. */
function blocksOf(handle: HandleSpec): readonly (readonly [path: string, block: BlockSpec])[] {
  const { bolsters = [], guard, pommel } = handle;
  return [
    ...bolsters.map((bolster, i) => [`handle.bolsters[${i}]`, bolster] as const),
    ...(guard === undefined ? [] : [["handle.guard", guard] as const]),
    ...(pommel === undefined ? [] : [["handle.pommel", pommel] as const]),
  ];
}

function checkForm({ slabs, liners, block }: HandleSpec, form: KnifeSpec["tang"]["form"]): Issue[] {
  const issues: Issue[] = [];
  const add = (code: string, path: string, text: string): void => {
    issues.push({ code, path, text, values: { form } });
  };
  if (slabs !== undefined && form !== "full") {
    add(
      "slabs-on-hidden-tang",
      "handle.slabs",
      "Slabs lie on a full tang, and this one is {form}. Give the handle as a block, or make the tang full.",
    );
  }
  if (block !== undefined && form === "full") {
    add(
      "block-on-full-tang",
      "handle.block",
      "A handle block goes around a hidden or a through tang, and this one is {form}. Give slabs, or hide the tang.",
    );
  }
  if (liners !== undefined && slabs === undefined) {
    add(
      "liners-without-slabs",
      "handle.liners",
      "Liners lie between tang and slabs, and there are no slabs. Give them, or leave the liners out.",
    );
  }
  return issues;
}

function checkSlabs({ slabs, liners }: HandleSpec): Issue[] {
  const issues = sizeIssues("handle.liners.thickness", liners?.thickness, "positive");
  if (slabs === undefined) return issues;
  issues.push(...lawIssues("handle.slabs.thickness", slabs.thickness));
  issues.push(...sizeIssues("handle.slabs.edgeRadius", slabs.edgeRadius, "zero-or-more"));
  const thinnest = leastOf(slabs.thickness);
  if (slabs.edgeRadius !== undefined && slabs.edgeRadius > thinnest + ROUNDING) {
    issues.push({
      code: "radius-over-slab",
      path: "handle.slabs.edgeRadius",
      text: "An edge radius of {radius} is more than the slab's thickness of {thickness} at its thinnest. Make it smaller.",
      values: { radius: length(slabs.edgeRadius), thickness: length(thinnest) },
    });
  }
  return issues;
}

function checkBlock(block: HandleBlockSpec | undefined): Issue[] {
  if (block === undefined) return [];
  const path = "handle.block";
  const issues = [
    ...sizeIssues(`${path}.length`, block.length, "positive"),
    ...lawIssues(`${path}.height`, block.height),
    ...lawIssues(`${path}.width`, block.width),
    ...sizeIssues(`${path}.cornerRadius`, block.cornerRadius, "zero-or-more"),
    ...sizeIssues(`${path}.centre`, block.centre, "any"),
  ];
  const corner = `${path}.cornerRadius`;
  if (block.section === "oval" && block.cornerRadius !== undefined) {
    issues.push({
      code: "corner-radius-unused",
      path: corner,
      text: "An oval handle has no corners to round. Leave this out, or make the section rounded.",
    });
  }
  if (block.section === "rounded" && block.cornerRadius === undefined) {
    issues.push({
      code: "corner-radius-missing",
      path: corner,
      text: "A rounded handle needs the radius of its corners; 0 leaves them square.",
    });
  }
  const most = Math.min(leastOf(block.height), leastOf(block.width)) / 2;
  if (block.section !== "oval" && block.cornerRadius !== undefined && block.cornerRadius > most + ROUNDING) {
    issues.push({
      code: "corner-over-handle",
      path: corner,
      text: "Corners of {radius} do not fit a handle that is {size} at its smallest; {most} is the most.",
      values: { radius: length(block.cornerRadius), size: length(2 * most), most: length(most) },
    });
  }
  return issues;
}

function checkFitting(path: string, block: BlockSpec): Issue[] {
  return [
    ...sizeIssues(`${path}.at`, block.at, "any"),
    ...(["length", "height", "width"] as const).flatMap((key) =>
      sizeIssues(`${path}.${key}`, block[key], "positive"),
    ),
    ...sizeIssues(`${path}.centre`, block.centre, "any"),
  ];
}

function checkMaterial(path: string, material: MaterialSpec): Issue[] {
  const { name, density, moisture } = material;
  const issues = sizeIssues(`${path}.density`, density, "positive", share);
  if (moisture === undefined) return issues;
  issues.push(...sizeIssues(`${path}.moisture`, moisture, "zero-or-more", share));
  if (moisture > MOST_MOISTURE) {
    issues.push({
      code: "moisture-range",
      path: `${path}.moisture`,
      text: "A moisture of {moisture} is more than wood holds. Give it as a share of the dry wood, usually 6 % to 15 %.",
      values: { moisture: share(moisture) },
    });
  }
  if (density !== undefined) {
    issues.push({
      code: "moisture-and-density",
      path: `${path}.moisture`,
      text: "The density is given, so the moisture would change nothing. Keep one of the two.",
    });
  } else if (findMaterial(name)?.kind !== "wood" && findMaterial(name) !== undefined) {
    issues.push({
      code: "moisture-not-wood",
      path: `${path}.moisture`,
      text: "{name} is not a wood of the table, so its moisture changes nothing. Leave it out.",
      values: { name },
    });
  }
  return issues;
}

type Sign = "positive" | "zero-or-more" | "any";

function lawIssues(path: string, law: LawSpec): Issue[] {
  if (typeof law === "number") return sizeIssues(path, law, "positive");
  if (law.length === 0) {
    return [
      {
        code: "no-stations",
        path,
        text: "This needs at least one station, for example { at: handle, is: 9 mm }.",
      },
    ];
  }
  return law.flatMap(({ is }, i) => sizeIssues(`${path}[${i}].is`, is, "positive"));
}

function sizeIssues(
  path: string,
  value: number | undefined,
  sign: Sign,
  show: (value: number) => QuantityValue = length,
): Issue[] {
  if (value === undefined) return [];
  const values = { value: show(value), least: show(0) };
  if (!Number.isFinite(value)) {
    return [{ code: "not-a-number", path, text: "This is not a number that can be measured." }];
  }
  if (sign === "positive" && !(value > 0)) {
    const text = "{value} is too small here: it must be more than {least}.";
    return [{ code: "not-positive", path, text, values }];
  }
  if (sign === "zero-or-more" && !(value >= 0)) {
    const text = "{value} is too small here: it must be {least} or more.";
    return [{ code: "negative", path, text, values }];
  }
  return [];
}
