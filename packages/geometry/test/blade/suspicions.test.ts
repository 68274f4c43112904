import { describe, expect, test } from "vitest";
import { makeKnife } from "../../src/blade/knife.js";
import { ledgerBodies } from "../../src/blade/ledger-bodies.js";
import type { HoleSpec, KnifeSpec } from "../../src/blade/spec.js";
import { SpecError } from "../../src/errors/errors.js";
import type { Issue } from "../../src/errors/issue.js";
import { describeIssue } from "../../src/units/index.js";

const plain = (change: {
  heel?: number;
  tip?: number;
  height?: number;
  slab?: number;
  holes?: readonly HoleSpec[];
  steel?: string;
}): KnifeSpec => ({
  steel: { name: change.steel ?? "1084" },
  blade: {
    outline: { family: "vegetable", edgeLength: 200, heelHeight: 60, straightEdge: 150, tipHeight: 52 },
    ricasso: 10,
    thickness: [
      { at: { kind: "heel" }, is: change.heel ?? 4 },
      { at: { kind: "tip" }, is: change.tip ?? 2 },
    ],
    bevel: { form: "flat", height: change.height ?? 40, edgeThickness: 0.4 },
    edgeAngle: 0.28,
  },
  tang: {
    form: "full",
    length: 120,
    heights: { front: 30, middle: 30, butt: 30 },
    holes: change.holes ?? [],
  },
  ...(change.slab === undefined
    ? {}
    : {
        handle: {
          slabs: { material: { name: "European ash" }, thickness: change.slab },
          ...(change.holes === undefined ? {} : { pins: { material: { name: "brass" } } }),
        },
      }),
});

const codes = (spec: KnifeSpec): string[] => makeKnife(spec).findings.map(({ code }) => code);
const pin = (x: number, y: number, diameter = 4, kind: HoleSpec["kind"] = "pin"): HoleSpec => ({
  kind,
  at: { x, y },
  diameter,
});
const issuesOf = (spec: KnifeSpec): readonly Issue[] => {
  try {
    makeKnife(spec);
  } catch (error) {
    if (error instanceof SpecError) return error.issues;
    throw error;
  }
  return [];
};
const issueCodes = (spec: KnifeSpec): string[] => issuesOf(spec).map(({ code }) => code);

describe("likely slips", () => {
  test("a sound knife has none", () => {
    expect(codes(plain({ slab: 8, holes: [pin(-40, 45), pin(-90, 45)] }))).toEqual([]);
  });

  test("a bevel higher than the blade is ground to the spine, and said", () => {
    expect(codes(plain({ height: 400 }))).toEqual(["bevel-over-spine"]);
    expect(codes(plain({ height: 59.9 }))).toEqual([]);
  });

  test("thicker at the tip than at the heel", () => {
    expect(codes(plain({ heel: 3, tip: 5 }))).toEqual(["thicker-at-tip"]);
  });

  test("a spine of 36 mm, a slab of 203 mm", () => {
    expect(codes(plain({ heel: 36 }))).toContain("spine-very-thick");
    expect(codes(plain({ slab: 203.2 }))).toEqual(["slab-very-thick"]);
  });
});

