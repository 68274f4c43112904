import { readdirSync, writeFileSync } from "node:fs";
import { benchCard, checkLayout, paperNamed, toSvg } from "@scantling/render";
import { expect, it } from "vitest";
import { makeCardModel } from "../../src/card/card-model.js";
import { setupOf } from "../../src/forge-setup.js";
import { loadJob } from "../../src/load.js";
import { measure } from "../../src/measure.js";
import { planBars } from "../../src/stock-report.js";
import { nodeIo } from "../../src/io/node-io.js";

const FILES = [
  "market-garden/harvest", "camp-knife/camp","long-slicer/slicer","boning-knife/boning","three-layer-petty/petty","pattern-welded-bowie/bowie","forge-finish-nakiri/nakiri",
];
it("draws", async () => {
  const io = nodeIo();
  for (const folder of (process.env.ONLY ?? readdirSync("examples").join(",")).split(",")) {
    let names: string[] = [];
    try { names = readdirSync(`examples/${folder}`).filter((n) => n.endsWith(".knife.yaml")); } catch { continue; }
    for (const name of names) {
      const measured = measure(await loadJob(io, `examples/${folder}/${name}`, {}));
      const bars = planBars(measured);
      const pages = benchCard(makeCardModel(measured, setupOf(measured, bars)), paperNamed("A4"));
      for (const [i, page] of pages.entries()) {
        console.log(name, i + 1, pages.length, checkLayout(page).slice(0, 4));
        writeFileSync(`/tmp/w/card/${name}-${i + 1}.svg`, await toSvg(page));
      }
    }
  }
});
