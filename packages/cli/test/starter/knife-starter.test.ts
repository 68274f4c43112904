import { FAMILY_NAMES, type FamilyName, type TangSpec } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { readKnifeFile } from "../../src/file/index.js";
import { FAMILY_CHOICES } from "../../src/starter/family-words.js";
import { knifeStarter, STARTER_HANDLE, STARTER_STEEL } from "../../src/starter/knife-starter.js";
import { FAMILY_STARTERS, type Range } from "../../src/starter/knife-types.js";
import { shopStarter } from "../../src/starter/shop-starter.js";
import { answer } from "../support/answer.js";
import { countOf, uncommented } from "./uncommented.js";

const ALL = FAMILY_NAMES.flatMap((family) => (["mm", "in"] as const).map((units) => ({ family, units })));

function starterOf(
  family: FamilyName,
  units: FileUnits,
  tang: TangSpec["form"] = FAMILY_STARTERS[family].tang,
) {
  const materials = { steel: STARTER_STEEL, handle: STARTER_HANDLE };
  return knifeStarter({ family, units, tang, ...materials, code: "K-1", title: "Knife" });
}

interface Found {
  readonly findings: readonly { readonly severity: string; readonly code: string }[];
}

async function json<T>(command: string, knife: string, shop?: string): Promise<T> {
  const files = { "a.knife.yaml": knife, ...(shop === undefined ? {} : { "shop.yaml": shop }) };
  const { code, out, err } = await answer([command, "a.knife.yaml", "--json"], { files });
  expect(code, err).toBe(EXIT.done);
  return JSON.parse(out) as T;
}

const within = (value: number, [least, most]: Range, slack: number): boolean =>
  value >= least - slack && value <= most + slack;

it("there is a starter for every family", () => {
  expect(FAMILY_CHOICES).toEqual(FAMILY_NAMES);
});

describe.each(ALL)("a starter: $family in $units", ({ family, units }) => {
  const text = starterOf(family, units);
  const { type } = FAMILY_STARTERS[family];

  it("has nothing to stop or warn of, with the starter of a shop beside it", async () => {
    const { findings } = await json<Found>("check", text, shopStarter(units));
    // Which bar is best is the rack's business.
    const grave = findings.filter(({ severity, code }) => severity !== "note" && code !== "narrowed-on-edge");
    expect(grave).toEqual([]);
  });

  it("has sizes, mass and balance as they are usual for its type", async () => {
    const { spec } = readKnifeFile(text, "a.knife.yaml");
    const { outline, thickness, bevel } = spec.blade;
    if (!("family" in outline)) throw new Error("a starter has a family");
    // Inches are rounded to eighths and 32nds.
    expect(within(outline.edgeLength, type.edgeLength, 0)).toBe(true);
    expect(within(outline.heelHeight, type.heelHeight, 0)).toBe(true);
    expect(within(thickness[0]?.is ?? 0, type.spine, 0)).toBe(true);
    expect(within(Number(bevel.edgeThickness), type.edge, 1e-9)).toBe(true);
    const { knife } = await json<{ knife: { massG: number; balanceFromHeelMm: number } }>("weigh", text);
    expect(within(knife.massG, type.mass, 0), `${knife.massG} g`).toBe(true);
    // Where it balances is usual to a fingertip. Common practice, no source.
    expect(within(knife.balanceFromHeelMm, type.balance, 3), `${knife.balanceFromHeelMm} mm`).toBe(true);
  });

  it("says what holds without its keys: with the defaults written out it is the same knife", async () => {
    const written = uncommented(text, "default");
    expect(countOf(text, "default")).toBeGreaterThan(10);
    expect(written).not.toBe(text);
    const [as, of] = [numbersOf(await weighed(written)), numbersOf(await weighed(text))];
    expect(of.length).toBeGreaterThan(12);
    // Sizes that follow from others are written to 0.1 µm.
    for (const [at, value] of of.entries())
      expect(Math.abs((as[at] ?? Number.NaN) - value), `${value}`).toBeLessThan(
        2e-3 + 1e-4 * Math.abs(value),
      );
  });

  it("can be read with everything written out that may be wanted", async () => {
    const { code, err } = await answer(["check", "a.knife.yaml"], {
      files: { "a.knife.yaml": uncommented(text, "default", "if wanted") },
    });
    expect([EXIT.done, EXIT.notMet], err).toContain(code);
  });

  it.each(["full", "hidden", "through"] as const)(
    "with a %s tang it is sound too, and no wider than a terminal",
    async (tang) => {
      const other = starterOf(family, units, tang);
      await json("check", other);
      for (const line of other.split("\n")) expect(line.length, line).toBeLessThanOrEqual(80);
    },
  );
});

/** What a knife weighs; its band knows what was given and what was not. */
async function weighed(text: string): Promise<unknown> {
  const { steel, parts } = await json<{ steel: unknown; parts: unknown }>("weigh", text);
  return { steel, parts };
}

function numbersOf(value: unknown): number[] {
  if (typeof value === "number") return [value];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(numbersOf) : [];
}
