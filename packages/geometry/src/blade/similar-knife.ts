import type { Vec2 } from "../plane/vec2.js";
import type { Knife } from "./knife.js";
import { bladeStation } from "./knife-laws.js";
import { scaledRuns } from "./scaled-runs.js";
import type {
  BevelSpec,
  BlockSpec,
  FaceSpec,
  HandleSpec,
  HoleSpec,
  KnifeSpec,
  LawSpec,
  OutlineSpec,
  StationPlace,
  StationSpec,
  TangSpec,
} from "./spec.js";

/**
 * The ways in which a knife of the same design can be smaller.
 *
 * - `shorter`: all that lies ahead of the heel nearer to it along x, distances of stations with it; thickness and heights stay
 * - `lower`: all heights of blade, tang and bevels; a straight edge stays straight, lengths and thickness stay
 * - `thinner-tip`: the spine thinner toward the tip, at the heel as it was
 */
export const SIMILAR_CHANGES = ["shorter", "lower", "thinner-tip"] as const;
/** Name of a way in which a knife can be smaller. */
export type SimilarChange = (typeof SIMILAR_CHANGES)[number];

/**
 * A knife of the same design, smaller in one way, as a description that can be weighed, cut and drawn like any other. An outline
 * that was given by runs or by a drawing becomes one of runs.
 *
 * Diameters of holes and pins, radii, allowances and what is put on the tang stay as they are, and so do its places behind the
 * heel along x.
 *
 * @param share - What is left of edge length, of heights, or of the thickness at the tip: more than 0, at most 1.
 *
 * @example
 * makeKnife(similarKnife(knife, "shorter", 0.9)).outline.edgeLength; // 90
 * makeKnife(similarKnife(knife, "thinner-tip", 0.75)).laws.spine.valueAt(100); // 1.2
 */
export function similarKnife(knife: Knife, change: SimilarChange, share: number): KnifeSpec {
  switch (change) {
    case "shorter":
      return shorter(knife, share);
    case "lower":
      return lower(knife, share);
    case "thinner-tip":
      return thinnerTip(knife, share);
  }
}

/**
 * The size that a change makes smaller, mm: edge length, height of the spine above the heel, or spine thickness at the tip.
 *
 * @example
 * similarSize(knife, "shorter"); // 100
 * similarSize(knife, "thinner-tip"); // 1.6
 */
export function similarSize(knife: Knife, change: SimilarChange): number {
  switch (change) {
    case "shorter":
      return knife.outline.edgeLength;
    case "lower": {
      const spans = knife.body("finished").footprint.spansAt(0);
      return spans.at(-1)?.[1] ?? 0;
    }
    case "thinner-tip":
      return knife.laws.spine.valueAt(knife.outline.edgeLength);
  }
}

function shorter(knife: Knife, share: number): KnifeSpec {
  const { spec } = knife;
  const { blade } = spec;
  const ahead = (x: number): number => (x > 0 ? x * share : x);
  const point = (p: Vec2): Vec2 => ({ x: ahead(p.x), y: p.y });
  const place = (at: StationPlace): StationPlace =>
    at.kind === "distance" ? { ...at, mm: ahead(at.mm) } : at;
  const law = (given: LawSpec): LawSpec =>
    typeof given === "number" ? given : given.map(({ at, is }) => ({ at: place(at), is }));
  const { swedge, fullers, holes, plunge, flankTaper } = blade;
  return {
    ...spec,
    ...withOutline(knife, shorterOutline(knife, share)),
    blade: {
      ...blade,
      ...drawnRicasso(knife),
      outline: shorterOutline(knife, share),
      thickness: blade.thickness.map(({ at, is }) => ({ at: place(at), is })),
      bevel: bevelWith(blade.bevel, law),
      ...(flankTaper === undefined ? {} : { flankTaper: law(flankTaper) }),
      ...(plunge === undefined ? {} : { plunge: { at: ahead(plunge.at), length: plunge.length * share } }),
      ...(swedge === undefined
        ? {}
        : {
            swedge: {
              ...swedge,
              from: place(swedge.from),
              to: place(swedge.to),
              thickness: law(swedge.thickness),
            },
          }),
      ...(fullers === undefined
        ? {}
        : { fullers: fullers.map((one) => ({ ...one, from: point(one.from), to: point(one.to) })) }),
      ...(holes === undefined ? {} : { holes: holes.map((hole) => holeAt(hole, point)) }),
    },
  };
}

function shorterOutline({ spec, outline }: Knife, share: number): OutlineSpec {
  const given = spec.blade.outline;
  if (!("family" in given)) return scaledRuns(outline, { ahead: share, up: 1 });
  const { straightEdge, spineBreak } = given;
  return {
    ...given,
    edgeLength: given.edgeLength * share,
    ...(straightEdge === undefined ? {} : { straightEdge: straightEdge * share }),
    ...(spineBreak === undefined ? {} : { spineBreak: spineBreak * share }),
  };
}

