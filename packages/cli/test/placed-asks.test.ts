import { describe, expect, it } from "vitest";
import { type FileError, readKnifeFile } from "../src/file/index.js";
import { DEMO_SHOP, demoWith } from "./support/demo.js";
import { measured } from "./support/sample-job.js";

const ASK = "    overallLength: { below: 370 mm }";
const withAsk = (ask: string, ...changes: readonly (readonly [string, string])[]): string =>
  demoWith([ASK, `    ${ask}`], ...changes);

/** Answers of the demo to one more ask; its bevel is 48 mm high, 4.6 mm less 0.3 at the line, 0.5 mm at the edge. */
async function answers(ask: string, ...changes: readonly (readonly [string, string])[]) {
  const { answers: all } = await measured(withAsk(ask, ...changes), DEMO_SHOP);
  return all.slice(2);
}

const problems = (ask: string): readonly string[] => {
  try {
    readKnifeFile(withAsk(ask), "k.knife.yaml");
    return [];
  } catch (error) {
    return (error as FileError).problems.map(({ message }) => message);
  }
};

describe("asks about a place on the blade", () => {
  it("are answered at the heel unless a place is given; a list is answered one by one", async () => {
    const found = await answers(
      "thickness: [{ below: 5 }, { at: 60 %, about: 3.6 ± 0.3 }, { at: tip, above: 2 }]",
    );
    expect(found.map(({ figure }) => figure.value)).toEqual([
      4.6,
      expect.closeTo(3.6, 9),
      expect.closeTo(2.2, 9),
    ]);
    expect(found.map(({ ask }) => ask.path)).toEqual([0, 1, 2].map((i) => `order.asks.thickness[${i}]`));
    // Left from the hammer: ± 0.2 mm everywhere.
    for (const { figure } of found) {
      expect(figure.interval?.[0]).toBeCloseTo(figure.value - 0.2, 9);
      expect(figure.interval?.[1]).toBeCloseTo(figure.value + 0.2, 9);
    }
  });

  it("take angles: atan of (4.3 − 0.5)/2 over 48 mm, moved by every input that it follows from", async () => {
    const [bevel] = await answers("bevelAngle: { below: 3 deg }");
    const angle = (line: number, edge: number, height: number): number =>
      Math.atan((line - edge) / 2 / height);
    const drawn = angle(4.3, 0.5, 48);
    expect(bevel?.figure.value).toBeCloseTo(drawn, 9);
    // Spine ± 0.2, flank taper ± 0.1, edge ± 0.05, bevel height ± 1 mm, in squares.
    const up = [angle(4.5, 0.5, 48), angle(4.4, 0.5, 48), angle(4.3, 0.45, 48), angle(4.3, 0.5, 47)];
    const plus = Math.hypot(...up.map((moved) => moved - drawn));
    expect(bevel?.figure.interval?.[1]).toBeCloseTo(drawn + plus, 7);
    expect(bevel?.verdict).toBe("met");
  });

  it("take the thickness behind the edge, or so far up from it", async () => {
    const [behind, above] = await answers("behindEdge: [{ below: 0.7 }, { up: 5 mm, below: 1.2 }]");
    // The sharpening plane, 16° a side, meets the face at 0.25/(tan 16° − tan α).
    const slope = 1.9 / 48;
    const height = 0.25 / (Math.tan((16 * Math.PI) / 180) - slope);
    expect(behind?.figure.value).toBeCloseTo(2 * height * Math.tan((16 * Math.PI) / 180), 6);
    expect(above?.figure.value).toBeCloseTo(0.5 + 2 * 5 * slope, 6);
  });

  it("take the sharpening angle, exact unless the file gives it a tolerance", async () => {
    const [exact] = await answers("sharpeningAngle: { about: 16 ± 1 deg }");
    expect(exact?.figure.value).toBeCloseTo((16 * Math.PI) / 180, 12);
    expect(exact?.figure.interval).toBeUndefined();
    const [given] = await answers("sharpeningAngle: { about: 16 ± 1 deg }", [
      "edgeAngle: 16 deg",
      "edgeAngle: 16 ± 2 deg",
    ]);
    expect(given?.verdict).toBe("at-risk");
  });

  it("take the length of the handle: of the tang, of a block that reaches farther back", async () => {
    const [tang] = await answers("handleLength: { about: 128 ± 2 }");
    expect(tang?.figure.value).toBeCloseTo(128, 9);
    const hidden = [
      [
        "form: full\n  length: 128\n  heights: { front: 28, middle: 25, butt: 30 }\n  buttThickness: 2.4",
        "form: hidden\n  length: 100\n  heights: { front: 20, middle: 18, butt: 12 }\n  buttThickness: 2.4",
      ],
      ["{ kind: pin, at: [-84, 76], diameter: 4 }", "{ kind: pin, at: [-60, 46], diameter: 4 }"],
      ["{ kind: pin, at: [-26, 76], diameter: 4 }", "{ kind: pin, at: [-36, 46], diameter: 4 }"],
      ["\n    - { kind: thong, at: [-116, 76], diameter: 6 }", ""],
      [
        "slabs: { material: European ash, thickness: 8, edgeRadius: 6 }",
        "block: { material: European ash, length: 135, height: 32, width: 24, section: oval }",
      ],
    ] as const;
    const { answers: all } = await measured(
      withAsk("handleLength: { about: 135 ± 2 }", ...hidden),
      DEMO_SHOP,
    );
    expect(all.at(-1)?.figure.value).toBeCloseTo(135, 9);
  });

  it("are refused where the blade has no such thing", async () => {
    await expect(answers("bevelAngle: { at: 230, below: 3 deg }")).rejects.toThrow();
    await expect(answers("behindEdge: { up: 500 mm, below: 3 mm }")).rejects.toThrow(/off-the-edge/u);
  });
});

describe("what is written wrong", () => {
  it("is told with an example of its own kind", () => {
    expect(problems("bevelAngle: 4 deg")[0]).toContain("needs a condition, such as { below: 4 deg }");
    expect(problems("thickness: { at: hell, below: 5 }")[0]).toContain("did you mean heel?");
    expect(problems("thickness: []")[0]).toContain("needs at least one condition");
    expect(problems("hardness: { about: 60 }")[0]).toContain("60 ± 1");
    expect(problems("hardness: { about: 6 ± 1 }")[0]).toContain("is no hardness of a blade");
    expect(problems("hardness: { about: 60 HRC ± 1 }")).toEqual([]);
    expect(problems("hardness: { between: [58 HRC, 60] }")).toEqual([]);
  });
});

describe("a hardness", () => {
  it("is told by tables, and never computed", async () => {
    const text = withAsk("hardness: { about: 60 ± 1 }", ['steel: "1084"', "steel: O1"]);
    const { hardness, answers: all } = await measured(text);
    expect(all.map(({ ask }) => ask.name)).toEqual(["mass", "balance"]);
    expect(hardness).toMatchObject({ aim: 60, steel: "O1" });
    expect(hardness?.tempers.map(({ temperature }) => temperature)).toEqual([expect.closeTo(246.1, 1), 260]);
  });
});
