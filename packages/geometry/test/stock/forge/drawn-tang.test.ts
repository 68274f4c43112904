import { expect, test } from "vitest";
import { makeKnife } from "../../../src/blade/knife.js";
import { drawnTang } from "../../../src/stock/forge/drawn-tang.js";
import { forgedProfile } from "../../../src/stock/forge/forged-profile.js";
import { FULL, HIDDEN } from "./forge-knife.js";

/** A tang whose sides are straight from the shoulder to the middle and on to the butt. */
const drawnOf = (tang: Partial<typeof HIDDEN.tang>) => {
  const knife = makeKnife({ ...HIDDEN, tang: { ...HIDDEN.tang, ...tang } });
  const profile = forgedProfile(knife);
  return { drawn: drawnTang(knife, profile), profile, allowance: knife.allowances.outline };
};

test("the front is the tang beside its fillets: its own height and the allowance on either side", () => {
  const { drawn, profile, allowance } = drawnOf({ shoulderRadius: 3 });
  expect(drawn.front.height).toBeCloseTo(14 + 2 * allowance, 3);
  expect(drawn.fillet).toBeCloseTo(3, 9);
  // Two fillets of 3 mm more right at the shoulder, where they stand upright: what marks and volumes are taken from.
  expect(Math.abs(profile.behind.height - (14 + 6 + 2 * allowance))).toBeLessThan(0.2);
});

test("the middle is told where it is not in line with both ends", () => {
  const { drawn, allowance } = drawnOf({ shoulderRadius: 3 });
  expect(drawn.middle?.height).toBeGreaterThan(11.5 + 2 * allowance);
  expect(drawn.middle?.height).toBeLessThan(12.5 + 2 * allowance);
  const even = drawnOf({ shoulderRadius: 3, heights: { front: 14, middle: 11, butt: 8 } }).drawn;
  expect(even.middle).toBeUndefined();
});

test("a tang without fillets has its front right at the shoulder", () => {
  const knife = makeKnife(FULL);
  const profile = forgedProfile(knife);
  const drawn = drawnTang(knife, profile);
  expect(drawn.fillet).toBeUndefined();
  expect(drawn.front.height).toBe(profile.behind.height);
});
