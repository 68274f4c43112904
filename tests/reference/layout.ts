// Cuts the body into blocks between two stations, each a stack of sections whose faces have the same strips all along:
// what a mesh or a loft needs so that no face runs across a crease.
import { bisect } from "./curve.js";

export type Side = "right" | "left";
export const SIDES: readonly Side[] = ["right", "left"];

/** What is laid out: a body between two faces over its outline. */
export interface Faced {
  /** Height of a face outward from the centre plane, mm; meant for points inside the outline. */
  face(x: number, y: number, side: Side): number;
  /** Names the smooth piece of a face that the point lies on. */
  strip(x: number, y: number, side: Side): string;
  /** y of the lower and the upper boundary at a station. */
  crossings(x: number): readonly number[];
  /** Stations where the outline, the thickness or one of its slopes may break, ascending. */
  readonly breaks: readonly number[];
}

/** One face at a station. */
export interface FaceSection {
  /** y of the strips' boundaries, bottom first; where a strip has run out, two of them are equal. */
  readonly cuts: readonly number[];
  /** Names of the strips between them. */
  readonly strips: readonly string[];
  /** Height outward from the centre plane, mm. */
  height(y: number): number;
}

export interface Section extends Readonly<Record<Side, FaceSection>> {
  readonly x: number;
  /** z half way between the faces at the bottom: a plane through it parts the body in two that are thick everywhere. */
  readonly middle: number;
}

export interface Block {
  readonly from: number;
  readonly to: number;
  /** Section at a share of the way; the ends are taken from inside the block, at steps such as the heel. */
  section(share: number): Section;
}

type Strips = Readonly<Record<Side, readonly string[]>>;

/** A length that counts as none, mm. */
export const MISSING = 1e-9;
const COLUMNS = 24;
const PROBES = 24;
const INSIDE = 1e-11;

/** The blocks between neighbouring stations of the body, divided where a strip begins or runs out; butt first. */
export function blocks(body: Faced): Block[] {
  const found: Block[] = [];
  for (let i = 0; i + 1 < body.breaks.length; i++) {
    const from = body.breaks[i] ?? 0;
    const to = body.breaks[i + 1] ?? 0;
    if (to - from < MISSING) continue;
    const ends = [from, ...changes(body, from, to), to];
    for (let k = 0; k + 1 < ends.length; k++) found.push(makeBlock(body, ends[k] ?? 0, ends[k + 1] ?? 0));
  }
  return found;
}

function makeBlock(body: Faced, from: number, to: number): Block {
  const strips = stripsAt(body, (from + to) / 2);
  return { from, to, section: (share) => sectionAt(body, strips, from, to, share) };
}

/** Stations between two others where a strip of a face begins or runs out. */
function changes(body: Faced, from: number, to: number): number[] {
  const key = (share: number): string => {
    const { right, left } = stripsAt(body, from + share * (to - from));
    return `${right.join()} | ${left.join()}`;
  };
  // The very ends are left out: there a strip may just have run out.
  const shares = Array.from({ length: COLUMNS + 1 }, (_, i) => 1e-4 + ((1 - 2e-4) * i) / COLUMNS);
  const found: number[] = [];
  let here = key(shares[0] ?? 0);
  for (let i = 0; i < COLUMNS; i++) {
    const b = shares[i + 1] ?? 1;
    const there = key(b);
    let a = shares[i] ?? 0;
    // More than one strip may change between two columns: find the first change, then go on from there. What changes
    // together is found apart by rounding, and is one change.
    for (let guard = 0; here !== there && guard < 8; guard++) {
      const before = here;
      const cut = bisect((t) => (key(t) === before ? -1 : 1), a, b);
      found.push(cut);
      a = Math.min(b, cut + 1e-7);
      here = key(a);
    }
    here = there;
  }
  return found.map((share) => from + share * (to - from));
}

