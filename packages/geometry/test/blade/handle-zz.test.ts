import { test } from "vitest";
import { handleParts } from "../../src/blade/handle-parts.js";
import { outlineWith, polyline, steelLaw } from "./handle-fixtures.js";
test("x", () => {
  const front = { x: 0, y: 30 };
  const o = outlineWith({ top: polyline(front, { x: -100, y: 30 }),
      butt: polyline({ x: -100, y: 30 }, { x: -100, y: 2 }),
      bottom: polyline({ x: -100, y: 2 }, { x: -50, y: 10 }, { x: 0, y: 4 }) });
  for (const r of [0, 3, 6]) {
    const p = handleParts({ slabs: { material: { name: "maple" }, thickness: 8, edgeRadius: r } }, o, steelLaw(o, 4), [])[0];
    const L = 100 + Math.hypot(50,8)+Math.hypot(50,6);
    console.log(r, p?.moments.value[0], 2*8*100*(28+20)/2/1 - 0, 16*(50*(28+20)/2+50*(20+26)/2) - 2*(1-Math.PI/4)*r*r*L);
  }
});
