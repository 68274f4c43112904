import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { answer, flat, wideLines } from "../support/answer.js";
import { DEMO_FILES, DEMO_KNIFE } from "../support/demo.js";

const FILE = "harvest.knife.yaml";
const withAsks = (...asks: readonly string[]): string =>
  DEMO_KNIFE.replace(
    / {2}asks:[\s\S]*?(?=^units)/mu,
    `  asks:\n${asks.map((ask) => `    ${ask}\n`).join("")}`,
  );
const run = (command: "check" | "quote", text: string, ...options: readonly string[]) =>
  answer([command, FILE, ...options], { files: { ...DEMO_FILES, [FILE]: text } });

async function conflictsOf(...asks: readonly string[]) {
  const { code, out } = await run("check", withAsks(...asks), "--json");
  return { code, ...JSON.parse(out) };
}

describe("asks that contradict each other", () => {
  const TWICE = "thickness: [{ above: 4 mm }, { at: 0 mm, below: 3 mm }]";

  it("are told without a search: two of one figure at one place, however that is written", async () => {
    const { code, conflicts, conflictSearch, findings } = await conflictsOf(TWICE);
    expect(code).toBe(EXIT.notMet);
    expect(conflictSearch).toBe("none");
    expect(conflicts).toMatchObject([
      {
        kind: "same-figure",
        asks: ["thickness[0]", "thickness[1]"],
        relax: [
          { ask: "thickness[0]", limit: "atLeast", fromMm: 4, toMm: 3, byMm: 1 },
          { ask: "thickness[1]", limit: "atMost", fromMm: 3, toMm: 4, byMm: 1 },
        ],
      },
    ]);
    expect(findings).toContainEqual(expect.objectContaining({ code: "asks-contradict", severity: "stop" }));
  });

  it("are told in words, with which to relax and by how much", async () => {
    const { out } = await run("check", withAsks(TWICE));
    expect(wideLines(out)).toEqual([]);
    const text = flat(out);
    expect(text).toMatch(/CANNOT ALL HOLD: thickness.* What would settle it/u);
    expect(text).toMatch(
      /down to 3\.0 mm instead of 4\.0 mm; or thickness.* up to 4\.0 mm instead of 3\.0 mm/u,
    );
  });

  it("can be lengths that do not add up", async () => {
    const { conflicts, findings } = await conflictsOf(
      "overallLength: { below: 200 mm }",
      "edgeLength: { above: 150 mm }",
      "handleLength: { above: 100 mm }",
    );
    expect(conflicts[0]).toMatchObject({
      kind: "lengths",
      asks: ["overallLength", "edgeLength", "handleLength"],
    });
    const [overall, edge, handle] = conflicts[0].relax;
    expect(overall.byMm).toBeCloseTo(edge.byMm, 9);
    expect(overall.byMm).toBeCloseTo(handle.byMm, 9);
    // With the drawing's own ricasso.
    expect(overall.toMm).toBeGreaterThanOrEqual(250);
    expect(findings.map(({ code }: { code: string }) => code)).toContain("asked-lengths-disagree");
  });

  it("can be a bevel, a spine and a height, by trigonometry", async () => {
    const { conflicts } = await conflictsOf(
      "bevelAngle: { below: 1 deg }",
      "thickness: { above: 4 mm }",
      "heelHeight: { below: 30 mm }", // flats of the demo lose 0.3 mm toward the bevel line
      "behindEdge: { below: 0.4 mm }",
    );
    const bevel = conflicts.find(({ kind }: { kind: string }) => kind === "bevel");
    expect(bevel.asks).toEqual(["bevelAngle", "thickness", "heelHeight", "behindEdge"]);
    const to = Object.fromEntries(
      bevel.relax.map((one: { ask: string; toMm?: number; toDeg?: number }) => [
        one.ask,
        one.toDeg ?? one.toMm,
      ]),
    );
    expect(to["bevelAngle"]).toBeCloseTo((Math.atan(3.3 / 60) * 180) / Math.PI, 9);
    expect(to["thickness"]).toBeCloseTo(0.3 + 0.4 + 60 * Math.tan(Math.PI / 180), 9);
  });

  it("can be a hardness that the steel does not come to", async () => {
    const { conflicts } = await conflictsOf("hardness: { between: [67, 68] }");
    expect(conflicts).toMatchObject([
      { kind: "hardness", asks: ["hardness"], relax: [{ limit: "atLeast", fromHrc: 67 }] },
    ]);
  });
});

describe("asks that no usual change brings together", async () => {
  const drawn = JSON.parse(
    (await run("check", withAsks("mass: { below: 9 kg }", "balance: { between: [-500, 500] }"), "--json"))
      .out,
  );
  const mass: number = drawn.asks[0].valueG;
  const ahead: number = drawn.asks[1].valueMm;
  // Lighter than drawn by little, and a balance far behind: weight has to come to the handle.
  const asks = [
    `mass: { below: ${(mass * 0.88).toFixed(1)} g }`,
    `balance: { below: ${(ahead - 25).toFixed(1)} mm }`,
  ];

  it("are the smallest set, each with the least that it has to give way", async () => {
    const { code, conflicts, conflictSearch, conflictChanges, findings } = await conflictsOf(
      ...asks,
      "overallLength: { below: 2 m }",
    );
    expect(code).toBe(EXIT.notMet);
    expect(conflictSearch).toBe("whole");
    expect(flat((await run("check", withAsks(...asks))).out)).toContain(
      "CANNOT ALL HOLD by the usual changes: mass and balance.",
    );
    expect(conflictChanges).toContain("thickness");
    expect(conflicts).toHaveLength(1);
    expect(conflicts[0]).toMatchObject({ kind: "changes", asks: ["mass", "balance"] });
    for (const { ask, ...limits } of conflicts[0].relax) {
      const by = limits.byG ?? limits.byMm;
      expect(by, ask).toBeGreaterThan(0);
      // Once it has given way by that much and a hair the others hold: nothing is left to tell.
      const text =
        ask === "mass"
          ? `mass: { below: ${limits.toG + 0.2} g }`
          : `balance: { below: ${limits.toMm + 0.1} mm }`;
      const settled = await conflictsOf(...asks.map((one) => (one.startsWith(ask) ? text : one)));
      expect(settled.conflicts, ask).toEqual([]);
      expect(settled.outOfReach, ask).toEqual([]);
    }
    expect(findings).toContainEqual(expect.objectContaining({ code: "asks-collide", severity: "warn" }));
  });

  it("are a warning of a quote; that not all is met is what its exit code says", async () => {
    const { code, out } = await run("quote", withAsks(...asks));
    expect(code).toBe(EXIT.notMet);
    expect(flat(out)).toContain(
      "warning: Settle this before you quote. What is asked cannot all hold: mass and balance.",
    );
    const json = JSON.parse((await run("quote", withAsks(...asks), "--json")).out);
    expect(json.conflicts).toMatchObject([{ asks: ["mass", "balance"] }]);
  });

  it("are not looked for where one of them is a wish, or all are met", async () => {
    const [first = "", second = ""] = asks;
    const wished = await conflictsOf(first, second.replace(" }", ", should: true }"));
    expect(wished.conflicts).toEqual([]);
    expect(drawn.conflictSearch).toBe("none");
  });
});
