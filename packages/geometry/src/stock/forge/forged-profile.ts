import type { Knife } from "../../blade/knife.js";
import { type ForgedStation, forgedStations } from "../../blade/ledger-bodies.js";
import { VOLUME } from "../../blade/moments.js";
import { profileStrips } from "../../blade/profile-strips.js";

/** The whole forged blade as sections over x, with the lengths that are drawn on at tip and butt; mm, mm². */
export interface ForgedProfile {
  /** In order of x; areas straight between them. Two at one place are a step. */
  readonly stations: readonly ForgedStation[];
  /** Where the handle begins. */
  readonly handleFront: number;
  /** Where the height steps between handle and blade: there the fuller goes. Else the handle front. */
  readonly shoulder: number;
  /** The sections right behind and right ahead of the shoulder. */
  readonly behind: ForgedStation;
  readonly ahead: ForgedStation;
  /** How far the blade stands out over the tang at the shoulder, on the spine's and on the edge's side; 0 or more. */
  readonly steps: { readonly spineSide: number; readonly edgeSide: number };
}

/** The two sections lie a hair apart, so a spine that falls makes a step of its own, mm. */
const HAIR = 1e-6;

const stepOf = (difference: number): number => (difference > HAIR ? difference : 0);

/** A height that jumps by less than this is no shoulder, mm. */
const LEAST_STEP = 0.5;

/**
 * The forged blade of a knife as sections over x, profile allowance and both drawn-on ends included.
 *
 * @example
 * const { stations } = forgedProfile(knife);
 * stations[0]?.x; // −118: the butt at −115 and 3 mm more
 */
export function forgedProfile(knife: Knife): ForgedProfile {
  const body = knife.body("forged");
  const { allowances, outline } = knife;
  const inner = forgedStations(body, allowances.outline);
  const { minX, maxX } = body.footprint;
  const { handleFront } = outline;
  const tip = drawnOn(knife, "tip", inner.at(-1));
  const butt = drawnOn(knife, "butt", inner[0]);
  const stations = [
    ...(butt === undefined
      ? []
      : [
          { ...butt, x: minX - allowances.butt },
          { ...butt, x: minX },
        ]),
    ...inner,
    ...(tip === undefined
      ? []
      : [
          { ...tip, x: maxX },
          { ...tip, x: maxX + allowances.tip },
        ]),
  ];
  const at = shoulderIndex(inner, handleFront);
  const behind = inner[at] as ForgedStation;
  const ahead = inner[at + 1] as ForgedStation;
  const [low0, high0] = reachOf(body.footprint.spansAt(behind.x));
  const [low1, high1] = reachOf(body.footprint.spansAt(ahead.x));
  return {
    stations,
    handleFront,
    shoulder: (behind.x + ahead.x) / 2,
    behind,
    ahead,
    steps: { spineSide: stepOf(high1 - high0), edgeSide: stepOf(low0 - low1) },
  };
}

function reachOf(spans: readonly (readonly [number, number])[]): readonly [number, number] {
  return [spans[0]?.[0] ?? 0, spans[spans.length - 1]?.[1] ?? 0];
}

/** The section of a drawn-on end: as much steel over its length as profile trimming takes there. */
function drawnOn(
  knife: Knife,
  end: "tip" | "butt",
  beside: ForgedStation | undefined,
): ForgedStation | undefined {
  const { allowances, outline } = knife;
  const { edge, spine, butt } = outline.runs;
  const ends = end === "tip" ? [edge.at(-1)?.to, spine[0]?.from] : [butt[0]?.from, butt.at(-1)?.to];
  const [a, b] = ends;
  const added = allowances[end];
  if (added <= 0 || beside === undefined || a === undefined || b === undefined) return undefined;
  const body = knife.body("forged");
  const strips = (tipAndButt: { readonly tip: number; readonly butt: number }): number =>
    profileStrips(body, outline, { outline: allowances.outline, ...tipAndButt }).value[VOLUME] as number;
  const without = { tip: 0, butt: 0 };
  return {
    x: beside.x,
    height: Math.abs(a.y - b.y) + 2 * allowances.outline,
    top: Math.max(a.y, b.y) + allowances.outline,
    area: (strips({ ...without, [end]: added }) - strips(without)) / added,
    ...(beside.thickness === undefined ? {} : { thickness: beside.thickness }),
  };
}

/** Index of the station right behind the greatest jump of height between handle front and heel. */
function shoulderIndex(stations: readonly ForgedStation[], handleFront: number): number {
  const step = (i: number): number => (stations[i + 1]?.height ?? 0) - (stations[i]?.height ?? 0);
  let best = -1;
  let most = LEAST_STEP;
  let front = 0;
  for (let i = 0; i + 1 < stations.length; i++) {
    const a = stations[i] as ForgedStation;
    const b = stations[i + 1] as ForgedStation;
    const middle = (a.x + b.x) / 2;
    if (middle <= handleFront + HAIR) front = i;
    // Stations stand close together only on both sides of a step.
    if (b.x - a.x > 1e-3 || middle < handleFront - HAIR || middle > HAIR) continue;
    if (step(i) > most) {
      most = step(i);
      best = i;
    }
  }
  return best < 0 ? front : best;
}
