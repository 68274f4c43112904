import { it, vi } from "vitest";
vi.mock("@scantling/geometry", async (orig) => {
  const real = (await orig()) as any;
  return { ...real,
    weighInterval: real.weighInterval ?? ((spec: any) => ({ massInterval: [500, 560], balanceInterval: [48, 56], contributions: [{input:"blade.thickness",share:0.6},{input:"steel density",share:0.4}] })),
    patternGeometry: real.patternGeometry ?? ((k: any) => ({ outline: k.outline.path, bevelLine: [], holes: [], stations: [] })) };
});
import { answer } from "./support/answer.js";
import { DEMO_FILES } from "./support/demo.js";
it("x", async () => {
  for (const argv of [["plan","harvest.knife.yaml","--out","out"],["plan","harvest.knife.yaml","--units","in"],["weigh","harvest.knife.yaml"],["check","harvest.knife.yaml"],["stock","harvest.knife.yaml"]]) {
    const t = performance.now();
    const r = await answer(argv, { files: DEMO_FILES });
    process.stdout.write(`$ ${argv.join(" ")} -> ${r.code} ${(performance.now()-t).toFixed(0)} ms\n${r.out}${r.err}\n`);
  }
});
