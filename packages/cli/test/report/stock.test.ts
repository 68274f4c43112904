import { LEDGER_ROWS } from "@scantling/geometry";
import { describe, expect, it } from "vitest";
import { jsonText } from "../../src/report/documents.js";
import { stockJson } from "../../src/report/stock-json.js";
import { costText, cutText, reachText, sawLength, stockText } from "../../src/report/stock-text.js";
import { sampleJob } from "../support/sample-job.js";
import { SAMPLE_STOCK } from "../support/sample-stock.js";

interface LedgerRowDocument {
  readonly row: string;
  readonly volumeMm3: number;
  readonly massG: number;
}

interface PlanDocument {
  readonly why: readonly string[];
  readonly ledger: readonly LedgerRowDocument[];
  readonly ledgerLowLosses: readonly LedgerRowDocument[];
  readonly ledgerHighLosses: readonly LedgerRowDocument[];
  readonly whatIf: readonly { readonly row: string; readonly more: { readonly finishedG: number } }[];
  readonly bars: number;
  readonly widthMm: number;
  readonly thicknessMm: number;
  readonly cutLengthMm: number;
  readonly cutLengthNominalMm: number;
  readonly massG: number;
  readonly wasteG: number;
}

const jobs = { mm: await sampleJob("mm"), in: await sampleJob("in") };
const document: { schema: string; plans: PlanDocument[]; rejected: unknown[] } = JSON.parse(
  jsonText(stockJson(SAMPLE_STOCK, jobs.mm)),
);
const [first] = SAMPLE_STOCK.plans;
const [firstDocument] = document.plans;
if (first === undefined || firstDocument === undefined) throw new Error("the sample has plans");

describe("scantling/stock/1", () => {
  it("has the published keys", () => {
    expect(document.schema).toBe("scantling/stock/1");
    expect(Object.keys(document)).toEqual(["schema", "plans", "rejected", "materials"]);
    const published = [
      "bars",
      "widthMm",
      "thicknessMm",
      "cutLengthMm",
      "cutLengthNominalMm",
      "massG",
      "wasteG",
      "joints",
      "reach",
      "why",
      "ledger",
    ];
    expect(Object.keys(firstDocument)).toEqual(expect.arrayContaining(published));
    expect(Object.keys(document.rejected[0] ?? {})).toEqual(["reason", "count"]);
  });

  it("leaves the cost out where the bar has no price", () => {
    const priced = SAMPLE_STOCK.plans.map(({ cost }) => cost !== undefined);
    expect(document.plans.map((plan) => "cost" in plan)).toEqual(priced);
  });

  it("carries the ledger's rows in their order, and their masses add up to what is cut", () => {
    for (const plan of document.plans) {
      expect(plan.ledger.map(({ row }) => row)).toEqual(LEDGER_ROWS);
      const totals = ["ready-to-harden", "forged-blade", "dressed-billet", "bars-as-cut"];
      const sum = plan.ledger
        .filter(({ row }) => !totals.includes(row))
        .reduce((mass, row) => mass + row.massG, 0);
      const cut = plan.bars * plan.widthMm * plan.thicknessMm * plan.cutLengthMm * 0.00785;
      // 1 mg on about a kilogram: the last digits of doubles.
      expect(Math.abs(sum - cut)).toBeLessThan(1e-3);
      expect(Math.abs(plan.massG - cut)).toBeLessThan(1e-3);
      expect(plan.cutLengthMm).toBeGreaterThanOrEqual(plan.cutLengthNominalMm);
      expect(Math.abs(plan.wasteG - (plan.massG - 471))).toBeLessThan(1e-3);
    }
  });

  it("gives reasons as whole sentences", () => {
    for (const plan of document.plans) {
      for (const why of plan.why) expect(why).toMatch(/^[^{}]+\.$/);
    }
  });
});

describe("the stock report for people", () => {
  for (const units of ["mm", "in"] as const) {
    const lines = stockText(SAMPLE_STOCK, jobs[units]);

    it(`fits on 80 columns in ${units}`, () => {
      for (const line of lines) expect(line.length, line).toBeLessThanOrEqual(80);
    });

    it(`names the bar, the pieces, the reach with one bar fewer and more, and every ledger row in ${units}`, () => {
      const text = lines.join("\n");
      expect(text).toContain(`1. Cut ${cutText(first, units)}`);
      expect(text.replace(/\s+/g, " ")).toContain(`Reach: ${reachText(first)}.`);
      for (const row of LEDGER_ROWS)
        expect(text).toContain(
          row === "heat-treatment-scale" ? "heat-treatment scale" : row.replaceAll("-", " "),
        );
      expect(text).not.toMatch(/NaN|Infinity|undefined|[{}]/);
    });
  }

  it("says so where there is no plan", () => {
    const none = { ...SAMPLE_STOCK, plans: [] };
    expect(stockText({ ...none, considered: 0 }, jobs.mm)[0]).toContain("no bars are known");
    expect(stockText(none, jobs.mm)[0]).toContain("No plan");
  });
});

