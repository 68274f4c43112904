import { SpecError } from "../errors/errors.js";
import { findMaterial } from "../materials/materials.js";
import { checkNumbers } from "./check-numbers.js";
import { type Knife, rebuildKnife } from "./knife.js";
import { measureBody } from "./measure-body.js";
import { VOLUME, X } from "./moments.js";
import { profileStrips } from "./profile-strips.js";
import type { KnifeSpec } from "./spec.js";
import { changedAt, readAt } from "./spec-path.js";
import { SteelBody } from "./steel-body.js";
import { knifeParts } from "./weigh-knife.js";
import { weighMoments } from "./weight.js";

/**
 * A tolerance on one input: 95 % limits above and below, normal, independent of the others. The path is the input's place
 * in the knife's description; a path to a whole law (`blade.thickness`) moves all its stations together.
 */
export interface InputTolerance {
  readonly path: string;
  readonly plus: number;
  readonly minus: number;
}

/** Tolerances that hold where the file gives none; 95 % limits, mm and shares. */
export interface ToleranceDefaults {
  /** Full thickness left from the hammer. */
  readonly forgedThickness: number;
  /** Full thickness that is ground, and thickness of slabs. */
  readonly groundThickness: number;
  /** Thickness of the edge before sharpening. */
  readonly edgeThickness: number;
  /** Each side of the outline. */
  readonly outline: number;
  /** Density of steel, as a share. */
  readonly steelDensity: number;
  /** Density of handle materials, as a share, where their table row gives no band of its own. */
  readonly handleDensity: number;
}

/** Basis: common practice, no source; the shop file can change each. */
export const DEFAULT_TOLERANCES: ToleranceDefaults = {
  forgedThickness: 0.2,
  groundThickness: 0.1,
  edgeThickness: 0.05,
  outline: 0.5,
  steelDensity: 0.01,
  handleDensity: 0.1,
};

export interface WeightInterval {
  /** 95 % interval of the whole knife's mass, g. */
  readonly massInterval: readonly [number, number];
  /** 95 % interval of the balance point from the heel, mm. */
  readonly balanceInterval: readonly [number, number];
  /** Share of each input in the variance of the mass, largest first. */
  readonly contributions: readonly { readonly input: string; readonly share: number }[];
}

/** What is moved together: one number, a whole law, or the stations of a law that have no tolerance of their own. */
interface MovedInput {
  readonly input: string;
  readonly paths: readonly string[];
  readonly plus: number;
  readonly minus: number;
}

interface Reading {
  readonly mass: number;
  readonly balance: number;
}

/**
 * 95 % intervals of mass and balance by propagation: each input is moved to its two limits while the others stay, and the
 * differences are added in squares.
 *
 * @param tolerances - those given in the file; they take the place of the defaults for the same input.
 */
export function weighInterval(
  spec: KnifeSpec,
  tolerances: readonly InputTolerance[],
  defaults: ToleranceDefaults = DEFAULT_TOLERANCES,
): WeightInterval {
  const knife = rebuildKnife(spec);
  // From here on every material carries its density, so that it can be moved like any other number.
  const filled = knife.spec;
  const middle = read(knife);
  const given = tolerances.map(({ path, plus, minus }) => ({ input: path, paths: [path], plus, minus }));
  const inputs = [...given, ...defaultInputs(filled, knife, tolerances, defaults)].filter(
    ({ plus, minus }) => plus > 0 || minus > 0,
  );
  const squares = { massUp: 0, massDown: 0, balanceUp: 0, balanceDown: 0 };
  const contributions: { input: string; share: number }[] = [];
  const take = (input: string, high: Reading, low: Reading): void => {
    // Both limits may move the mass the same way (a hole at the thickest place): then nothing goes the other way.
    const up = Math.max(middle.mass, high.mass, low.mass) - middle.mass;
    const down = middle.mass - Math.min(middle.mass, high.mass, low.mass);
    squares.massUp += up * up;
    squares.massDown += down * down;
    squares.balanceUp += (Math.max(middle.balance, high.balance, low.balance) - middle.balance) ** 2;
    squares.balanceDown += (middle.balance - Math.min(middle.balance, high.balance, low.balance)) ** 2;
    contributions.push({ input, share: ((up + down) / 2) ** 2 });
  };
  for (const { input, paths, plus, minus } of inputs) {
    take(input, moved(filled, paths, plus, middle), moved(filled, paths, -minus, middle));
  }
  // The height is what the sides of the outline decide; a tolerance of its own takes the place of theirs.
  const heightGiven = tolerances.some(({ path }) => path === "blade.outline.heelHeight");
  if (!heightGiven && defaults.outline > 0) {
    take("outline", outlineMoved(knife, defaults.outline), outlineMoved(knife, -defaults.outline));
  }
  const total = contributions.reduce((sum, { share }) => sum + share, 0);
  return {
    massInterval: [middle.mass - Math.sqrt(squares.massDown), middle.mass + Math.sqrt(squares.massUp)],
    balanceInterval: [
      middle.balance - Math.sqrt(squares.balanceDown),
      middle.balance + Math.sqrt(squares.balanceUp),
    ],
    contributions: contributions
      .map(({ input, share }) => ({ input, share: total === 0 ? 0 : share / total }))
      .sort((a, b) => b.share - a.share),
  };
}