describe("holes", () => {
  test("1 mm of steel between two is too little, none at all is refused", () => {
    expect(codes(plain({ holes: [pin(-40, 45), pin(-45, 45)] }))).toEqual(["holes-close"]);
    expect(issueCodes(plain({ holes: [pin(-40, 45), pin(-44, 45)] }))).toEqual(["holes-overlap"]);
  });

  test("a pin needs 1.5 diameters to the side of the tang; a lightening hole only its wall", () => {
    // The tang reaches from y = 30 to 60: a centre at 44 is 14 mm from its lower side, 1.4 diameters of a 10 mm hole.
    expect(codes(plain({ holes: [pin(-60, 44, 10)] }))).toEqual(["hole-too-near-edge"]);
    expect(codes(plain({ holes: [pin(-60, 45, 10)] }))).toEqual(["hole-near-edge"]);
    expect(codes(plain({ holes: [pin(-60, 44, 10, "lightening")] }))).toEqual([]);
    expect(codes(plain({ holes: [pin(-60, 37, 10, "lightening")] }))).toEqual(["hole-near-edge"]);
  });

  test("where the tang is lower than a pin needs no way up or down is told, but a pin or a place that fits", () => {
    // A tang 24 mm high at its front, 10 mm at the butt, straight between, its top at y = 60.
    const taper = (x: number, y: number, diameter = 4): KnifeSpec => {
      const spec = plain({ holes: [pin(x, y, diameter)] });
      return { ...spec, tang: { ...spec.tang, heights: { front: 24, middle: 17, butt: 10 } } };
    };
    const [told, ...others] = makeKnife(taper(-125, 54)).findings;
    expect(others).toEqual([]);
    expect(told?.code).toBe("hole-too-near-edge");
    expect(told?.text).not.toMatch(/Move it \{move\}/u);
    expect(told?.text).toContain("does not help");
    const sizeOf = (name: string): number => {
      const value = told?.values?.[name];
      return typeof value === "object" ? value.value : Number.NaN;
    };
    expect(sizeOf("needed")).toBeCloseTo(12, 9);
    expect(sizeOf("height")).toBeLessThan(12);
    // What it tells to do is found good, or only not the best, once it is done: no circle.
    const graver = (spec: KnifeSpec) =>
      makeKnife(spec).findings.filter(({ severity }) => severity === "stop");
    expect(makeKnife(taper(sizeOf("x"), sizeOf("y"))).findings).toEqual([]);
    expect(graver(taper(-125, 60 - sizeOf("height") / 2, sizeOf("fits") * 0.99))).toEqual([]);
    expect(graver(taper(-125, 60 - sizeOf("height") / 2, sizeOf("fits") * 1.02))).toHaveLength(1);
  });

  test("a hanging hole carries nothing to speak of: only its wall counts; a lanyard pulls", () => {
    expect(codes(plain({ holes: [pin(-60, 44, 10, "hanging")] }))).toEqual([]);
    const { findings } = makeKnife(plain({ holes: [pin(-60, 37, 10, "hanging")] }));
    expect(findings.map(({ code, severity }) => [code, severity])).toEqual([["hole-near-edge", "warn"]]);
    expect(codes(plain({ holes: [pin(-60, 44, 10, "thong")] }))).toEqual(["hole-too-near-edge"]);
  });

  test("that lie outside, or too near a long side, are told where the steel is there", () => {
    // The tang lies between y = 30 and 60 and ends at x = −130, the tip at 200.
    const told = (x: number, y: number): string | undefined => {
      try {
        return describeIssue(makeKnife(plain({ holes: [pin(x, y, 6)] })).findings[0] ?? { text: "" }, "mm");
      } catch (error) {
        return error instanceof SpecError && error.issues[0] !== undefined
          ? describeIssue(error.issues[0], "mm")
          : String(error);
      }
    };
    const there = "At x −60 mm the steel reaches from y 30 mm to y 60 mm.";
    expect(told(-60, 66)).toContain(
      `lies wholly outside the steel. Move it: x counts ahead of the heel, y up from it. ${there}`,
    );
    // A third of the radius inside: (acos(1/3) − (1/3) √(1 − 1/9)) / π of the circle is outside, 29.2 %.
    expect(told(-60, 59)).toContain(
      `it passes the outline by 2 mm (29.2 % of it is outside). Move it or drill smaller. ${there}`,
    );
    expect(told(-160, 45)).toContain("The steel reaches from x −130 mm to x 200 mm.");
    expect(told(-60, 54)).toContain(`6 mm from the top of the tang; at least 9 mm is needed.`);
    expect(told(-60, 54)).toContain(there);
    // Of a butt too near y says nothing.
    expect(told(-124, 45)).not.toContain("reaches from");
  });

  test("are told from which side, and how far to move them", () => {
    const at = (x: number, y: number) => makeKnife(plain({ holes: [pin(x, y, 6)] })).findings[0]?.values;
    // The butt lies at x = −130, the tang between y = 30 and 60.
    expect(at(-124, 45)).toMatchObject({ side: "the butt", distance: { value: 6 } });
    // 1.5 diameters are 9 mm: 3 more than there are.
    expect(at(-124, 45)).toMatchObject({ move: { value: expect.closeTo(3, 9) } });
    expect(at(-60, 37)).toMatchObject({ side: "the lower side of the tang" });
    expect(at(-60, 53)).toMatchObject({ side: "the top of the tang" });
  });
});

test("an unknown material is answered with the nearest name and a density that fits its place", () => {
  try {
    makeKnife(plain({ steel: "80CrV3" }));
    expect.unreachable();
  } catch (error) {
    const issue = (error as SpecError).issues[0];
    expect(issue).toMatchObject({ code: "unknown-material", path: "steel" });
    expect(issue?.values).toMatchObject({ near: expect.stringContaining("80CrV2"), like: "7.85" });
  }
});

