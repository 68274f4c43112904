// Cuts the body into blocks between two stations, each a stack of sections with the same number of rows: what a mesh
// or a loft needs so that no face runs across a crease.
import type { ReferenceBody } from "./body.js";
import { bisect } from "./curve.js";

/** y of the row boundaries at one station, bottom first; where a face is missing, two of them are equal. */
export interface Section {
  readonly x: number;
  readonly cuts: readonly number[];
  half(y: number): number;
}

export interface Block {
  readonly from: number;
  readonly to: number;
  /** Section at a share of the way; the ends are taken from inside the block, at steps such as the heel. */
  section(share: number): Section;
}

/** The blocks between neighbouring stations of the body, divided where a face begins or runs out; butt first. */
export function blocks(body: ReferenceBody): Block[] {
  const first = body.slicer.breaks[0] ?? 0;
  const last = body.slicer.breaks[body.slicer.breaks.length - 1] ?? 0;
  const xs = body.breaks.filter((x) => x >= first && x <= last);
  const found: Block[] = [];
  for (let i = 0; i + 1 < xs.length; i++) {
    const from = xs[i] ?? 0;
    const to = xs[i + 1] ?? 0;
    if (to - from < 1e-9) continue;
    const ends = [from, ...changes(body, from, to), to];
    for (let k = 0; k + 1 < ends.length; k++) found.push(makeBlock(body, ends[k] ?? 0, ends[k + 1] ?? 0));
  }
  return found;
}

function makeBlock(body: ReferenceBody, from: number, to: number): Block {
  return { from, to, section: (share) => sectionAt(body, from, to, share) };
}

/** A face lower than this is none, mm. */
export const MISSING = 1e-9;
const PROBES = 24;

/** Stations between two others where a face begins or runs out. */
function changes(body: ReferenceBody, from: number, to: number): number[] {
  const { section } = makeBlock(body, from, to);
  const present = (share: number, k: number): boolean => {
    const { cuts } = section(share);
    return (cuts[k + 1] ?? 0) - (cuts[k] ?? 0) > MISSING;
  };
  const found: number[] = [];
  // The very ends are left out: there a face may just have run out.
  const shares = Array.from({ length: PROBES + 1 }, (_, i) => 1e-4 + ((1 - 2e-4) * i) / PROBES);
  for (let k = 0; k < 3; k++) {
    for (let i = 0; i < PROBES; i++) {
      const a = shares[i] ?? 0;
      const b = shares[i + 1] ?? 1;
      const before = present(a, k);
      if (before !== present(b, k)) found.push(bisect((t) => (present(t, k) === before ? -1 : 1), a, b));
    }
  }
  return found.sort((a, b) => a - b).map((share) => from + share * (to - from));
}

const INSIDE = 1e-11;

function sectionAt(body: ReferenceBody, from: number, to: number, share: number): Section {
  const x = from + share * (to - from);
  // What holds at the end of a block is the limit from its inside.
  const at = Math.min(Math.max(x, from + INSIDE * (to - from)), to - INSIDE * (to - from));
  const ys = body.slicer.crossings(at);
  if (ys.length !== 2)
    throw new Error(`a block has one lower and one upper boundary; at x = ${at} there are ${ys.length}`);
  const [bottom = 0, top = 0] = ys;
  const face = (y: number): string => body.zone(at, y).split(":")[0] ?? "";
  const plane = (y: number): boolean => face(y) === "plane";
  const ground = (y: number): boolean => plane(y) || face(y) === "bevel";
  const cuts = [bottom, endOf(plane, bottom, top), endOf(ground, bottom, top), top];
  return { x, cuts, half: (y) => body.half(at, y) };
}

/** Where a face that starts at the bottom ends; the bottom where there is none, the top where it fills the section. */
function endOf(belongs: (y: number) => boolean, bottom: number, top: number): number {
  const inset = (top - bottom) * 1e-12;
  if (!belongs(bottom + inset)) return bottom;
  if (belongs(top - inset)) return top;
  return bisect((y) => (belongs(y) ? -1 : 1), bottom + inset, top - inset);
}
