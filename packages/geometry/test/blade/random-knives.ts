import fc from "fast-check";
import { type Knife, makeKnife } from "../../src/blade/knife.js";
import type { FamilyName, KnifeSpec, LawSpec, StationSpec } from "../../src/blade/spec.js";
import { SpecError } from "../../src/errors/errors.js";

export const SEED = 20_261_125;

/** Even over the range; fc.double is even over bit patterns. */
export const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.noBias(fc.integer({ min: 0, max: 1_000_000 })).map((i) => min + ((max - min) * i) / 1_000_000);

export const DEGREE = Math.PI / 180;

export const heel = (is: number): StationSpec => ({ at: { kind: "heel" }, is });
export const tip = (is: number): StationSpec => ({ at: { kind: "tip" }, is });
export const at = (mm: number, is: number): StationSpec => ({ at: { kind: "distance", mm }, is });
export const share = (part: number, is: number): StationSpec => ({
  at: { kind: "fraction", share: part },
  is,
});

/** Knives by landmarks: three families, every form of law and bevel, plunge or wall, tang parallel, tapered or by stations. */
export const knifeSpec: fc.Arbitrary<KnifeSpec> = fc
  .record({
    family: fc.constantFrom<FamilyName>("vegetable", "straight-back", "drop-point"),
    edgeLength: between(60, 300),
    height: between(0.14, 0.42),
    straight: between(0.15, 0.8),
    tipHeight: between(0.3, 0.95),
    spineBreak: between(0.2, 0.8),
    ricasso: fc.oneof(fc.constant(0), between(2, 20)),
    heelThickness: between(2.6, 6.5),
    middle: between(0.55, 0.95),
    tipShare: between(0.3, 0.55),
    between: fc.constantFrom("straight" as const, "smooth" as const),
    flank: fc.oneof(fc.constant(0), between(0.05, 0.4)),
    plungeAt: fc.oneof(fc.constant(0), between(0, 15)),
    plungeLength: fc.oneof(fc.constant(0), between(2, 25)),
    form: fc.constantFrom("flat" as const, "convex" as const),
    bevel: fc.constantFrom("full" as const, "part" as const, "stations" as const),
    bevelShare: between(0.25, 0.95),
    bevelEnd: between(0.2, 0.9),
    edge: between(0.15, 0.6),
    edgeStations: fc.boolean(),
    crown: fc.constantFrom("level" as const, "mm" as const, "share" as const),
    crownShare: between(0.02, 0.12),
    angle: between(9, 28),
    tang: fc.constantFrom("parallel" as const, "tapered" as const, "stations" as const),
  })
  .map((r) => {
    const heelHeight = r.height * r.edgeLength;
    const bevelHeight: "full" | LawSpec =
      r.bevel === "full"
        ? "full"
        : r.bevel === "part"
          ? r.bevelShare * heelHeight
          : [heel(r.bevelShare * heelHeight), share(0.6, r.bevelEnd * heelHeight)];
    const edge: LawSpec = r.edgeStations ? [heel(r.edge), tip(0.7 * r.edge)] : r.edge;
    const crown =
      r.crown === "level"
        ? {}
        : { crown: r.crown === "mm" ? { mm: r.crownShare * r.heelThickness } : { share: r.crownShare } };
    const front = r.heelThickness;
    const tang =
      r.tang === "parallel"
        ? {}
        : r.tang === "tapered"
          ? { buttThickness: 0.6 * front }
          : {
              thickness: [
                { at: { kind: "handle" as const }, is: front },
                { at: { kind: "fraction" as const, share: 0.4 }, is: 0.9 * front },
                { at: { kind: "butt" as const }, is: 0.5 * front },
              ],
              between: r.between,
            };
    const spec: KnifeSpec = {
      steel: { name: "test steel", density: 0.00785 },
      blade: {
        outline: {
          family: r.family,
          edgeLength: r.edgeLength,
          heelHeight,
          straightEdge: r.straight * r.edgeLength,
          ...(r.family === "straight-back" ? {} : { tipHeight: r.tipHeight * heelHeight }),
          ...(r.family === "drop-point" ? { spineBreak: r.spineBreak * r.edgeLength } : {}),
        },
        ricasso: r.ricasso,
        thickness: [heel(front), share(0.55, r.middle * front), tip(r.tipShare * front)],
        between: r.between,
        flankTaper: r.flank,
        plunge: { at: r.plungeAt, length: r.plungeLength },
        bevel: {
          form: r.form,
          height: bevelHeight,
          edgeThickness: edge,
          ...(r.form === "convex" ? crown : {}),
        },
        edgeAngle: r.angle * DEGREE,
      },
      tang: {
        form: "full",
        length: 110,
        heights: { front: 0.7 * heelHeight, middle: 0.6 * heelHeight, butt: 0.72 * heelHeight },
        ...tang,
      },
    };
    return spec;
  });

/** The first `count` random descriptions that make a knife. */
export function randomKnives(
  count: number,
  seed = SEED,
): { readonly spec: KnifeSpec; readonly knife: Knife }[] {
  const made: { spec: KnifeSpec; knife: Knife }[] = [];
  for (const spec of fc.sample(knifeSpec, { numRuns: 2 * count, seed })) {
    if (made.length === count) break;
    try {
      made.push({ spec, knife: makeKnife(spec) });
    } catch (error) {
      if (!(error instanceof SpecError)) throw error;
    }
  }
  return made;
}