/** Relative error at which the moved knives are weighed: differences of grams need no more. */
const AIM = 1e-7;

function read(knife: Knife): Reading {
  const steel = weighMoments(measureBody(knife.body("finished"), AIM), knife.steelDensity);
  return gathered(knifeParts(knife, steel));
}

function gathered(
  parts: readonly { readonly mass: number; readonly centre: { readonly x: number } }[],
): Reading {
  const mass = parts.reduce((sum, part) => sum + part.mass, 0);
  return { mass, balance: parts.reduce((sum, part) => sum + part.mass * part.centre.x, 0) / mass };
}

/** The knife with one input moved. An input that cannot go there (a taper below zero) stays where it is. */
function moved(spec: KnifeSpec, paths: readonly string[], by: number, middle: Reading): Reading {
  const changed = paths.reduce((before, path) => changedAt(before, path, by), spec);
  if (checkNumbers(changed).length > 0) return middle;
  try {
    return read(rebuildKnife(changed));
  } catch (error) {
    if (error instanceof SpecError) return middle;
    throw error;
  }
}

/** The knife with every side of its outline moved out (or in, as the opposite of out), square to x. */
function outlineMoved(knife: Knife, by: number): Reading {
  const body = knife.body("finished");
  const out = Math.abs(by);
  const allowance = { outline: out, tip: out, butt: out };
  // Moved out, an edge takes its bevel with it: the section gains the spine's thickness there, and where the bevel
  // runs right to the spine half of it.
  const unground = new SteelBody({ ...body.input, plunge: { at: Number.MAX_VALUE, length: 0 }, cutouts: [] });
  const whole = profileStrips(unground, knife.outline, allowance).value;
  const sharp = profileStrips(body, knife.outline, allowance).value;
  const share = knife.laws.right.bevelHeight === "full" ? 0.5 : 1;
  const gained = (i: number): number =>
    (share * (whole[i] as number) + (1 - share) * (sharp[i] as number)) * Math.sign(by);
  const volume = gained(VOLUME);
  const steel = weighMoments(measureBody(body, AIM), knife.steelDensity);
  const centre = volume === 0 ? 0 : gained(X) / volume;
  return gathered([
    ...knifeParts(knife, steel),
    { mass: volume * knife.steelDensity, centre: { x: centre } },
  ]);
}

function defaultInputs(
  spec: KnifeSpec,
  knife: Knife,
  given: readonly InputTolerance[],
  defaults: ToleranceDefaults,
): MovedInput[] {
  const inputs: MovedInput[] = [];
  const add = (path: string, limit: number): void => {
    const own = given.filter((other) => other.path === path || other.path.startsWith(`${path}[`));
    const law = readAt(spec, path);
    if (law === undefined || own.some((other) => other.path === path)) return;
    if (own.length === 0) inputs.push({ input: path, paths: [path], plus: limit, minus: limit });
    else if (Array.isArray(law)) {
      // Stations with a tolerance of their own err for themselves; the others still share one error.
      const paths = law
        .map((_, i) => `${path}[${i}].is`)
        .filter((p) => own.every((other) => other.path !== p));
      if (paths.length > 0)
        inputs.push({ input: `${path}, other stations`, paths, plus: limit, minus: limit });
    }
  };
  const { forgedThickness, groundThickness } = defaults;
  add("blade.thickness", knife.finish.flats === "forged" ? forgedThickness : groundThickness);
  add("blade.bevel.edgeThickness", defaults.edgeThickness);
  if (spec.blade.bevel.height !== "full") add("blade.bevel.height", 2 * defaults.outline);
  if (spec.tang.buttThickness !== undefined) add("tang.buttThickness", groundThickness);
  if (spec.tang.thickness !== undefined) add("tang.thickness", groundThickness);
  add("steel.density", defaults.steelDensity * knife.steelDensity);
  const { slabs, pins } = spec.handle ?? {};
  if (slabs !== undefined) {
    add("handle.slabs.thickness", 2 * groundThickness);
    add("handle.slabs.material.density", densityBand(slabs.material, defaults.handleDensity));
  }
  if (pins !== undefined) {
    add("handle.pins.material.density", densityBand(pins.material, defaults.steelDensity));
  }
  return inputs;
}

/** Half the band of a material's density, g/mm³. */
function densityBand(material: { readonly name: string; readonly density?: number }, share: number): number {
  const row = material.density === undefined ? findMaterial(material.name) : undefined;
  const density = material.density ?? row?.density ?? 0;
  const band = ((row?.high ?? density) - (row?.low ?? density)) / 2;
  return Math.max(band, share * density);
}
