import fc from "fast-check";
import type { AlongBlade, PlotsModel } from "../src/models/plots-model.js";

const through = (...points: readonly (readonly [number, number])[]): AlongBlade =>
  points.map(([x, y]) => ({ x, y }));

/** Order MG-14, invented: figures in round numbers. */
export function harvestPlots(): PlotsModel {
  return {
    code: "MG-14",
    title: "Tall harvest knife for a market garden",
    steel: "1084",
    units: "mm",
    densityFromMemory: true,
    thickness: {
      spine: through([-138, 2.4], [-10, 4.6], [0, 4.6], [135, 3.6], [225, 2.2]),
      above: 1,
      aboveEdge: through([0, 0.55], [225, 0.5]),
      forgedSpine: through([-138, 3.6], [-10, 5.8], [0, 4.8], [135, 3.8], [225, 2.4]),
      forgedEdge: through([0, 1.7], [225, 1.7]),
      stations: through([0, 4.6], [56.25, 4.18], [112.5, 3.77], [168.75, 3.08], [213.75, 2.37]),
    },
    area: {
      finished: through(
        [-138, 0],
        [-138, 70],
        [-10, 130],
        [0, 130],
        [0, 310],
        [135, 240],
        [225, 120],
        [225, 0],
      ),
      forged: through(
        [-141, 0],
        [-141, 120],
        [-10, 180],
        [0, 180],
        [0, 375],
        [135, 310],
        [228, 185],
        [228, 0],
      ),
      finishedVolume: 67_400,
      forgedVolume: 89_400,
      billet: { from: -141, length: 146.3, area: 684, words: "welded billet" },
    },
    ledger: [
      { name: "finished blade", mass: 528, total: true },
      { name: "sharpening", mass: 0.4, total: false },
      { name: "finish grinding", mass: 22, total: false },
      { name: "heat-treatment scale", mass: 3.6, total: false },
      { name: "ready to harden", mass: 554, total: true },
      { name: "bevel grinding", mass: 31, total: false },
      { name: "face grinding", mass: 120, total: false },
      { name: "forged blade", mass: 705, total: true },
      { name: "forging scale", mass: 80, total: false },
      { name: "dressed billet", mass: 785, total: true },
      { name: "cropping", mass: 220, total: false },
      { name: "spare", mass: 210, total: false },
      { name: "bars as cut", mass: 1215, total: true },
    ],
    mass: {
      value: 567,
      interval: [536, 598],
      asked: [Number.NEGATIVE_INFINITY, 600],
      causes: [
        { name: "thickness at the spine", share: 0.7 },
        { name: "each side of the outline", share: 0.2 },
        { name: "flank taper", share: 0.1 },
      ],
    },
    plans: [
      { words: "3 × 160 mm of 1/4 x 2 in", mass: 1215, waste: 687, joints: 2, reach: 0.49, cost: 10.92 },
      { words: "4 × 130 mm of 8 x 40 mm", mass: 1306, waste: 778, joints: 3, reach: 0.49 },
      { words: "1 × 210 mm of 20 x 40 mm", mass: 1320, waste: 792, joints: 0, reach: 0.6, cost: 12 },
    ],
    currency: "EUR",
  };
}

const text = fc.oneof(
  fc.string({ maxLength: 60 }),
  fc.string({ unit: "grapheme", maxLength: 90 }),
  fc.constantFrom("", "W".repeat(200), "\u202egnp.exe", "<svg/>", "thickness at the spine (2nd station)"),
);
const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: 1e6 }).map((step) => min + ((max - min) * step) / 1e6);
const along = (most: number): fc.Arbitrary<AlongBlade> =>
  fc
    .array(fc.record({ x: between(-200, 500), y: between(0, most) }), { minLength: 2, maxLength: 60 })
    .map((points) => points.sort((a, b) => a.x - b.x));

/** Any figures and any names, with bars and without. */
export const randomPlots: fc.Arbitrary<PlotsModel> = fc.record({
  code: text,
  title: text,
  steel: text,
  units: fc.constantFrom("mm" as const, "in" as const),
  densityFromMemory: fc.boolean(),
  thickness: fc.record({
    spine: along(14),
    above: fc.constant(1),
    aboveEdge: fc.oneof(fc.constant([]), along(4)),
    forgedSpine: along(14),
    forgedEdge: along(6),
    stations: fc.array(fc.record({ x: between(-100, 400), y: between(0.2, 12) }), { maxLength: 12 }),
  }),
  area: fc
    .record({
      finished: along(600),
      forged: along(800),
      finishedVolume: between(1000, 500_000),
      forgedVolume: between(1000, 900_000),
      from: between(-200, 0),
      length: between(40, 900),
      section: between(20, 4000),
      bars: fc.boolean(),
      words: fc.constantFrom("bar", "welded billet", "last bar"),
    })
    .map(({ from, length, section, bars, words, ...area }) => ({
      ...area,
      ...(bars ? { billet: { from, length, area: section, words } } : {}),
    })),
  ledger: fc
    .array(fc.record({ name: text, mass: between(0.001, 400), state: fc.boolean() }), { maxLength: 16 })
    .map((rows) => {
      let sum = 0;
      const added = rows.map(({ name, mass, state }, index) => {
        const total = index === 0 || index === rows.length - 1 || state;
        if (!total || index === 0) sum += mass;
        return { name, mass: total ? sum : mass, total };
      });
      return added.length < 2 ? [] : added;
    }),
  mass: fc
    .record({
      value: between(20, 4000),
      low: between(0, 0.2),
      high: between(0, 0.2),
      causes: fc.array(fc.record({ name: text, share: between(0, 1) }), { maxLength: 10 }),
      asked: fc.option(fc.record({ at: between(0.5, 1.5), open: fc.constantFrom("low", "high", "none") })),
    })
    .map(({ value, low, high, causes, asked }) => ({
      value,
      interval: [value * (1 - low), value * (1 + high)] as const,
      causes: causes.sort((a, b) => b.share - a.share),
      ...(asked === null
        ? {}
        : {
            asked: [
              asked.open === "low" ? Number.NEGATIVE_INFINITY : 0.9 * asked.at * value,
              asked.open === "high" ? Number.POSITIVE_INFINITY : asked.at * value,
            ] as const,
          }),
    })),
  plans: fc.array(
    fc
      .record({
        words: text,
        mass: between(50, 9000),
        waste: between(0, 8000),
        joints: fc.integer({ min: 0, max: 12 }),
        reach: fc.oneof(between(0, 1.2), fc.constant(0)),
        cost: fc.option(between(0, 400)),
      })
      .map(({ cost, ...plan }) => (cost === null ? plan : { ...plan, cost })),
    { maxLength: 9 },
  ),
});
