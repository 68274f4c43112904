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

describe("what check would stop", () => {
  // The demo's blade is 225 mm long.
  const files = { ...DEMO_FILES, "shop.yaml": `${DEMO_SHOP}quenchTank: { depth: 100 mm }\n` };
  const STOP = /^1 STOP(?:, \d+ (?:warning|note)s?)*: scantling check FILE$/mu;

  it("is counted at the end, as in weigh", async () => {
    const stock = await answer(["stock", FILE], { files });
    expect(stock.code).toBe(EXIT.done);
    expect(stock.out.trimEnd().split("\n").at(-1)).toMatch(STOP);
    expect((await answer(["weigh", FILE], { files })).out).toMatch(STOP);
    const check = await answer(["check", FILE], { files });
    expect(check.code).toBe(EXIT.notMet);
    expect(check.out.match(/^STOP:/gmu)).toHaveLength(1);
  });

  it("is counted for each of several orders", async () => {
    const two = { ...files, "b.knife.yaml": DEMO_KNIFE.replace("code: MG-14", "code: MG-15") };
    const { out } = await answer(["stock", FILE, "b.knife.yaml"], { files: two });
    expect(out).toMatch(/^MG-14: 1 STOP.*: scantling check FILE$/mu);
    expect(out).toMatch(/^MG-15: 1 STOP.*: scantling check FILE$/mu);
  });

  it("is not spoken of where there is nothing", async () => {
    expect((await answer(["stock", FILE], { files: DEMO_FILES })).out).not.toContain("STOP");
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
