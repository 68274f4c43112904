import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { answer, wideLines } from "../support/answer.js";
import { DEMO_FILES, DEMO_KNIFE, DEMO_SHOP } from "../support/demo.js";

const FILE = "harvest.knife.yaml";
const SMALL_SHOP = "scantling: 1\nunits: in\nrack:\n  - { size: 3/8 x 2 }\n";

async function firstBar(
  argv: readonly string[],
  files: Readonly<Record<string, string>>,
): Promise<string | undefined> {
  const { code, out } = await answer(["stock", ...argv, "--json"], { files });
  expect(code).toBe(EXIT.done);
  return JSON.parse(out).plans[0]?.bar;
}

describe("stock", () => {
  it("plans a stack for the demo, for no bar of its rack is tall enough alone", async () => {
    const { code, out, err } = await answer(["stock", FILE, "--json"], { files: DEMO_FILES });
    expect(err).toBe("");
    expect(code).toBe(EXIT.done);
    const [best] = JSON.parse(out).plans;
    expect(best.bars).toBeGreaterThan(1);
    expect(best.joints).toBe(best.bars - 1);
  });

  for (const units of ["mm", "in"]) {
    it(`reports on 80 columns in ${units}`, async () => {
      const { out } = await answer(["stock", FILE, "--units", units], { files: DEMO_FILES });
      expect(wideLines(out)).toEqual([]);
      expect(out).toContain("bars as cut");
      expect(out).not.toMatch(/NaN|undefined|Infinity/);
    });
  }

  it("never plans less steel than the finished blade holds", async () => {
    const { out } = await answer(["stock", FILE, "--json"], { files: DEMO_FILES });
    const steel = JSON.parse((await answer(["weigh", FILE, "--json"], { files: DEMO_FILES })).out).steel;
    for (const plan of JSON.parse(out).plans) {
      expect(plan.massG).toBeGreaterThan(steel.massG);
      expect(plan.ledger[0]).toMatchObject({ row: "finished-blade" });
      expect(Math.abs(plan.ledger[0].volumeMm3 - steel.volumeMm3)).toBeLessThan(1e-9 * steel.volumeMm3);
    }
  });
});

describe("which shop", () => {
  it("is the one beside the knife file, else the nearest above it", async () => {
    const nested = { [`orders/2026/${FILE}`]: DEMO_KNIFE, "shop.yaml": DEMO_SHOP };
    const own = await firstBar([FILE], DEMO_FILES);
    expect(await firstBar([`orders/2026/${FILE}`], nested)).toBe(own);
    const nearer = await firstBar([`orders/2026/${FILE}`], { ...nested, "orders/shop.yaml": SMALL_SHOP });
    expect(nearer).not.toBe(own);
    expect(nearer).toContain("3/8 x 2");
  });

  it("is the one that --shop names, before any other", async () => {
    const files = { ...DEMO_FILES, "other.yaml": SMALL_SHOP };
    expect(await firstBar([FILE, "--shop", "other.yaml"], files)).not.toBe(await firstBar([FILE], files));
  });

  it("may be missing: then no bars are proposed, and that is said", async () => {
    const { code, out } = await answer(["stock", FILE], { files: { [FILE]: DEMO_KNIFE } });
    expect(code).toBe(EXIT.done);
    expect(out).toContain("No plan");
  });
});