describe("what no blade is made of, and no knife measures", () => {
  test("wood for steel, and a density with a slipped digit", () => {
    expect(issueCodes(plain({ steel: "European ash" }))).toContain("not-a-steel");
    const slipped = { ...plain({}), steel: { name: "own", density: 0.783 } };
    expect(issueCodes(slipped)).toContain("not-a-steel");
    expect(issueCodes({ ...slipped, steel: { name: "own", density: 0.00783 } })).toEqual([]);
  });

  test("a length of more than 5 m, in a landmark or in path data", () => {
    const spec = plain({});
    const long = { family: "vegetable" as const, edgeLength: 1_200_000, heelHeight: 60 };
    expect(issueCodes({ ...spec, blade: { ...spec.blade, outline: long } })).toContain("length-too-great");
    const runs = { edge: "M0 0 L90000 0", spine: "L90000 40 L-10 40", tangTop: "L-100 40", butt: "L-100 10" };
    const drawn = {
      ...spec,
      blade: { ...spec.blade, outline: { runs: { ...runs, front: "L90000 40", spine: "L-10 40" } } },
      tang: { form: "full" as const },
    };
    expect(issueCodes(drawn)).toContain("length-too-great");
  });
});

test("a crown is judged at every station, not at the heel alone", () => {
  const spec = plain({});
  const crown = {
    mm: [
      { at: { kind: "heel" as const }, is: 0.1 },
      { at: { kind: "distance" as const, mm: 80 }, is: 2.5 },
    ],
  };
  const bevel = { form: "convex" as const, height: 40, edgeThickness: 0.4, crown };
  const { findings } = makeKnife({ ...spec, blade: { ...spec.blade, bevel } });
  expect(findings.map(({ code }) => code)).toEqual(["crown-too-large"]);
  expect(findings[0]?.values).not.toHaveProperty("askedShare");
});

test("a crown given as a share is answered with the share that fits", () => {
  const spec = plain({});
  const bevel = { form: "convex" as const, height: 40, edgeThickness: 0.4, crown: { share: 0.4 } };
  const [finding] = makeKnife({ ...spec, blade: { ...spec.blade, bevel } }).findings;
  expect(finding?.code).toBe("crown-too-large");
  // The sagitta of the level arc is an eighth of what both faces gain, as long as the bevel is not steep.
  expect(finding?.values).toMatchObject({
    askedShare: { value: expect.closeTo(0.4, 12) },
    mostShare: { value: expect.closeTo(0.125, 3) },
    most: { value: expect.closeTo(0.125 * (4 - 0.4), 2) },
  });
});

test("a bevel left from the hammer has nothing to grind off", () => {
  const spec = { ...plain({}), finish: { flats: "forged" as const, bevels: "forged" as const } };
  const bodies = ledgerBodies(makeKnife(spec));
  expect(bodies.bevelGrinding).toBeCloseTo(0, 3);
  expect(ledgerBodies(makeKnife(plain({}))).bevelGrinding).toBeGreaterThan(1000);
});

describe("slots, fullers and swedges lie in the steel", () => {
  const slot = (to: { x: number; y: number }): HoleSpec => ({ ...pin(-40, 45, 6, "lightening"), to });
  const ground = (more: Partial<KnifeSpec["blade"]>): KnifeSpec => {
    const spec = plain({});
    return { ...spec, blade: { ...spec.blade, ...more } };
  };
  const fuller = { from: { x: 20, y: 50 }, to: { x: 150, y: 50 }, radius: 8, depth: 0.5 };

  test("a slot is looked at from end to end", () => {
    expect(codes(plain({ holes: [slot({ x: -80, y: 45 })] }))).toEqual([]);
    expect(issueCodes(plain({ holes: [slot({ x: -80, y: 28 })] }))).toEqual(["hole-outside-steel"]);
    expect(issuesOf(plain({ holes: [slot({ x: -80, y: 28 })] }))[0]).toMatchObject({
      path: "tang.holes[0].to",
      text: expect.stringContaining("this end of it passes the outline"),
    });
    const backward = { ...slot({ x: -40, y: 45 }), at: { x: -80, y: 10 } };
    expect(issuesOf(plain({ holes: [backward] }))[0]?.path).toBe("tang.holes[0].at");
    expect(issueCodes(plain({ holes: [slot({ x: -80, y: 45 }), pin(-60, 46)] }))).toEqual(["holes-overlap"]);
  });

  test("a fuller neither leaves the steel nor goes through it", () => {
    expect(codes(ground({ fullers: [fuller] }))).toEqual([]);
    expect(issueCodes(ground({ fullers: [{ ...fuller, to: { x: 150, y: 59 } }] }))).toEqual([
      "fuller-outside-steel",
    ]);
    // The blade is 2.5 thick at x = 150: two grooves of 1.3 meet.
    expect(issueCodes(ground({ fullers: [{ ...fuller, depth: 1.3 }] }))).toEqual(["fuller-through"]);
  });

  test("a swedge begins behind its end", () => {
    const swedge = {
      from: { kind: "tip" as const },
      to: { kind: "heel" as const },
      angle: 0.5,
      thickness: 1,
    };
    expect(issueCodes(ground({ swedge }))).toEqual(["swedge-backward"]);
  });
});
