import { describe, expect, it } from "vitest";
import type { Measured } from "../../src/measure.js";
import { balanceLines } from "../../src/report/weigh-text.js";

function balance(fromHeel: number, fromHandle: number, interval: readonly [number, number]): string {
  // Only these are read.
  const measured = {
    weight: { knife: { balanceFromHeel: fromHeel, balanceFromHandle: fromHandle } },
    interval: { balanceInterval: interval },
  } as Measured;
  return balanceLines(measured, "mm").join(" ");
}

describe("the balance in words", () => {
  it("stands ahead of both", () => {
    expect(balance(58, 68, [56, 60])).toBe(
      "Balance: 58.0 mm ahead of the heel, 68.0 mm ahead of the handle front; 95 in 100: 56.0 mm to 60.0 mm ahead of the heel.",
    );
  });

  it("stands behind the heel without minus signs, the nearer limit first", () => {
    expect(balance(-36.2, -26.7, [-36.7, -35.6])).toBe(
      "Balance: 36.2 mm behind the heel, 26.7 mm behind the handle front; 95 in 100: 35.6 mm to 36.7 mm behind the heel.",
    );
  });

  it("is told once where the handle begins at the heel", () => {
    expect(balance(12, 12, [11, 13])).toBe(
      "Balance: 12.0 mm ahead of the heel and of the handle front; 95 in 100: 11.0 mm to 13.0 mm ahead of the heel.",
    );
  });

  it("is at the heel where it would be nothing ahead of it", () => {
    expect(balance(0.03, 9.5, [-1, 1.1])).toBe(
      "Balance: at the heel, 9.5 mm ahead of the handle front; 95 in 100: from 1.0 mm behind to 1.1 mm ahead of the heel.",
    );
    expect(balance(-0.03, -0.03, [-0.04, 1.1])).toBe(
      "Balance: at the heel and the handle front; 95 in 100: from the heel to 1.1 mm ahead of the heel.",
    );
    expect(balance(-1, 0.01, [-2, 0.02])).toBe(
      "Balance: 1.0 mm behind the heel, at the handle front; 95 in 100: from the heel to 2.0 mm behind the heel.",
    );
    expect(balance(0, 10, [-0.01, 0.01])).toContain("95 in 100: at the heel.");
  });

  it("stands on either side", () => {
    expect(balance(0.5, 10.5, [-1, 2])).toContain(
      "95 in 100: from 1.0 mm behind to 2.0 mm ahead of the heel.",
    );
  });
});
