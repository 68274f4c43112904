import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { answer, flat, wideLines } from "../support/answer.js";

function filesOf(folder: string): Record<string, string> {
  const text = (name: string): string =>
    readFileSync(fileURLToPath(new URL(`../../../../examples/${folder}/${name}`, import.meta.url)), "utf8");
  return { "a.knife.yaml": text(`${folder}.knife.yaml`), "shop.yaml": text("shop.yaml") };
}
const BOWIE = filesOf("pattern-welded-bowie");
const PETTY = filesOf("three-layer-petty");

interface Needs {
  readonly neededG: number;
  readonly neededLowG: number;
  readonly neededHighG: number;
}
interface Gate {
  readonly verdict: string;
  readonly spareG: number;
  readonly plan: unknown;
  readonly stack: {
    readonly kind: string;
    readonly bars: number;
    readonly cutLengthMm: number;
    readonly massG: number;
    readonly neededLengthMm: number;
    readonly neededLengthHighMm: number;
    readonly steels: readonly (Needs & { readonly steel: string; readonly pieces: number })[];
    readonly afterWelds: readonly Needs[];
  } | null;
  readonly targets: readonly (Needs & { readonly stage: string })[];
  readonly similar: readonly { readonly possible: boolean; readonly neededG: number }[];
  readonly findings: readonly { readonly code: string; readonly severity: string }[];
}
interface Stock {
  readonly stack: {
    readonly welds: readonly { readonly inMm3: number; readonly outMm3: number }[];
    readonly ledger: readonly { readonly row: string; readonly volumeMm3: number }[];
  };
}

const gate = (files: Record<string, string>, argv: readonly string[]) =>
  answer(["gate", "a.knife.yaml", ...argv], { files });
async function gateJson(files: Record<string, string>, argv: readonly string[]) {
  const { code, out } = await gate(files, [...argv, "--json"]);
  return { code, found: JSON.parse(out) as Gate };
}
async function stockJson(files: Record<string, string>): Promise<Stock["stack"]> {
  const { out } = await answer(["stock", "a.knife.yaml", "--json"], { files });
  return (JSON.parse(out) as Stock).stack;
}
const needAt = ({ targets }: Gate, stage: string): Needs => {
  const found = targets.find((one) => one.stage === stage);
  if (found === undefined) throw new Error(`no ${stage}`);
  return found;
};
const sum = (numbers: readonly number[]): number => numbers.reduce((total, each) => total + each, 0);