describe("the ledger's bands", () => {
  const text = stockText(SAMPLE_STOCK, jobs.mm);
  const lineOf = (start: string): string => text.find((line) => line.startsWith(start)) ?? "";

  it("show every loss at usual, low and high, in the text and in the JSON", () => {
    expect(lineOf("Steel ledger")).toMatch(/usual +low losses +high losses$/);
    const { ledger: usual, ledgerLowLosses: low, ledgerHighLosses: high } = firstDocument;
    const cells = /(\d+) g +[\d.]+ cm³ +(\d+) g +(\d+) g$/.exec(lineOf("  + forging scale"));
    const at = LEDGER_ROWS.indexOf("forging-scale");
    for (const [i, rows] of [usual, low, high].entries())
      expect(Number(cells?.[i + 1])).toBe(Math.round(rows[at]?.massG ?? Number.NaN));
    for (const row of ["forging-scale", "welding-scale", "cropping", "bar-cleaning"] as const) {
      const place = LEDGER_ROWS.indexOf(row);
      expect(low[place]?.massG).toBeLessThan(usual[place]?.massG ?? 0);
      expect(high[place]?.massG).toBeGreaterThan(usual[place]?.massG ?? 0);
    }
    // What no band moves is told once.
    expect(lineOf("  + face grinding")).toMatch(/cm³$/);
    expect(lineOf("bars as cut")).toMatch(/cm³$/);
  });

  it("say what the finished steel would weigh if one row were wrong, the worst first", () => {
    const from = text.findIndex((line) => line.startsWith("If one row alone"));
    const rows = text.slice(from).filter((line) => /^ {2}\w.* \+\d+ g +−\d+ g +\d+ g +\d/.test(line));
    expect(rows.length).toBeGreaterThan(3);
    const short = rows.map((line) => Number(/−(\d+) g/.exec(line)?.[1]));
    expect(short).toEqual([...short].sort((a, b) => b - a));
    const left = rows.map((line) => Number(/−\d+ g +(\d+) g/.exec(line)?.[1]));
    short.forEach((missing, i) => {
      expect(Math.abs(471 - missing - (left[i] ?? 0))).toBeLessThanOrEqual(1);
    });
    const { whatIf } = firstDocument;
    expect(whatIf.map(({ row }) => row)).toContain("sharpening");
    expect(Math.round(-(whatIf[0]?.more.finishedG ?? 0))).toBe(short[0]);
  });
});

describe("lengths on a saw are never shorter than needed", () => {
  it("rounds inches up to 1/32 and leaves exact ones alone", () => {
    expect(sawLength(25.4 * 5.125, "in")).toBe('5 1/8"');
    // 130 mm are 5.118 in: 5 3/32 would be 0.6 mm short.
    expect(sawLength(130, "in")).toBe('5 1/8"');
    expect(sawLength(100.1, "in")).toBe('3 31/32"');
  });

  it("rounds mm up to a tenth", () => {
    expect(sawLength(130.175, "mm")).toBe("130.2 mm");
    expect(sawLength(130, "mm")).toBe("130 mm");
    expect(sawLength(5 * 26.1, "mm")).toBe("130.5 mm");
  });
});

describe("what means nothing is left out", () => {
  const solid = { ...first, bars: 1, joints: 0 };
  const text = (plan: typeof first, over: object = {}): string =>
    stockText({ ...SAMPLE_STOCK, plans: [plan], ...over }, jobs.mm)
      .join(" ")
      .replace(/\s+/g, " ");

  it("shows the rows of welding, and the reach of other stacks, for stacks only", () => {
    for (const row of ["cropping", "weld dressing", "welding scale", "bar cleaning"]) {
      expect(text(first)).toContain(`+ ${row} `);
      expect(text(solid)).not.toContain(row);
    }
    expect(reachText(first)).toContain(`with ${first.bars + 1} bars`);
    expect(reachText(solid)).not.toMatch(/with \d/);
    expect(text(solid)).not.toContain("0 joints");
  });

  it("says out of reach where more than the whole thinning would be needed", () => {
    const reach = { ...first.reach, oneFewer: 2.3, oneMore: Number.POSITIVE_INFINITY };
    const said = reachText({ ...first, bars: 3, reach });
    expect(said).toContain("with 2 bars out of reach; with 4 bars out of reach");
    const [plan] = (
      stockJson({ ...SAMPLE_STOCK, plans: [{ ...first, reach }] }, jobs.mm) as {
        plans: Record<string, unknown>[];
      }
    ).plans;
    expect(plan).toMatchObject({ reachOneFewer: 2.3 });
    expect(plan).not.toHaveProperty("reachOneMore");
  });

  it("calls the cost a cost, with or without a currency", () => {
    expect(costText({ ...first, cost: 4.834 }, undefined)).toBe("; cost 4.83, saw cuts included");
    expect(costText({ ...first, cost: 4.834 }, "EUR")).toBe("; cost 4.83 EUR, saw cuts included");
  });

  it("counts superfluous stacks only where there are any", () => {
    const rejected = SAMPLE_STOCK.rejected.slice(0, 1);
    expect(text(first, { rejected, considered: 1, superfluous: 0 })).toContain("Refused (1 stack was tried)");
    expect(text(first, { rejected, considered: 9, superfluous: 1 })).toContain(
      "(9 stacks were tried; 1 could be made but is better in nothing)",
    );
  });
});
