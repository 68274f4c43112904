import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { answer, flat, wideLines } from "../support/answer.js";
import { DEMO_FILES, demoWith } from "../support/demo.js";

const FILE = "harvest.knife.yaml";

interface CutStation {
  readonly heightMm: number;
  readonly thicknessMm: number;
  readonly edgeThicknessMm: number;
  readonly contoursMm?: readonly (readonly [z: number, y: number])[][];
}

async function json(argv: readonly string[], text?: string) {
  const files = text === undefined ? DEMO_FILES : { ...DEMO_FILES, [FILE]: text };
  const { code, out, err } = await answer([...argv, "--json"], { files });
  expect(err.replace(/^Print at.*\n/, "")).toBe("");
  expect(code).toBe(EXIT.done);
  return JSON.parse(out);
}

describe("weigh --state", () => {
  it("finished is the report without it, to the byte", async () => {
    const plain = await answer(["weigh", FILE], { files: DEMO_FILES });
    const finished = await answer(["weigh", FILE, "--state", "finished"], { files: DEMO_FILES });
    expect(finished.out).toBe(plain.out);
  });

  it("weighs what the ledger has at that state, hardening's scale aside", async () => {
    const { plans } = await json(["stock", FILE]);
    const ledger = (name: string): number =>
      plans[0].ledger.find(({ row }: { row: string }) => row === name).massG;
    for (const [state, row] of [
      ["ready", "ready-to-harden"],
      ["forged", "forged-blade"],
    ] as const) {
      const report = await json(["weigh", FILE, "--state", state]);
      expect(report.schema).toBe("scantling/weigh-state/1");
      expect(report.state).toBe(state);
      expect(Math.abs(report.ledgerMassG - ledger(row))).toBeLessThan(1e-5);
      expect(Math.abs(report.ledgerMassG - report.steel.massG - ledger("heat-treatment-scale"))).toBeLessThan(
        1e-5,
      );
    }
  });

  it("cuts where it is asked to: 3 mm higher than finished, the edge as thick as it was forged", async () => {
    const finished = await json(["weigh", FILE, "--at", "60 mm"]);
    const forged = await json(["weigh", FILE, "--at", "60 mm", "--state", "forged"]);
    const at = (report: { stations: readonly CutStation[] }): CutStation => {
      const found = report.stations.find(({ contoursMm }) => contoursMm !== undefined);
      if (found === undefined) throw new Error("the place that was asked for is there");
      return found;
    };
    const [a, b] = [at(finished), at(forged)];
    expect(b.heightMm - a.heightMm).toBeCloseTo(3, 9);
    // Ready at 0.7, and the face allowance of 0.5 a side: more than the 1.6 that the hammer leaves.
    expect(b.edgeThicknessMm).toBeCloseTo(1.7, 9);
    // The flats keep their forge finish: no allowance on them.
    expect(b.thicknessMm).toBe(a.thicknessMm);
    const heights = (b.contoursMm ?? []).flat().map(([, y]) => y);
    expect(Math.min(...heights)).toBeCloseTo(-1.5, 9);
  });

  it.each(["mm", "in"])("fits on 80 columns in %s and says what is still on", async (units) => {
    for (const state of ["ready", "forged"]) {
      const { out } = await answer(["weigh", FILE, "--state", state, "--units", units], {
        files: DEMO_FILES,
      });
      expect(wideLines(out)).toEqual([]);
      expect(flat(out)).toContain("Still on:");
      expect(out).not.toMatch(/NaN|undefined|Infinity/);
    }
  });

  it("names the states where it is given another", async () => {
    const { code, err } = await answer(["weigh", FILE, "--state", "rough"], { files: DEMO_FILES });
    expect(code).toBe(EXIT.usage);
    expect(flat(err)).toContain("finished, ready, forged");
  });
});

describe("pattern --state", () => {
  it("finished is the drawing without it, to the byte", async () => {
    const draw = async (...argv: string[]) =>
      (await answer(["pattern", FILE, ...argv], { files: DEMO_FILES })).io.disk.text(
        "/shop/harvest.pattern.svg",
      );
    expect(await draw("--state", "finished")).toBe(await draw());
  });

  it("draws each state into a file of its own, with its name on the sheet", async () => {
    const { io, out } = await answer(["pattern", FILE, "--state", "forged", "--json"], { files: DEMO_FILES });
    expect(JSON.parse(out).sheets[0]).toMatchObject({
      file: "harvest.pattern-forged.svg",
      state: "as forged",
    });
    const svg = io.disk.text("/shop/harvest.pattern-forged.svg");
    expect(svg).toContain("as forged");
    expect(svg).toContain("finished dashed");
    // 225 + 3 from heel to tip, 363 + 6 overall, 92 + 3 high.
    for (const text of ["228 mm", "369 mm", "95 mm"]) expect(svg).toContain(text);
    const ready = await answer(["pattern", FILE, "--state", "ready"], { files: DEMO_FILES });
    expect(ready.out).toBe("harvest.pattern-ready.svg\n");
    expect(ready.io.disk.text("/shop/harvest.pattern-ready.svg")).toContain("ready to harden");
  });

  it("draws no bevel line where the hammer leaves none", async () => {
    const lines = async (forgedBevel: string): Promise<number> => {
      const text = demoWith(["forgedBevel: line", `forgedBevel: ${forgedBevel}`]);
      const { io } = await answer(["pattern", FILE, "--state", "forged"], {
        files: { ...DEMO_FILES, [FILE]: text },
      });
      const svg = io.disk.text("/shop/harvest.pattern-forged.svg");
      const [, path = ""] = /id="bevel-line"[\s\S]*?\bd="([^"]*)"/.exec(svg) ?? [];
      return path.length;
    };
    const [line, full, none] = [await lines("line"), await lines("full"), await lines("none")];
    expect(none).toBe(0);
    expect(full).toBeGreaterThan(0);
    expect(line).toBeGreaterThan(5 * full);
  });
});
