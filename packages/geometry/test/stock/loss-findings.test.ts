import { describe, expect, test } from "vitest";
import { LOSS_LIMITS } from "../../src/limits/loss-limits.js";
import { DEFAULT_LOSSES, LOSS_DEFAULTS } from "../../src/stock/defaults.js";
import { lossFindings } from "../../src/stock/loss-findings.js";
import { exactly } from "./fixtures.js";

const paths = (changes: Partial<typeof DEFAULT_LOSSES>): string[] =>
  lossFindings({ ...DEFAULT_LOSSES, ...changes }).map(({ path }) => path);

/** The limit of a loss: `scalePerHeat` has `mostScalePerHeat`. */
const mostOf = (loss: string): number =>
  LOSS_LIMITS[`most${loss[0]?.toUpperCase()}${loss.slice(1)}` as keyof typeof LOSS_LIMITS].value;

describe("losses that no shop has", () => {
  test("the defaults pass, in both models, and every limit lies well above the usual range", () => {
    expect(paths({})).toEqual([]);
    expect(paths({ scaleModel: "skin" })).toEqual([]);
    for (const [name, { high }] of Object.entries(LOSS_DEFAULTS))
      expect(mostOf(name), name).toBeGreaterThan(2 * high);
  });

  test("60 % a heat is told with the usual range; 5 % passes", () => {
    const [finding] = lossFindings({ ...DEFAULT_LOSSES, scalePerHeat: exactly(0.6) });
    expect(finding).toMatchObject({
      code: "loss-unusual",
      severity: "warn",
      path: "losses.scalePerHeat",
      values: {
        value: { quantity: "share", value: 0.6 },
        low: { quantity: "share", value: 0.006 },
        high: { quantity: "share", value: 0.02 },
      },
    });
    expect(paths({ scalePerHeat: exactly(0.05) })).toEqual([]);
  });

  test("the high side counts, for lengths are cut for it", () => {
    const [finding] = lossFindings({ ...DEFAULT_LOSSES, scalePerHeat: { low: 0, value: 0.02, high: 0.2 } });
    expect(finding).toMatchObject({ values: { value: { quantity: "share", value: 0.2 } } });
    expect(finding?.text).toContain("the most that the shop file allows for");
  });

  test("every loss has its limit, but only in the model that counts it", () => {
    for (const name of Object.keys(LOSS_DEFAULTS)) {
      const changes = { [name]: exactly(mostOf(name) * 1.01) };
      const both = [paths(changes), paths({ ...changes, scaleModel: "skin" })];
      const length = name.startsWith("crop") || name.startsWith("weld") || name.startsWith("clean");
      expect(both.flat(), name).toEqual(Array(length ? 2 : 1).fill(`losses.${name}`));
    }
  });
});
