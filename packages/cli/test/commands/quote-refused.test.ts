import { MATERIAL_TO_FIND } from "@scantling/geometry";
import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { inShort, shopProblems } from "../file/files.js";
import { answer, flat } from "../support/answer.js";
import { DEMO_FILES, DEMO_KNIFE, demoWith } from "../support/demo.js";

const FILE = "harvest.knife.yaml";
const world = (knife: string) => ({
  today: "2026-11-30",
  files: { [FILE]: knife, "shop.yaml": DEMO_FILES["shop.yaml"] },
});
const quote = (knife: string, ...argv: string[]) =>
  answer(["quote", FILE, "--out", "offer", ...argv], world(knife));
const withOrder = (text: string): string => demoWith(["  asks: ", `${text}\n  asks: `]);

describe("an offer that cannot be made", () => {
  it("has a price that sheath and post take up: a STOP, and no sheet with less than nothing for the knife", async () => {
    const { code, out, written } = await quote(`${DEMO_KNIFE}quote: { price: 10, sheath: 60, post: 9 }\n`);
    expect([code, written]).toEqual([EXIT.notMet, []]);
    // 10 with 19 % tax in it is 8.40 without.
    expect(flat(out)).toContain(
      "STOP: The price that you ask is 8.40 EUR without tax: with sheath and post at 69.00 EUR nothing is left for the knife.",
    );
    // A coin more than both, with the tax on it, leaves a coin for the knife: (69 + 0.01) × 1.19 = 82.12.
    const enough = await quote(`${DEMO_KNIFE}quote: { price: 82.12, sheath: 60, post: 9 }\n`);
    expect([enough.code, enough.written.length]).toEqual([EXIT.done, 2]);
  });

  it("has a material that fit gave a density and nobody a name", async () => {
    const knife = demoWith([
      "material: European ash",
      `material: { name: ${MATERIAL_TO_FIND}, density: 0.9 g/cm3 }`,
    ]);
    const { code, out, written } = await quote(knife);
    expect([code, written]).toEqual([EXIT.notMet, []]);
    expect(flat(out)).toMatch(
      /STOP: The material is still to be chosen.*\(handle\.slabs\.material, harvest\.knife\.yaml:\d+/u,
    );
  });
});

describe("dates of an offer", () => {
  it("are none that are past: work that was to begin then is reckoned from today, and that is said", async () => {
    for (const [knife, ...argv] of [
      [withOrder("  started: 2020-02-29")],
      [DEMO_KNIFE, "--from", "2020-02-29"],
    ]) {
      const { out, io } = await quote(knife ?? "", ...argv);
      expect(flat(out)).toContain(
        "note: Sat 29 Feb 2020 is past, so the work is reckoned from Mon 30 Nov 2026.",
      );
      expect(io.disk.text("/shop/offer/harvest.quote.html")).not.toContain("2020");
    }
    const today = await quote(withOrder("  started: 2026-11-30"));
    expect(today.out).not.toContain("is past");
  });

  it("have years of four digits, whatever is added to them", async () => {
    const far = await quote(DEMO_KNIFE, "--from", "9999-12-20");
    expect([far.code, far.written]).toEqual([EXIT.usage, []]);
    expect(flat(far.err)).toContain("--from 9999-12-20: the year is 1900 to 2199");
    const inFile = await quote(withOrder("  promised: 9999-12-20"));
    expect(inFile.code).toBe(EXIT.file);
    expect(flat(inFile.err)).toContain('"9999-12-20": the year is 1900 to 2199');
    expect((await quote(DEMO_KNIFE, "--from", "2199-12-31")).out).toContain("2200");
  });

  it("hold for days: a bare number and less than a day are refused", () => {
    const wrong = (validFor: string) => inShort(shopProblems(`work: { validFor: ${validFor} }\n`));
    expect(wrong("30")).toEqual([
      "1:19 wrong-type | work.validFor needs a time with its unit, such as 30 days",
    ]);
    expect(wrong('"30"')).toEqual([
      '1:19 unit-missing | work.validFor: "30" needs its unit, such as 30 days',
    ]);
    expect(wrong("20 h")).toEqual([expect.stringContaining('work.validFor: "20 h" must be 24 h or more')]);
    expect(wrong("4 weeks")).toEqual([]);
  });
});

it("for programs what there is none of is null, never left out", async () => {
  const shop = DEMO_FILES["shop.yaml"].replace(/^ {2}validFor: .*\n/mu, "");
  const { out } = await answer(["quote", FILE, "--json"], {
    files: { [FILE]: DEMO_KNIFE, "shop.yaml": shop },
  });
  expect(JSON.parse(out)).toMatchObject({ validUntil: null, revision: null, promise: null });
});
