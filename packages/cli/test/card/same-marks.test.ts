import { readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { flattenItems, layOutSheet, papersFor, preformContents } from "@scantling/render";
import { describe, expect, it } from "vitest";
import { setupOf } from "../../src/forge-setup.js";
import { nodeIo } from "../../src/io/node-io.js";
import { loadJob } from "../../src/load.js";
import { measure } from "../../src/measure.js";
import { makePreformModel } from "../../src/models/preform-model.js";
import { setupText } from "../../src/report/setup-text.js";
import { planBars } from "../../src/stock-report.js";
import { makeCard, panelOf, rowsOf, textOf } from "./card-of.js";

const ROOT = fileURLToPath(new URL("../../../../examples/", import.meta.url));
const FILES = readdirSync(ROOT, { recursive: true, encoding: "utf8" })
  .filter((name) => name.endsWith(".knife.yaml") && !name.includes("node_modules"))
  .sort();

// The bench card, `setup` and the preform's sheet lie side by side at the anvil.
describe.each(FILES)("the marks of %s", (file) => {
  it("read the same on the bench card, in the set-up and on the preform's sheet", async () => {
    const job = await loadJob(nodeIo(), `${ROOT}${file}`, {});
    const measured = measure(job);
    const bars = planBars(measured);
    const setup = setupOf(measured, bars);
    const { card } = makeCard(measured, setup);
    const model = makePreformModel(measured, setup);
    if (model === undefined || setup.card === undefined) throw new Error("every example has a card");
    const cells = layOutSheet(preformContents(model), { kind: "smallest", papers: papersFor("mm") })
      .flatMap(({ items }) => flattenItems(items))
      .flatMap((item) => (item.kind === "text" ? [item.text] : []));
    const told = setupText(setup, bars, job).join(" ").replaceAll(/\s+/gu, " ");

    const [, mm, inches] =
      /^from the butt end ([\d.]+ mm) \((.*?")\)/u.exec(textOf(panelOf(card, "Mark the billet"))) ?? [];
    expect(cells).toContain(`${mm} [${inches}]`);
    expect(told).toContain(`punch the billet ${mm} (${inches}) from its butt end`);

    const handle = textOf(panelOf(card, "Shoulder and handle"));
    const [drawn = "", long, longInches] = /draw the handle ([\d.]+ mm) \((.*?")\) long/u.exec(handle) ?? [];
    expect(cells).toContain(`${long} [${longInches}]`);
    expect(told).toContain(drawn);
    const [, high, thick] = /([\d.]+) × ([\d.]+) at the shoulder/u.exec(handle) ?? [];
    expect(cells.filter((cell) => cell.startsWith(`${high} mm [`))).not.toEqual([]);
    expect(cells.filter((cell) => cell.startsWith(`${thick} mm [`))).not.toEqual([]);

    const [place, height] = rowsOf(panelOf(card, "Preform")).at(-1) ?? [];
    expect(cells.filter((cell) => cell.startsWith(`${place} mm [`))).not.toEqual([]);
    expect(cells.filter((cell) => cell.startsWith(`${Number(height)} mm [`))).not.toEqual([]);
  });
});