function boundaries(body: Faced, x: number): readonly [bottom: number, top: number] {
  const ys = body.crossings(x);
  const [bottom, top] = ys;
  if (ys.length !== 2 || bottom === undefined || top === undefined)
    throw new Error(`a block has one lower and one upper boundary; at x = ${x} there are ${ys.length}`);
  return [bottom, top];
}

/** Names of the strips of both faces at a station, bottom first. */
function stripsAt(body: Faced, x: number): Strips {
  const [bottom, top] = boundaries(body, x);
  const step = (top - bottom) / PROBES;
  const names = (side: Side): string[] => {
    const name = (y: number): string => body.strip(x, y, side);
    const inset = (top - bottom) * 1e-8;
    let before = bottom + inset;
    const found = [name(before)];
    for (let i = 1; i <= PROBES; i++) {
      const y = i === PROBES ? top - inset : bottom + i * step;
      const there = name(y);
      for (let guard = 0; guard < 8; guard++) {
        const last = found[found.length - 1];
        if (there === last) break;
        before = Math.min(y, bisect((t) => (name(t) === last ? -1 : 1), before, y) + inset);
        const next = name(before);
        // A strip of no height, at rounding's mercy, is none.
        if (next !== last) found.push(next);
      }
      before = y;
    }
    if (new Set(found).size < found.length)
      throw new Error(`at x = ${x} a strip of the ${side} face comes twice: ${found.join(", ")}`);
    return found;
  };
  return { right: names("right"), left: names("left") };
}

function sectionAt(body: Faced, strips: Strips, from: number, to: number, share: number): Section {
  const x = from + share * (to - from);
  // What holds at the end of a block is the limit from its inside.
  const at = Math.min(Math.max(x, from + INSIDE * (to - from)), to - INSIDE * (to - from));
  const [bottom, top] = boundaries(body, at);
  const faceOf = (side: Side): FaceSection => {
    const order = strips[side];
    const cuts = [bottom];
    for (let k = 0; k + 1 < order.length; k++) {
      const below = (y: number): boolean => {
        const rank = rankOf(body.strip(at, y, side), order);
        return rank >= 0 && rank <= k;
      };
      cuts.push(Math.max(cuts[k] ?? bottom, endOf(below, bottom, top)));
    }
    return { cuts: [...cuts, top], strips: order, height: (y) => body.face(at, y, side) };
  };
  const middle = (body.face(at, bottom, "right") - body.face(at, bottom, "left")) / 2;
  return { x, middle, right: faceOf("right"), left: faceOf("left") };
}

/** Place of a strip in the block's order; at its very end one may have another law already, which is its second word. */
function rankOf(strip: string, order: readonly string[]): number {
  const rank = order.indexOf(strip);
  const kind = strip.split(" ")[0];
  return rank >= 0 ? rank : order.findIndex((one) => one.split(" ")[0] === kind);
}

/** Where something that starts at the bottom ends; the bottom where there is none, the top where it fills the section. */
function endOf(belongs: (y: number) => boolean, bottom: number, top: number): number {
  const inset = (top - bottom) * 1e-12;
  if (!belongs(bottom + inset)) return bottom;
  if (belongs(top - inset)) return top;
  return bisect((y) => (belongs(y) ? -1 : 1), bottom + inset, top - inset);
}

/** Strips that stand upright at one of their boundaries. */
const UPRIGHT = new Set(["eased", "below rounded", "above rounded"]);

/** Rows of a strip at shares of its height, drawn together at its boundaries where it may stand upright. */
export function rowsOf({ cuts, strips }: FaceSection, k: number, shares: readonly number[]): number[] {
  const a = cuts[k] ?? 0;
  const b = cuts[k + 1] ?? a;
  const isUpright = UPRIGHT.has(strips[k] ?? "");
  return shares.map((share) => {
    if (share === 1) return b;
    return a + (b - a) * (isUpright ? (1 - Math.cos(Math.PI * share)) / 2 : share);
  });
}
