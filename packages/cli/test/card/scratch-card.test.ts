import { mkdirSync, readdirSync, writeFileSync } from "node:fs";
import { benchCard, checkLayout, paperNamed, toSvg } from "@scantling/render";
import { it } from "vitest";
import { makeCardModel } from "../../src/card/card-model.js";
import { setupOf } from "../../src/forge-setup.js";
import { nodeIo } from "../../src/io/node-io.js";
import { loadJob } from "../../src/load.js";
import { measure } from "../../src/measure.js";
import { planBars } from "../../src/stock-report.js";

it("draws", { timeout: 200000 }, async () => {
  const io = nodeIo();
  const root = process.env.ROOT ?? "examples";
  mkdirSync("/tmp/w/card/out", { recursive: true });
  for (const folder of (process.env.ONLY ?? readdirSync(root).join(",")).split(",")) {
    let names: string[] = [];
    try { names = readdirSync(`${root}/${folder}`).filter((n) => n.endsWith(".knife.yaml")); } catch { continue; }
    for (const name of names) for (const units of ["mm", "in"] as const) {
      const measured = measure(await loadJob(io, `${root}/${folder}/${name}`, { units }));
      const bars = planBars(measured);
      for (const paper of ["A4", "Letter"] as const) {
        const pages = benchCard(makeCardModel(measured, setupOf(measured, bars)), paperNamed(paper));
        const faults = pages.flatMap((page) => checkLayout(page));
        console.log(name, units, paper, pages.length, faults.length === 0 ? "" : JSON.stringify(faults.slice(0, 4)));
        for (const [i, page] of pages.entries()) writeFileSync(`/tmp/w/card/out/${name.replace(".knife.yaml","")}-${units}-${paper}-${i + 1}.svg`, await toSvg(page));
      }
    }
  }
});
