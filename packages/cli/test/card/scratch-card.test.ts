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
  const env = process.env as Record<string, string | undefined>;
  const root = env["ROOT"] ?? "examples";
  mkdirSync("/tmp/w/card/out", { recursive: true });
  const lines: string[] = [];
  for (const folder of (env["ONLY"] ?? readdirSync(root).join(",")).split(",")) {
    let names: string[] = [];
    try { names = readdirSync(`${root}/${folder}`).filter((n) => n.endsWith(".knife.yaml")); } catch { continue; }
    for (const name of names) {
      const job = await loadJob(io, `${root}/${folder}/${name}`, {});
      const base = measure(job);
      const bars = planBars(base);
      for (const units of ["mm", "in"] as const) {
        const measured = { ...base, job: { ...job, units } };
        const model = makeCardModel(measured, setupOf(measured, bars));
        for (const paper of ["A4", "Letter"] as const) {
          const pages = benchCard(model, paperNamed(paper));
          const faults = pages.flatMap((page) => checkLayout(page));
          const heights = pages.map((p) => Math.min(...[...JSON.stringify(p).matchAll(/"height":([0-9.]+),"rotation"/g)].map((m) => Number(m[1]))));
          lines.push([name, units, paper, pages.length, heights.join("/"), pages.map((p) => /, page/.test(p.title) ? p.description.slice(0, 60) : "").join(" || "), faults.length === 0 ? "" : JSON.stringify(faults.slice(0, 4))].join(" "));
          for (const [i, page] of pages.entries()) writeFileSync(`/tmp/w/card/out/${name.replace(".knife.yaml","")}-${units}-${paper}-${i + 1}.svg`, await toSvg(page));
        }
      }
    }
  }
  writeFileSync("/tmp/w/card/lines.txt", lines.join("\n"));
});
