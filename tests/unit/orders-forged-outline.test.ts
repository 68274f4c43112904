import { forgedOutline, PIECE_STATES, signedArea, weighState } from "@scantling/geometry";
import { describe, expect, test } from "vitest";
import { measure } from "../../packages/cli/src/measure.js";
import { makePatternModel } from "../../packages/cli/src/models/pattern-model.js";
import { checkLayout } from "../../packages/render/src/check-layout.js";
import { patternSheet } from "../../packages/render/src/sheets/pattern-sheet.js";
import { at } from "../orders/hand-sums.js";
import { forgedByLibrary } from "../orders/library.js";
import { loadOrder } from "../orders/load.js";
import { ORDERS } from "../orders/orders.js";

/** The ends are drawn on by this in all orders, mm. */
const ENDS = 3;

describe.each(ORDERS)("$code, $name, as forged", async ({ name, edgeLength, height, tang, forging }) => {
  const { knife, job } = await loadOrder(name);

  test("is drawn as much larger as the order's own table says: strips along both sides, blocks at both ends", () => {
    const strips = 2 * forging.outline * (edgeLength + tang.length);
    const tip = ENDS * (at(height, edgeLength) + 2 * forging.outline);
    const butt = ENDS * (at(tang.height, tang.length) + 2 * forging.outline);
    const gained =
      signedArea(forgedOutline(knife.outline, knife.allowances).path) - signedArea(knife.outline.path);
    expect(gained).toBeCloseTo(strips + tip + butt, 4);
  });

  test("weighs what the ledger has, for the orders lose nothing in hardening", () => {
    expect(job.shop.losses.heatTreatmentScale.value).toBe(0);
    expect(weighState(knife, "forged").volume / forgedByLibrary({ job, knife })).toBeCloseTo(1, 8);
  });

  test("can be drawn, and read, in every size state", () => {
    const measured = measure(job);
    for (const state of PIECE_STATES) {
      expect(checkLayout(patternSheet(makePatternModel(measured, state)))).toEqual([]);
    }
  });
});
