import type { Knife } from "../blade/knife.js";
import type { Finding } from "../errors/issue.js";
import type { Drill } from "../stock/bench-tools.js";
import type { ShopSpec } from "../stock/shop.js";
import { benchFindings } from "./bench-findings.js";
import { type BevelSetUp, bevelSetUps } from "./bevel-set-up.js";
import { type HandleBlank, handleBlank } from "./blanks.js";
import { type EdgeSetUp, edgeSetUp } from "./edge-bevel.js";
import { type GlueSetUp, glueSetUp } from "./glue.js";
import { type GuardSlot, guardSlot } from "./guard-slot.js";
import { type HoleSetUp, holeSetUps } from "./holes.js";
import { type MortiseSetUp, mortiseSetUp } from "./mortise.js";
import { type PinsSetUp, pinsSetUp } from "./pins.js";
import { type QuenchSetUp, quenchSetUp } from "./quench.js";
import { type ScribeSetUp, scribeSetUp } from "./scribe.js";
import { type SwedgeSetUp, swedgeSetUp } from "./swedge-set-up.js";
import { type TangShim, type TangTaper, tangShims, tangTaper, thickestOfTang } from "./taper-shims.js";

/** The tang's taper with its shims, and whether drilling wants one. */
export interface TaperSetUp extends TangTaper {
  /** At every pin, half way and at the butt, front to back; at the front too where the tang is thicker behind it. */
  readonly shims: readonly TangShim[];
  /** Whether a pair of holes drilled without a shim would miss by more than they give. */
  readonly drillingNeedsShim: boolean;
}

/** Everything that tools at the bench are set to for one knife, in the order of use; left out where there is none. */
export interface BenchSetUp {
  /** Height gauge, shims, scribing drill. */
  readonly scribe: ScribeSetUp;
  /** Shims under a tapered tang. */
  readonly taper?: TaperSetUp;
  /** Drills. */
  readonly holes: readonly HoleSetUp[];
  /** Jig, wheel. */
  readonly bevels: readonly BevelSetUp[];
  /** Grinder, for planes along the spine. */
  readonly swedge?: SwedgeSetUp;
  /** Tank. */
  readonly quench: QuenchSetUp;
  /** Saw, for the handle. */
  readonly blank?: HandleBlank;
  /** Files and drills, for a guard and a hidden tang. */
  readonly guard?: GuardSlot;
  readonly mortise?: MortiseSetUp;
  /** Saw, for pins. */
  readonly pins?: PinsSetUp;
  /** Syringe. */
  readonly glue?: GlueSetUp;
  /** Stone and wedges. */
  readonly edge: readonly EdgeSetUp[];
  readonly findings: readonly Finding[];
}

/**
 * Set-ups at the bench, from the same knife that is weighed. What the shop does not own, or does not say, is left out:
 * drills, wheels, wedges, the jig's lever, the oil.
 *
 * @param sold - Drills that can be bought where none in hand fits.
 *
 * @example
 * const bench = benchSetUp(knife, DEFAULT_SHOP);
 * bench.scribe.level.shims[0]; // { x: 100, shim: 0.8 }, under the tip
 */
export function benchSetUp(knife: Knife, shop: ShopSpec, sold: readonly Drill[] = []): BenchSetUp {
  const { drills = [], wedges = [], kerf } = shop;
  const holes = holeSetUps(knife, drills);
  const optional = {
    taper: taperSetUp(knife, holes),
    swedge: swedgeSetUp(knife),
    blank: handleBlank(knife, kerf),
    guard: guardSlot(knife, drills),
    mortise: mortiseSetUp(knife, drills),
    pins: pinsSetUp(knife, kerf),
    glue: glueSetUp(knife),
  };
  const made = {
    scribe: scribeSetUp(knife, drills),
    holes,
    bevels: bevelSetUps(knife, shop),
    quench: quenchSetUp(knife, shop),
    edge: edgeSetUp(knife, wedges),
    ...present(optional),
  };
  return { ...made, findings: benchFindings(knife, made, shop, sold) };
}

type Present<T> = { readonly [K in keyof T]?: Exclude<T[K], undefined> };

/** The same without what is undefined. */
function present<T extends object>(values: T): Present<T> {
  // The filter takes out what the type says it does; the compiler cannot follow it through the entries.
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as Present<T>;
}

/** Thicknesses nearer than this are one, mm. */
const SAME = 1e-9;

function taperSetUp(knife: Knife, holes: readonly HoleSetUp[]): TaperSetUp | undefined {
  const taper = tangTaper(knife);
  if (taper === undefined) return undefined;
  const { handleFront } = knife.outline;
  const pins = holes.filter(({ kind, at }) => kind === "pin" && at.x < handleFront);
  const ends = thickestOfTang(knife) > taper.front + SAME ? [0, taper.length] : [taper.length];
  const places = [...pins.map(({ at }) => handleFront - at.x), taper.length / 2, ...ends];
  return {
    ...taper,
    shims: tangShims(
      knife,
      [...new Set(places)].sort((a, b) => a - b),
    ),
    drillingNeedsShim: holes.some(({ lean }) => lean?.needsShim === true),
  };
}
