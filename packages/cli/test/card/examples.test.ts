import { readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { formatDecimals } from "@scantling/geometry/units";
import { benchCard, checkLayout, flattenItems, type PaperName, paperNamed } from "@scantling/render";
import { describe, expect, it } from "vitest";
import { setupOf } from "../../src/forge-setup.js";
import { nodeIo } from "../../src/io/node-io.js";
import { loadJob } from "../../src/load.js";
import { measure } from "../../src/measure.js";
import { planBars } from "../../src/stock-report.js";
import { columnOf, type MadeCard, makeCard, panelOf, panelsOf, rowsOf, textOf } from "./card-of.js";

const ROOT = fileURLToPath(new URL("../../../../examples/", import.meta.url));

const FILES = readdirSync(ROOT, { recursive: true, encoding: "utf8" })
  .filter((name) => name.endsWith(".knife.yaml") && !name.includes("node_modules"))
  .sort();

/** The example's card in both units; what is measured hangs on neither. */
async function cardsOf(file: string): Promise<Record<"mm" | "in", MadeCard>> {
  const job = await loadJob(nodeIo(), `${ROOT}${file}`, {});
  const measured = measure(job);
  const bars = planBars(measured);
  const inUnits = (units: "mm" | "in"): MadeCard => {
    const own = { ...measured, job: { ...job, units } };
    return makeCard(own, setupOf(own, bars));
  };
  return { mm: inUnits("mm"), in: inUnits("in") };
}

const PAPERS: readonly PaperName[] = ["A4", "Letter"];

it("there are seven examples", () => {
  expect(FILES).toHaveLength(7);
});

describe.each(FILES)("the card of %s", (file) => {
  const cards = cardsOf(file);

  it("has two pages on A4 and Letter, in mm and in inches, that can be read", async () => {
    const made = await cards;
    for (const units of ["mm", "in"] as const) {
      for (const paper of PAPERS) {
        const pages = benchCard(made[units].card, paperNamed(paper));
        expect([units, paper, pages.length]).toEqual([units, paper, 2]);
        expect(pages.flatMap(checkLayout)).toEqual([]);
        const texts = pages
          .flatMap(({ items }) => flattenItems(items))
          .filter((item) => item.kind === "text");
        expect(Math.min(...texts.map(({ height }) => height))).toBeGreaterThanOrEqual(2.5);
        expect(texts.filter(({ text }) => text.includes("..."))).toEqual([]);
      }
    }
  });

  it("has what the press is set by in its largest figures, and in no less than 5 mm", async () => {
    const made = await cards;
    for (const units of ["mm", "in"] as const) {
      const cells = panelsOf(made[units].card).flatMap(({ blocks }) =>
        blocks.flatMap((block) =>
          block.kind === "table"
            ? block.rows.flatMap((row) => (block.large ?? []).map((column) => String(row[column])))
            : [],
        ),
      );
      // Squeezes of the press and places along the taper: each has a height or blocks, most have both.
      const { thickness, taper } = made[units].setup.card ?? { thickness: { passes: [] }, taper: [] };
      expect(cells.length).toBeGreaterThanOrEqual(thickness.passes.length + taper.length);
      for (const paper of PAPERS) {
        const texts = benchCard(made[units].card, paperNamed(paper))
          .flatMap(({ items }) => items)
          .flatMap((item) =>
            item.kind === "group" && item.name?.startsWith("panel") === true ? item.items : [],
          )
          .flatMap((item) => (item.kind === "text" && item.bold ? [item] : []));
        const most = Math.max(...texts.map(({ height }) => height));
        expect(most).toBeGreaterThanOrEqual(5);
        // A long one goes on in the line below.
        const largest = texts.filter(({ height }) => height === most).map(({ text }) => text);
        expect(cells.filter((cell) => !largest.join("").includes(cell))).toEqual([]);
      }
    }
  });

  it("has no word that a smith has to guess", async () => {
    const made = await cards;
    for (const units of ["mm", "in"] as const) {
      const said = panelsOf(made[units].card)
        .flatMap((panel) => [panel.title, textOf(panel)])
        .join("\n");
      expect(said).not.toMatch(
        /Ø|\ba face\b|\beats\b|low to high|(?<!stress-)\brelieve\b|cut flush|\b2, each\b|on or off|blade's pass/u,
      );
    }
  });

  it("has everything from the order to the edge, in the order of use", async () => {
    const { card, setup, bench } = (await cards).mm;
    const titles = panelsOf(card).map(({ title }) => title.replace(/,.*/u, ""));
    expect(titles).toEqual([
      "Asked for",
      ...(setup.mixed === undefined ? ["Cut"] : ["Cut and weld"]),
      ...(setup.card?.weld === undefined || setup.mixed !== undefined ? [] : ["Squeeze the weld"]),
      "Weigh",
      "Mark the billet",
      "Shoulder and handle",
      "Press the blade down",
      "Preform",
      "Taper at the spine",
      "Heats",
      ...(titles.includes("Mind") ? ["Mind"] : []),
      ...titles.filter((title) => title === "Drill the steel" || title === "Taper the tang"),
      "Scribe the edge",
      "Grind the bevels",
      ...(titles.includes("Harden") ? ["Harden", "Temper"] : ["Harden and temper"]),
      "Finished blade",
      ...(bench.blank === undefined ? [] : ["Saw the slabs"]),
      ...(bench.pins === undefined ? [] : ["Pins"]),
      "Sharpen",
      "The knife as made",
    ]);
  });

  it("has the figures of the forge card", async () => {
    const { card, setup } = (await cards).mm;
    const forge = setup.card;
    if (forge === undefined) throw new Error("every example has a card");
    const cold = columnOf(panelOf(card, "Press the blade down"), "cold");
    expect(cold).toEqual(
      forge.thickness.passes.map((pass) => formatDecimals(pass.out?.cold ?? pass.cold, 2)),
    );
    const stops = columnOf(panelOf(card, "Press the blade down"), "height of stop");
    expect(stops).toEqual(
      forge.thickness.passes.map((pass) => formatDecimals(pass.stop?.height ?? pass.wanted, 2)),
    );
    expect(columnOf(panelOf(card, "Taper at the spine"), "cold")).toEqual(
      forge.taper.map((stop) => formatDecimals(stop.cold, 2)),
    );
    const needs = { "short below": "low", "usually enough": "value", "surely enough": "high" } as const;
    for (const [head, side] of Object.entries(needs)) {
      expect(columnOf(panelOf(card, "Weigh"), head)).toEqual(
        setup.masses.map(({ need }) => formatDecimals(need[side], 0)),
      );
    }
    expect(textOf(panelOf(card, "Mark the billet"))).toContain(
      `${Math.ceil(2 * forge.marks.at - 1e-6) / 2} mm`,
    );
    expect(columnOf(panelOf(card, "Shoulder and handle"), "high")).toEqual(
      forge.shoulder.passes.map(({ height }) => formatDecimals(height, 1)),
    );
  });

  it("has the figures of the set-ups at the bench", async () => {
    const { card, bench } = (await cards).mm;
    const [face] = bench.bevels;
    const grind = panelOf(card, "Grind the bevels");
    const degree = (angle: number) => `${((angle * 180) / Math.PI).toFixed(1)}°`;
    expect(columnOf(grind, "angle, each face")).toEqual(face?.stations.map(({ angle }) => degree(angle)));
    expect(columnOf(grind, "edge left")).toEqual(face?.stations.map(({ edge }) => formatDecimals(edge, 2)));
    const scribe = panelOf(card, "Scribe the edge");
    for (const row of rowsOf(scribe)) {
      const [place = "", ...cells] = row;
      const text = String(place);
      const x =
        text === "butt"
          ? Math.min(...bench.scribe.level.shims.map((one) => one.x))
          : text.endsWith(" behind")
            ? -Number.parseFloat(text)
            : Number.parseFloat(text);
      const shim = bench.scribe.level.shims.find((one) => Math.abs(one.x - x) < 0.06);
      expect(cells.at(-1)).toBe(shim === undefined ? "–" : formatDecimals(shim.shim, 2));
    }
    // Under the tip, where it is thinnest, there is always one.
    expect(rowsOf(scribe).length).toBeGreaterThan(0);
  });

  it("leaves room for every reading", async () => {
    const { card, setup } = (await cards).mm;
    expect(columnOf(panelOf(card, "Weigh"), "on the scale")).toEqual(setup.masses.map(() => ({ box: "" })));
    expect(columnOf(panelOf(card, "Finished blade"), "spine measured")).toHaveLength(5);
    expect(textOf(panelOf(card, "The knife as made"))).toMatch(/mass .*\[g\]/u);
    expect(panelOf(card, "Heats").blocks[0]).toEqual({
      kind: "tally",
      count: setup.card?.heats.usual.planned,
    });
  });
});
