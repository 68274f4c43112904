import { mkdirSync, readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { patternContents } from "../../../render/src/sheets/pattern-sheet.js";
import { layOutSheet } from "../../../render/src/lay-out/lay-out-sheet.js";
import { papersFor } from "../../../render/src/paper.js";
import { checkLayout } from "../../../render/src/check-layout.js";
import { toSvg } from "../../../render/src/svg/to-svg.js";
import { preformContents } from "../../../render/src/sheets/preform-sheet.js";
import { drillingContents } from "../../../render/src/sheets/drilling-sheet.js";
import { makePreformModel } from "../../src/models/preform-model.js";
import { makeDrillingModel } from "../../src/models/drilling-model.js";
import { setupOf } from "../../src/forge-setup.js";
import { planBars } from "../../src/stock-report.js";
import { nodeIo } from "../../src/io/node-io.js";
import { loadJob } from "../../src/load.js";
import { measure } from "../../src/measure.js";
import { makePatternModel } from "../../src/models/pattern-model.js";

const ROOT = "/work/sheets/examples";
const files = readdirSync(ROOT).flatMap((folder) => {
  try { return readdirSync(join(ROOT, folder)).filter((n) => n.endsWith(".knife.yaml")).map((n) => join(ROOT, folder, n)); } catch { return []; }
});
mkdirSync("/tmp/w/pattern/svg", { recursive: true });
it.each(files)("%s", async (file) => {
  const name = file.split("/").at(-1)?.replace(".knife.yaml", "");
  const measured = measure(await loadJob(nodeIo(), file, {}));
  const all = ["finished", "ready", "forged"] as const;
  const preform = makePreformModel(measured, setupOf(measured, planBars(measured)));
  const drilling = makeDrillingModel(measured);
  const u = measured.job.units;
  for (const [tag, contents] of [
    ["nested", patternContents(makePatternModel(measured, all))],
    ["left", patternContents(makePatternModel(measured, "finished", { face: "left" }))],
    ["leftnested", patternContents(makePatternModel(measured, all, { face: "left" }))],
    ["rightready", patternContents(makePatternModel(measured, ["ready", "finished"], { face: "right" }))],
    ["kerf", patternContents(makePatternModel(measured, "finished", { cutOffset: 0.8 }))],
    ["kerfin", patternContents(makePatternModel(measured, all, { cutOffset: -0.5 }))],
    ["kerfforged", patternContents(makePatternModel(measured, "forged", { cutOffset: 1.5, face: "left" }))],
    ["preform", preform === undefined ? [] : preformContents(preform)],
    ["preformbent", preform === undefined ? [] : preformContents({ ...preform, bendDown: 11 })],
    ["drilling", drilling === undefined ? [] : drillingContents(drilling)],
    ["drillingin", drilling === undefined ? [] : drillingContents({ ...drilling, units: "in", holes: drilling.holes.map((h) => ({ ...h, drill: "#20 (4.09 mm)" })) })],
  ] as const) {
    if (contents.length === 0) { console.log(name, tag, "none"); continue; }
    const [page] = layOutSheet(contents, { kind: "smallest", papers: papersFor(u) });
    if (page === undefined) throw new Error();
    writeFileSync(`/tmp/w/pattern/svg/${name}-${tag}.svg`, await toSvg(page));
    expect(checkLayout(page), `${name} ${tag}`).toEqual([]);
  }
});