describe.each([
  ["bowie", BOWIE, "pattern-welded", 13, 1215],
  ["petty", PETTY, "clad", 3, 210],
] as const)("the %s at the saw", async (_, files, kind, bars, planned) => {
  const { code, found } = await gateJson(files, ["--stage", "cut", "--mass", `${planned}g`]);
  const stock = await stockJson(files);
  const cut = needAt(found, "cut");

  test("as planned is enough, with what rounding up leaves over at high losses", () => {
    expect(code).toBe(0);
    expect(found.verdict).toBe("enough");
    expect(found.spareG).toBeCloseTo(planned - cut.neededG, 6);
    expect(planned - cut.neededHighG).toBeGreaterThan(0);
    expect(found.findings.map((one) => one.code)).not.toContain("counted-as-solid-bar");
  });

  test("needs what the first weld of stock takes in, each steel by itself", () => {
    const [first] = stock.welds;
    // 136.5 cm³ of the bowie, where one solid bar would need 605 g.
    if (kind === "pattern-welded") expect(cut.neededG).toBeCloseTo(1071, -1);
    // Both steels of either stack are 7.8 to 7.9 g/cm³.
    expect(cut.neededG / (first?.inMm3 ?? 0)).toBeGreaterThan(0.0078);
    expect(cut.neededG / (first?.inMm3 ?? 0)).toBeLessThan(0.0079);
    expect(found.plan).toBeNull();
    expect(found.stack?.kind).toBe(kind);
    expect(found.stack?.bars).toBe(bars);
    expect(sum(found.stack?.steels.map(({ neededG }) => neededG) ?? [])).toBeCloseTo(cut.neededG, 8);
    expect(sum(found.stack?.steels.map(({ pieces }) => pieces) ?? [])).toBe(bars);
    // The planned bars, cut to the needed length.
    const share = (found.stack?.neededLengthMm ?? 0) / (found.stack?.cutLengthMm ?? 0);
    expect((found.stack?.massG ?? 0) * share).toBeCloseTo(cut.neededG, 6);
    const dressed = stock.ledger.find(({ row }) => row === "dressed-billet")?.volumeMm3 ?? 0;
    expect(needAt(found, "billet").neededG).toBeCloseTo(dressed * 0.00785, 8);
    stock.welds.forEach(({ outMm3 }, i) => {
      expect(found.stack?.afterWelds[i]?.neededG).toBeCloseTo(outMm3 * 0.00785, 8);
    });
  });

  test("a gram short is short: exit code 4, a stop, and smaller knives that need what is in hand", async () => {
    const mass = cut.neededG - 1;
    const short = await gateJson(files, ["--stage", "cut", "--mass", `${mass}g`]);
    expect(short.code).toBe(4);
    expect(short.found.verdict).toBe("short");
    expect(short.found.findings.find((one) => one.code === "steel-short")?.severity).toBe("stop");
    const possible = short.found.similar.filter((one) => one.possible);
    expect(possible.length).toBeGreaterThan(0);
    for (const one of possible) expect(one.neededG).toBeCloseTo(mass, 5);
    const more = await gateJson(files, ["--stage", "cut", "--mass", `${cut.neededG + 1}g`]);
    expect(more.code).toBe(0);
    expect(more.found.verdict).toBe("enough-at-usual-losses");
  });
});

describe("as text", () => {
  test.each([[[]], [["--units", "in"]]])(
    "names the stack, its steels and welds; not too wide %s",
    async (more) => {
      const { code, out } = await gate(BOWIE, ["--stage", "cut", "--mass", "1215g", ...more]);
      expect(code).toBe(0);
      expect(out).toMatch(/^ {4}of it 15N20 /mu);
      expect(out).toMatch(/^ {2}after weld 2 /mu);
      expect(out).toMatch(/^ {2}after weld 3, grooves not ground /mu);
      expect(flat(out)).toContain("Stack: pattern-welded, 13 bars of one length. Each has to be");
      expect(out).not.toContain("No plan of bars");
      expect(wideLines(out)).toEqual([]);
    },
  );

  test("without grooves the last weld is the dressed billet", async () => {
    const { out } = await gate(PETTY, ["--stage", "billet", "--mass", "120g", "--tare", "0g"]);
    expect(out).not.toContain("after weld");
    expect(flat(out)).toContain("Stack: a core with cladding, 3 bars of one length.");
  });
});

test("--plan is refused with what to do", async () => {
  const { code, err } = await gate(BOWIE, ["--stage", "billet", "--mass", "700g", "--plan", "2"]);
  expect(code).toBe(2);
  expect(flat(err)).toContain("the stack in the knife file is the only one");
});

test("a welded-on bar is asked for; a density that the stack does not have is told", async () => {
  const knife = (BOWIE["a.knife.yaml"] ?? "").replace("density: 7.85 g/cm3", "density: 7.70 g/cm3");
  const files = { ...BOWIE, "a.knife.yaml": knife };
  const { found } = await gateJson(files, ["--stage", "billet", "--mass", "700g"]);
  expect(found.findings.map((one) => one.code)).toContain("stack-density");
  expect(found.findings.find((one) => one.code === "tare-missing")?.severity).toBe("warn");
});

test("skin scale is told of the stack's own sections", async () => {
  const shop = (BOWIE["shop.yaml"] ?? "").replace("scale: fraction", "scale: skin");
  const files = { ...BOWIE, "shop.yaml": shop };
  const { code, found } = await gateJson(files, ["--stage", "billet", "--mass", "1500g", "--tare", "0g"]);
  expect(code).toBe(0);
  expect(needAt(found, "cut").neededG).toBeGreaterThan(needAt(found, "billet").neededG);
});