function lower(knife: Knife, share: number): KnifeSpec {
  const { spec } = knife;
  const { blade, handle } = spec;
  const point = (p: Vec2): Vec2 => ({ x: p.x, y: p.y * share });
  const outline = lowerOutline(knife, share);
  const { fullers, holes } = blade;
  const tang = withOutline(knife, outline).tang;
  return {
    ...spec,
    blade: {
      ...blade,
      ...drawnRicasso(knife),
      outline,
      bevel: bevelWith(blade.bevel, (law) => law, share),
      ...(fullers === undefined
        ? {}
        : { fullers: fullers.map((one) => ({ ...one, from: point(one.from), to: point(one.to) })) }),
      ...(holes === undefined ? {} : { holes: holes.map((hole) => holeAt(hole, point)) }),
    },
    tang: {
      ...tang,
      ...("family" in outline ? lowerTang(tang, share) : {}),
      ...(tang.holes === undefined ? {} : { holes: tang.holes.map((hole) => holeAt(hole, point)) }),
    },
    ...(handle === undefined ? {} : { handle: lowerHandle(handle, share) }),
  };
}

function lowerOutline({ spec, outline }: Knife, share: number): OutlineSpec {
  const given = spec.blade.outline;
  if (!("family" in given)) return scaledRuns(outline, { ahead: 1, up: share });
  const { heelHeight, tipHeight } = given;
  return {
    ...given,
    heelHeight: heelHeight * share,
    ...(tipHeight === undefined ? {} : { tipHeight: tipHeight * share }),
  };
}

function lowerTang({ heights, drop }: TangSpec, share: number): Partial<TangSpec> {
  return {
    ...(heights === undefined
      ? {}
      : {
          heights: {
            front: heights.front * share,
            middle: heights.middle * share,
            butt: heights.butt * share,
          },
        }),
    ...(drop === undefined ? {} : { drop: drop * share }),
  };
}

/** Fittings keep their sizes; where their middle was given it comes down with the tang. */
function lowerHandle(handle: HandleSpec, share: number): HandleSpec {
  const centred = <T extends { readonly centre?: number }>(part: T): T =>
    part.centre === undefined ? part : { ...part, centre: part.centre * share };
  const { block, bolsters, guard, pommel, parts } = handle;
  return {
    ...handle,
    ...(block === undefined ? {} : { block: centred(block) }),
    ...(bolsters === undefined ? {} : { bolsters: bolsters.map((one: BlockSpec) => centred(one)) }),
    ...(guard === undefined ? {} : { guard: centred(guard) }),
    ...(pommel === undefined ? {} : { pommel: centred(pommel) }),
    ...(parts === undefined
      ? {}
      : { parts: parts.map((part) => ({ ...part, at: { x: part.at.x, y: part.at.y * share } })) }),
  };
}

/** The first station keeps its thickness, the last is left the share, those between go evenly with their place. */
function thinnerTip({ spec, outline }: Knife, share: number): KnifeSpec {
  const { thickness } = spec.blade;
  const xs = thickness.map(({ at }) => bladeStation(at, outline));
  const [first, last] = [Math.min(...xs), Math.max(...xs)];
  const stations: readonly StationSpec[] =
    last > first
      ? thickness.map(({ at, is }, i) => {
          const along = ((xs[i] as number) - first) / (last - first);
          return { at, is: is * (1 - (1 - share) * along) };
        })
      : [
          { at: { kind: "heel" }, is: thickness[0]?.is ?? 0 },
          { at: { kind: "tip" }, is: (thickness.at(-1)?.is ?? 0) * share },
        ];
  return { ...spec, blade: { ...spec.blade, thickness: stations } };
}

/** The ground faces with their laws changed, and their bevel heights scaled. */
function bevelWith(bevel: BevelSpec, law: (given: LawSpec) => LawSpec, up = 1): BevelSpec {
  const face = <T extends Partial<FaceSpec>>(given: T): T => {
    const { height, crown } = given;
    return {
      ...given,
      ...(height === undefined || height === "full" ? {} : { height: timesLaw(law(height), up) }),
      ...(crown === undefined
        ? {}
        : { crown: "mm" in crown ? { mm: law(crown.mm) } : { share: law(crown.share) } }),
    };
  };
  const { left, right } = bevel;
  return {
    ...face(bevel),
    edgeThickness: law(bevel.edgeThickness),
    ...(left === undefined ? {} : { left: face(left) }),
    ...(right === undefined ? {} : { right: face(right) }),
  };
}

function timesLaw(law: LawSpec, factor: number): LawSpec {
  if (typeof law === "number") return law * factor;
  return law.map(({ at, is }) => ({ at, is: is * factor }));
}

function holeAt(hole: HoleSpec, move: (p: Vec2) => Vec2): HoleSpec {
  return { ...hole, at: move(hole.at), ...(hole.to === undefined ? {} : { to: move(hole.to) }) };
}

/** A drawing is agreed with more loosely than runs are: what was said of it beside it is said as it is drawn. */
function withOutline({ spec, outline }: Knife, drawn: OutlineSpec): Pick<KnifeSpec, "tang"> {
  const { tang } = spec;
  if ("family" in drawn || tang.length === undefined) return { tang };
  return { tang: { ...tang, length: outline.handleFront - outline.butt } };
}

function drawnRicasso({ spec, outline }: Knife): { readonly ricasso?: number } {
  const { ricasso, outline: given } = spec.blade;
  if ("family" in given || ricasso === undefined) return {};
  return { ricasso: Math.max(0, outline.ricasso) };
}
