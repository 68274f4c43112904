import { it } from "vitest";
import { cardPanel } from "../../../render/src/sheets/bench-card/panel.js";
import { CARD_LETTERINGS } from "../../../render/src/sheets/bench-card/lettering.js";
import { makeCardModel } from "../../src/card/card-model.js";
import { setupOf } from "../../src/forge-setup.js";
import { nodeIo } from "../../src/io/node-io.js";
import { loadJob } from "../../src/load.js";
import { measure } from "../../src/measure.js";
import { planBars } from "../../src/stock-report.js";
import { writeFileSync } from "node:fs";
it("h", { timeout: 100000 }, async () => {
  const out: string[] = [];
  for (const [file, units] of [["market-garden/harvest", "mm"], ["camp-knife/camp-knife", "mm"], ["camp-knife/camp-knife", "in"], ["long-slicer/long-slicer","in"]] as const) {
    const job = await loadJob(nodeIo(), `examples/${file}.knife.yaml`, { units });
    const m = measure(job);
    const model = makeCardModel(m, setupOf(m, planBars(m)));
    const width = (215.9 - 14 - 1.6) / 2;
    for (const side of model.sides) {
      out.push(`${file} ${units} ${side.name}`);
      const sums = CARD_LETTERINGS.map(() => 0);
      for (const p of side.panels) {
        const hs = CARD_LETTERINGS.map((l) => { const n = cardPanel(p, width, l); const wide = p.wide === true || (n.least ?? 0) > width; return { h: wide ? cardPanel(p, 201.9, l).height : n.height, wide }; });
        hs.forEach(({ h, wide }, i) => { sums[i] = (sums[i] ?? 0) + (h + 1.6) * (wide ? 2 : 1); });
        out.push(`   ${p.title.padEnd(30)} ${hs.map(({ h, wide }) => `${h.toFixed(0)}${wide ? "W" : ""}`).join("  ")}`);
      }
      out.push(`   sum/2 ${sums.map((s) => (s / 2).toFixed(0)).join("  ")}`);
    }
  }
  writeFileSync("/tmp/w/card/heights.txt", out.join("\n"));
});
