import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { answer, flat, wideLines } from "../support/answer.js";
import { DEMO_FILES, demoWith } from "../support/demo.js";

const FILE = "harvest.knife.yaml";

async function weighed(text?: string) {
  const files = text === undefined ? DEMO_FILES : { ...DEMO_FILES, [FILE]: text };
  const { code, out, err } = await answer(["weigh", FILE, "--json"], { files });
  expect(err).toBe("");
  expect(code).toBe(EXIT.done);
  return JSON.parse(out);
}

/** g and mm: parts are summed here in another order than in the program. */
const ROUNDING = 1e-9;

describe("scantling/weigh/1", () => {
  it("has the published keys", async () => {
    const report = await weighed();
    expect(report.schema).toBe("scantling/weigh/1");
    expect(Object.keys(report)).toEqual([
      "schema",
      "steel",
      "knife",
      "parts",
      "materials",
      "stations",
      "interval",
      "findings",
    ]);
    expect(Object.keys(report.steel)).toEqual([
      "volumeMm3",
      "massG",
      "surfaceMm2",
      "centreMm",
      "inertiaGMm2",
    ]);
    expect(Object.keys(report.steel.inertiaGMm2)).toEqual(["xx", "yy", "zz", "xy", "yz", "zx"]);
    expect(Object.keys(report.knife)).toEqual(
      expect.arrayContaining(["massG", "massIntervalG", "balanceFromHeelMm", "balanceFromHandleMm"]),
    );
    for (const part of report.parts) expect(Object.keys(part)).toEqual(["name", "massG", "centreMm"]);
    for (const cause of report.interval)
      expect(Object.keys(cause)).toEqual(["input", "share", "balanceShare"]);
  });

  it("has parts that add up to the knife, the steel among them, and balance where it does", async () => {
    const { knife, parts, steel } = await weighed();
    const mass = parts.reduce((sum: number, part: { massG: number }) => sum + part.massG, 0);
    const moment = parts.reduce(
      (sum: number, part: { massG: number; centreMm: number[] }) =>
        sum + part.massG * (part.centreMm[0] ?? Number.NaN),
      0,
    );
    expect(Math.abs(mass - knife.massG)).toBeLessThan(ROUNDING * knife.massG);
    expect(Math.abs(moment / mass - knife.balanceFromHeelMm)).toBeLessThan(1e-6);
    // The handle front of the demo lies a ricasso of 10 mm behind the heel.
    expect(Math.abs(knife.balanceFromHandleMm - knife.balanceFromHeelMm - 10)).toBeLessThan(1e-6);
    expect(parts.some((part: { massG: number }) => Math.abs(part.massG - steel.massG) < ROUNDING)).toBe(true);
  });

  it("has an interval around the mass, and its causes largest first", async () => {
    const { knife, interval } = await weighed();
    const [low, high] = knife.massIntervalG;
    expect(low).toBeLessThan(knife.massG);
    expect(high).toBeGreaterThan(knife.massG);
    const shares = interval.map(({ share }: { share: number }) => share);
    expect(shares).toEqual([...shares].sort((a, b) => b - a));
    expect(shares.reduce((sum: number, share: number) => sum + share, 0)).toBeCloseTo(1, 6);
  });

  it("weighs in proportion to the density of the steel", async () => {
    const light = await weighed(demoWith(['steel: "1084"', "steel: { name: test, density: 7 g/cm3 }"]));
    const heavy = await weighed(demoWith(['steel: "1084"', "steel: { name: test, density: 8 g/cm3 }"]));
    expect(heavy.steel.massG / light.steel.massG).toBeCloseTo(8 / 7, 12);
    expect(heavy.steel.volumeMm3).toBe(light.steel.volumeMm3);
    // g/cm³ are 1000 g/mm³: mass over volume gives the density back.
    expect(light.steel.massG / light.steel.volumeMm3).toBeCloseTo(0.007, 12);
  });

  it("does not depend on the units that are shown", async () => {
    const { out } = await answer(["weigh", FILE, "--json", "--units", "in"], { files: DEMO_FILES });
    expect(JSON.parse(out)).toEqual(await weighed());
  });
});

describe("weigh for people", () => {
  for (const units of ["mm", "in"]) {
    it(`fits on 80 columns in ${units} and says mass, band, balance and causes`, async () => {
      const { code, out, err } = await answer(["weigh", FILE, "--units", units], { files: DEMO_FILES });
      expect(code).toBe(EXIT.done);
      expect(err).toBe("");
      expect(wideLines(out)).toEqual([]);
      expect(out).toContain("MG-14: Tall harvest knife for a market garden");
      const text = flat(out);
      expect(text).toMatch(/whole knife \d+ g|whole knife 1 lb/);
      expect(text).toContain("95 in 100");
      expect(text).toMatch(/Balance: .* ahead of the heel/);
      expect(text).toContain("The band comes from:");
      expect(text).toContain("That of the balance comes from:");
      expect(out).not.toMatch(/NaN|undefined|Infinity/);
    });
  }

  it("puts a copy into --out, and refuses to overwrite it", async () => {
    const first = await answer(["weigh", FILE, "--out", "papers"], { files: DEMO_FILES });
    expect(first.code).toBe(EXIT.done);
    expect(first.written).toEqual(["/shop/papers/weigh.txt"]);
    expect(first.io.disk.text("/shop/papers/weigh.txt")).toBe(first.out);
    expect(first.err).toBe("Wrote papers/weigh.txt\n");
    const again = await answer(["weigh", FILE, "--out", "papers"], first.io);
    expect(again.code).toBe(EXIT.write);
    expect(again.out).toBe("");
    expect((await answer(["weigh", FILE, "--out", "papers", "--force"], first.io)).code).toBe(EXIT.done);
  });

  it("reads standard input", async () => {
    const { code, out } = await answer(["weigh", "-"], { stdin: demoWith() });
    expect(code).toBe(EXIT.done);
    expect(out).toContain("standard input");
  });

  it("answers 5 where standard output cannot be written", async () => {
    const { code, err } = await answer(["weigh", FILE], { files: DEMO_FILES, stdoutFails: "ENOSPC" });
    expect(code).toBe(EXIT.write);
    expect(err).toContain("the disk is full");
  });
});
