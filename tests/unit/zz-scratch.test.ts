import { test } from "vitest";
import { referenceKnives } from "../reference/blades.js";
import { referenceBody } from "../reference/body.js";
import { integrateBody } from "../reference/integrate.js";
import { bodyInState } from "../../packages/geometry/src/blade/size-states.js";
import { knifeLaws } from "../../packages/geometry/src/blade/knife-laws.js";
import { measureBody } from "../../packages/geometry/src/blade/measure-body.js";
import { withDefaultAllowances, withDefaultFinish } from "../../packages/geometry/src/blade/defaults.js";
test("x", () => {
  for (const { name, spec, outline } of referenceKnives()) for (const sharpened of [true, false]) {
    const m = integrateBody(referenceBody(spec, outline, { sharpened }), 1e-10);
    const body = bodyInState({ spec, outline, laws: knifeLaws(spec, outline), finish: withDefaultFinish(), allowances: withDefaultAllowances() }, sharpened ? "finished" : "unsharpened");
    const t0 = performance.now();
    const k = measureBody(body);
    const t1 = performance.now();
    for (let i = 0; i < 20; i++) measureBody(body);
    const t2 = performance.now();
    console.log(name, sharpened, (t1 - t0).toFixed(2), ((t2 - t1) / 20).toFixed(3), "ms", k.value[0], m.volume, [m.volume, m.x, m.y, m.xx, m.yy, m.zz, m.xy].map((v, i) => ((k.value[i] ?? 0) / v - 1).toExponential(1)).join(" "), "est", ((k.error[0]??0)/m.volume).toExponential(1));
  }
}, 600000);
