import { readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { ledgerRow } from "@scantling/geometry";
import {
  type AlongBlade,
  checkLayout,
  layOutSheet,
  type PlotsModel,
  paperNamed,
  plotsContents,
} from "@scantling/render";
import { describe, expect, it } from "vitest";
import { nodeIo } from "../../src/io/node-io.js";
import { loadJob } from "../../src/load.js";
import { type Measured, measure } from "../../src/measure.js";
import { makePlotsModel } from "../../src/models/plots-model.js";
import { type Bars, planBars } from "../../src/stock-report.js";
import { DEMO_KNIFE, demoWith } from "../support/demo.js";
import { measured } from "../support/sample-job.js";

const EXAMPLES = fileURLToPath(new URL("../../../../examples/", import.meta.url));
const io = nodeIo();
const files = readdirSync(EXAMPLES, { recursive: true, encoding: "utf8" })
  .filter((name) => name.endsWith(".knife.yaml") && !name.includes("node_modules"))
  .sort();

interface Case {
  readonly knife: Measured;
  readonly bars: Bars;
  readonly model: PlotsModel;
}

async function example(file: string, units?: "mm" | "in"): Promise<Case> {
  const job = await loadJob(io, `${EXAMPLES}${file}`, units === undefined ? {} : { units });
  const knife = measure(job);
  const bars = planBars(knife);
  return { knife, bars, model: makePlotsModel(knife, bars) };
}

/** What lies under straight lines through the points: the second method beside the integrals of the kernel. */
const trapezoids = (curve: AlongBlade): number =>
  curve.slice(1).reduce((sum, to, index) => {
    const from = curve[index] ?? to;
    return sum + ((from.y + to.y) / 2) * (to.x - from.x);
  }, 0);

it("there are examples to plot", () => expect(files.length).toBeGreaterThan(5));

describe.each(files)("the plots of %s", (file) => {
  it("hold the steel that was weighed, the ledger that was planned, the interval that was found", async () => {
    const { knife, bars, model } = await example(file);
    const { area, thickness, ledger, mass } = model;
    // The curves have some hundred points; at half a per cent no eye can tell.
    for (const [curve, volume] of [
      [area.finished, area.finishedVolume],
      [area.forged, area.forgedVolume],
    ] as const) {
      expect(Math.abs(trapezoids(curve) / volume - 1)).toBeLessThan(0.002);
      expect(curve.every(({ x }, index) => index === 0 || x >= (curve[index - 1]?.x ?? x))).toBe(true);
    }
    expect(area.finishedVolume).toBe(knife.weight.steel.volume);

    const rows = bars.mixed?.ledger ?? bars.plans[0]?.ledger ?? [];
    expect(rows).not.toEqual([]);
    const { billet } = area;
    if (billet === undefined) throw new Error("no billet");
    expect(billet.length * billet.area).toBeCloseTo(ledgerRow(rows, "dressed-billet").volume, 3);
    // With its scale the billet is more than the forging, and it begins where the forging does.
    expect(billet.length * billet.area).toBeGreaterThan(area.forgedVolume);
    expect(billet.from).toBe(area.forged[0]?.x);

    const added = ledger.filter(({ total }, index) => !total || index === 0);
    expect(added.reduce((sum, row) => sum + row.mass, 0)).toBeCloseTo(ledger.at(-1)?.mass ?? Number.NaN, 6);
    expect(ledger[0]?.mass).toBeCloseTo(knife.weight.steel.mass, 3);

    expect(mass.causes.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 9);
    expect(mass.interval).toEqual(knife.interval.massInterval);
    expect(model.plans).toHaveLength(bars.plans.length);

    for (const { x, y } of thickness.stations) expect(thickness.spine).toContainEqual({ x, y });
    expect(thickness.stations.length).toBeGreaterThan(2);
    for (const { x } of thickness.aboveEdge) expect(x).toBeGreaterThanOrEqual(0);
    const spine = knife.knife.laws.spine.valueAt(0);
    expect(thickness.forgedSpine.every(({ y }) => y > 0 && y < 3 * spine)).toBe(true);
  });

  it.each(["mm", "in"] as const)("can be read in %s", async (units) => {
    const { model } = await example(file, units);
    const paper = paperNamed(units === "mm" ? "A4" : "Letter");
    for (const page of layOutSheet(plotsContents(model), { kind: "paper", paper })) {
      expect(checkLayout(page)).toEqual([]);
    }
  });
});

describe("the plots of the demo", () => {
  it("show the billet of hand: 3 bars of 50.8 × 6.35, welded and dressed", async () => {
    const { model, bars } = await example("market-garden/harvest.knife.yaml");
    const [plan] = bars.plans;
    if (plan === undefined) throw new Error("no plan");
    const { billet } = model.area;
    expect(billet?.words).toBe("welded billet");
    expect(billet?.area).toBeCloseTo(plan.billet.dressedWidth * plan.billet.weldedHeight, 9);
    expect(billet?.length).toBeCloseTo(plan.billet.dressedLength, 6);
    expect(model.plans[0]?.words).toBe("3 × 160 mm of 1/4 x 2 in");
  });

  it("show thickness and asked mass as the file gives them", async () => {
    const { model } = await example("market-garden/harvest.knife.yaml");
    // Thickness at the heel and 60 % of the way in the file; linear between.
    expect(model.thickness.spine.find(({ x }) => x === 0)?.y).toBeCloseTo(4.6, 9);
    expect(model.mass.asked).toEqual([Number.NEGATIVE_INFINITY, 600]);
    expect(model.mass.causes[0]?.name).toBe("thickness at the spine");
  });
});

describe("knives without plans", () => {
  it("say that no bars are known", async () => {
    const knife = await measured(DEMO_KNIFE, "scantling: 1\nunits: mm\n");
    const model = makePlotsModel(knife, planBars(knife));
    expect(model.ledger).toEqual([]);
    expect(model.area.billet).toBeUndefined();
    expect([model.noLedger, model.noPlans]).toEqual(["No bars are known.", "No bars are known."]);
    const pages = layOutSheet(plotsContents(model), { kind: "paper", paper: paperNamed("A4") });
    for (const page of pages) expect(checkLayout(page)).toEqual([]);
  });

  it("say that nothing on the rack will do", async () => {
    const rack = "scantling: 1\nunits: mm\nrack:\n  - { size: 2 x 10 }\n";
    const knife = await measured(demoWith(["edgeLength: 225", "edgeLength: 230"]), rack);
    const model = makePlotsModel(knife, planBars(knife));
    expect(model.plans).toEqual([]);
    expect(model.noPlans).toBe("Nothing on the rack can become this blade.");
  });

  it("say that a stack of the file's own has nothing to be compared with, and show its ledger", async () => {
    const { model } = await example("pattern-welded-bowie/pattern-welded-bowie.knife.yaml");
    expect(model.noPlans).toMatch(/own stack/);
    expect(model.ledger.at(-1)?.name).toBe("bars as cut");
    expect(model.area.billet?.words).toBe("last bar");
  });
});
