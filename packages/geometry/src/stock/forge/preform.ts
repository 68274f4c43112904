import { GeometryError } from "../../errors/errors.js";
import type { ForgedStation } from "../blade-states.js";

/** A section of the preform, before bevels are hammered in: a rectangle; mm, mm². */
export interface PreformStation {
  /** Station of the forged blade that it becomes, mm from the heel. */
  readonly x: number;
  /** Distance along the preform from where the measuring starts, mm. */
  readonly at: number;
  readonly height: number;
  /** That of the forged blade at its spine: bevels thin the section, the spine stays. */
  readonly thickness: number;
  /** Mean thickness once the bevels are in: area over height of the forged section. */
  readonly meanThickness: number;
}

/** Sections whose bevels are in, as far as their places depend on their own spacing; `x` in mm. */
export interface BevelledStation {
  readonly x: number;
  readonly height: number;
  readonly area: number;
}

/**
 * The preform of a forged blade: at every station the height `hA·(tm/TP)^s` and the spacing `dx·(tm/TP)^(1 − s)`, with
 * the mean thickness `tm` (area ÷ height), the forged spine thickness `TP`, and the share `s` of the thinning that goes
 * into height. Between two stations the spacing is the one that holds the same volume, areas straight between them.
 *
 * @param stations - Forged sections in order of x, mm and mm²; those without steel are left out.
 * @param spreadShare - s, 0 to 1.
 * @param from - x at which distances along the preform start, mm; a station at or ahead of it is taken.
 * @throws {GeometryError} `spread-share-wrong` outside 0 to 1, `stations-too-few` with less than two stations.
 *
 * @example
 * const wedge = [{ x: 0, height: 40, area: 120, thickness: 6 }, { x: 50, height: 40, area: 120, thickness: 6 }];
 * const [heel] = makePreform(wedge, 0.5, 0);
 * heel?.height; // 28.28, for half of the thinning from 6 to 3 goes into height
 */
export function makePreform(
  stations: readonly ForgedStation[],
  spreadShare: number,
  from: number,
): PreformStation[] {
  checkShare(spreadShare);
  const solid = stations.filter(({ height, area }) => height > 0 && area > 0);
  if (solid.length < 2)
    throw new GeometryError("stations-too-few", "a preform needs two sections with steel");
  let before: { readonly forged: ForgedStation; readonly preform: PreformStation } | undefined;
  const made = solid.map((forged): PreformStation => {
    const meanThickness = forged.area / forged.height;
    const thickness = Math.max(forged.thickness ?? meanThickness, meanThickness);
    const section = {
      x: forged.x,
      height: forged.height * (meanThickness / thickness) ** spreadShare,
      thickness,
      meanThickness,
    };
    const own = section.height * thickness;
    const at =
      before === undefined
        ? 0
        : before.preform.at +
          ((forged.x - before.forged.x) * (before.forged.area + forged.area)) /
            (before.preform.height * before.preform.thickness + own);
    const preform = { ...section, at };
    before = { forged, preform };
    return preform;
  });
  const start = made.find(({ x }) => x >= from)?.at ?? 0;
  return made.map((station) => ({ ...station, at: station.at - start }));
}

/**
 * Hammers the bevels into a preform: undoes {@link makePreform}.
 *
 * @param from - x of the first station of the result, mm.
 *
 * @example
 * const wedge = [{ x: 0, height: 40, area: 120, thickness: 6 }, { x: 50, height: 40, area: 120, thickness: 6 }];
 * forgeBevels(makePreform(wedge, 0.5, 0), 0.5, 0)[1]; // { x: 50, height: 40, area: 120 }
 */
export function forgeBevels(
  preform: readonly PreformStation[],
  spreadShare: number,
  from: number,
): BevelledStation[] {
  checkShare(spreadShare);
  let x = from;
  let before: { readonly preform: PreformStation; readonly area: number } | undefined;
  return preform.map((station) => {
    const height = station.height * (station.thickness / station.meanThickness) ** spreadShare;
    const area = height * station.meanThickness;
    if (before !== undefined) {
      const { height: h, thickness: t } = before.preform;
      x +=
        ((station.at - before.preform.at) * (h * t + station.height * station.thickness)) /
        (before.area + area);
    }
    before = { preform: station, area };
    return { x, height, area };
  });
}

/**
 * The preform at a distance along it, straight between its stations; beyond its ends, the end.
 *
 * @param at - mm from where the preform's distances start.
 * @throws {GeometryError} `stations-too-few` without stations.
 *
 * @example
 * const wedge = [{ x: 0, height: 40, area: 120, thickness: 6 }, { x: 50, height: 20, area: 60, thickness: 6 }];
 * preformAt(makePreform(wedge, 0, 0), 0).height; // 40
 */
export function preformAt(preform: readonly PreformStation[], at: number): PreformStation {
  const last = preform[preform.length - 1];
  if (last === undefined) throw new GeometryError("stations-too-few", "there is no preform to look at");
  const next = preform.findIndex((station) => station.at >= at);
  if (next === 0) return preform[0] as PreformStation;
  if (next < 0) return last;
  const a = preform[next - 1] as PreformStation;
  const b = preform[next] as PreformStation;
  const u = b.at === a.at ? 1 : (at - a.at) / (b.at - a.at);
  const between = (p: number, q: number): number => p + (q - p) * u;
  return {
    x: between(a.x, b.x),
    at,
    height: between(a.height, b.height),
    thickness: between(a.thickness, b.thickness),
    meanThickness: between(a.meanThickness, b.meanThickness),
  };
}

/**
 * The preform in steps that are laid off with a rule: from where its distances start, every `step`, and its end.
 *
 * @param step - mm, above 0.
 *
 * @example
 * const bar = [{ x: 0, height: 40, area: 240 }, { x: 60, height: 40, area: 240 }];
 * preformSteps(makePreform(bar, 0.4, 0), 25).map(({ at }) => at); // [0, 25, 50, 60]
 */
export function preformSteps(preform: readonly PreformStation[], step: number): PreformStation[] {
  const end = preform[preform.length - 1];
  if (end === undefined) return [];
  // Less than a quarter of a step before the end is no place of its own.
  const count = Math.max(0, Math.ceil(end.at / step - 0.25));
  return [...Array.from({ length: count }, (_, i) => preformAt(preform, i * step)), end];
}

/**
 * Where along the preform the section lies that becomes the one at x, straight between its stations; beyond its ends, the
 * end.
 *
 * @param x - mm ahead of the heel, with the bevels in.
 * @returns mm from where the preform's distances start.
 *
 * @example
 * const wedge = [{ x: 0, height: 40, area: 120, thickness: 6 }, { x: 50, height: 40, area: 120, thickness: 6 }];
 * preformPlaceOf(makePreform(wedge, 0, 0), 25); // 12.5: all of the thinning goes into length
 */
export function preformPlaceOf(preform: readonly PreformStation[], x: number): number {
  const next = preform.findIndex((station) => station.x >= x);
  const b = preform.at(next);
  if (b === undefined) return 0;
  const a = next > 0 ? preform[next - 1] : undefined;
  if (a === undefined || b.x === a.x) return b.at;
  return a.at + ((b.at - a.at) * (x - a.x)) / (b.x - a.x);
}

function checkShare(spreadShare: number): void {
  if (!(spreadShare >= 0 && spreadShare <= 1))
    throw new GeometryError("spread-share-wrong", `${spreadShare} is no share of the thinning`);
}
