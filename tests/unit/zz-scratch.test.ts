import { ledgerBodies, makeKnife, weighKnife } from "@scantling/geometry";
import { test } from "vitest";
import { referenceKnives } from "../reference/blades.js";
import { referenceBody } from "../reference/body.js";
import { hardKnives } from "../reference/hard-blades.js";
import { integrateBody } from "../reference/integrate.js";

test("x", async () => {
  for (const { name, spec, outline } of [...referenceKnives(), ...hardKnives()]) {
    const t: number[] = [performance.now()];
    const k = makeKnife(spec);
    t.push(performance.now());
    weighKnife(k);
    t.push(performance.now());
    ledgerBodies(k);
    t.push(performance.now());
    integrateBody(referenceBody(spec, outline), 1e-9);
    t.push(performance.now());
    integrateBody(referenceBody(spec, outline, { sharpened: false }), 1e-9);
    t.push(performance.now());
    integrateBody(referenceBody(spec, outline), 1e-10);
    t.push(performance.now());
    console.log(
      name,
      "make, weigh, ledger, ref-9, ref unsharp, ref-10",
      t
        .slice(1)
        .map((x, i) => (x - (t[i] ?? 0)).toFixed(0))
        .join(" "),
    );
  }
}, 600000);
