import { cubic, line, type Path, vec2 } from "@scantling/geometry";
import fc from "fast-check";
import type { PatternHeight, PatternModel } from "../src/models/pattern-model.js";

const STEPS = 1e6;

/** Evenly spread values; `fc.double` would crowd about 0. The ends come up often all the same. */
const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: STEPS }).map((step) => min + ((max - min) * step) / STEPS);

/** Any text that a knife file could carry, hostile ones among it. */
const anyText = fc.oneof(
  fc.string({ maxLength: 12 }),
  fc.string({ unit: "grapheme", maxLength: 120 }),
  fc.string({ unit: "binary", maxLength: 60 }),
  fc.constantFrom("", "<script>alert(1)</script>", "]]>", "\u202egnp.exe", "W".repeat(200), "🔪🔪🔪🔪"),
);

/** Knives of all sizes and proportions, with any number of stations and holes, anywhere along them. */
export const randomModel: fc.Arbitrary<PatternModel> = fc
  .record({
    edge: between(40, 500),
    height: between(12, 130),
    tang: between(60, 200),
    ricasso: fc.oneof(fc.constant(0), between(0.1, 60)),
    tipShare: between(0.05, 1),
    belly: between(0, 0.9),
    tangHeight: between(8, 40),
    stations: fc.array(fc.record({ share: between(0, 1), thickness: between(0.3, 12) }), { maxLength: 24 }),
    holes: fc.array(
      fc.record({ share: between(-1, 1), up: between(0, 1), diameter: between(1, 15), kind: anyText }),
      { maxLength: 12 },
    ),
    texts: fc.record({ code: anyText, title: anyText, steel: anyText, state: anyText }),
    revision: fc.option(anyText, { nil: undefined }),
    bevel: between(0.05, 0.95),
    bevelFrom: fc.oneof(fc.constant(0), between(0, 0.5)),
    further: fc.boolean(),
    mass: between(1, 5000),
    units: fc.constantFrom("mm" as const, "in" as const),
  })
  .map((random) => {
    const { edge, height, tang, ricasso, units, mass, revision, texts } = random;
    const top = (x: number): number => (x < 0.5 * edge ? height : height - (height * (x / edge - 0.5)) / 4);
    return {
      ...texts,
      outline: outlineOf(random),
      bevelLine: [[line(vec2(0, height / 2), vec2(edge / 2, height / 2))]],
      holes: random.holes.map((hole) => ({
        centre: vec2(hole.share < 0 ? hole.share * (ricasso + tang) : hole.share * edge, height * hole.up),
        diameter: hole.diameter,
        kind: hole.kind,
      })),
      stations: random.stations.map(({ share, thickness }) => ({
        x: share * edge,
        top: top(share * edge),
        bottom: 0,
        thickness,
      })),
      handleFront: 0 - ricasso,
      edgeLength: edge,
      heelHeight: height,
      overallLength: edge + ricasso + tang,
      ...(random.further ? furtherSizes(random) : {}),
      steelMass: mass,
      knifeMass: mass * 1.4,
      units,
      ...(revision === undefined ? {} : { revision }),
    };
  });

/** Sizes as the random outline has them; a bevel of any height, from anywhere. */
function furtherSizes(random: Proportions): Partial<PatternModel> {
  const { edge, height, tang, ricasso, tipShare, belly } = random;
  const tangAt = (x: number): PatternHeight => ({ x, low: height - random.tangHeight, high: height });
  const front = 0 - ricasso;
  return {
    tangHeights: { front: tangAt(front), middle: tangAt(front - tang / 2), butt: tangAt(front - tang) },
    tipHeight: { x: edge, low: 0, high: height * tipShare },
    bevelHeight: { x: random.bevelFrom * edge, low: 0, high: height * random.bevel },
    greatestHeight: { x: edge / 4, low: 0, high: height },
    straightEdge: edge * belly,
  };
}

interface Proportions {
  readonly edge: number;
  readonly height: number;
  readonly tang: number;
  readonly ricasso: number;
  readonly tipShare: number;
  readonly belly: number;
  readonly tangHeight: number;
  readonly bevel: number;
  readonly bevelFrom: number;
}

function outlineOf(random: Proportions): Path {
  const { edge, height, tang, ricasso, tipShare, belly } = random;
  const tip = vec2(edge, height * tipShare);
  const start = vec2(edge * belly, 0);
  const shoulder = vec2(edge / 2, height);
  const front = 0 - ricasso;
  // Where the tang is higher than the blade it hangs below the edge: such handles exist, and crowd the sheet most.
  const low = height - random.tangHeight;
  const corners = [
    vec2(front, height),
    vec2(front - tang, height),
    vec2(front - tang, low),
    vec2(front, low),
  ];
  const points = [shoulder, ...corners, vec2(0, 0)];
  return {
    closed: true,
    segments: [
      line(vec2(0, 0), start),
      cubic(start, vec2((start.x + edge) / 2, 0), vec2(edge, tip.y / 2), tip),
      cubic(tip, vec2((edge + shoulder.x) / 2, height), vec2((edge + shoulder.x) / 2, height), shoulder),
      ...points.slice(1).map((to, index) => line(points[index] ?? to, to)),
    ],
  };
}
