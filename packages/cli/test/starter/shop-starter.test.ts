import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { readShopFile } from "../../src/file/index.js";
import { shopStarter } from "../../src/starter/shop-starter.js";
import { answer } from "../support/answer.js";
import { DEMO_KNIFE } from "../support/demo.js";
import { countOf, uncommented } from "./uncommented.js";

const reports = ["stock", "setup", "weigh"] as const;

async function report(command: string, shop: string): Promise<unknown> {
  const { code, out, err } = await answer([command, "a.knife.yaml", "--json"], {
    files: { "a.knife.yaml": DEMO_KNIFE, "shop.yaml": shop },
  });
  expect(code, err).toBe(EXIT.done);
  return JSON.parse(out);
}

describe.each(["mm", "in"] as const)("the starter of a shop in %s", (units) => {
  const text = shopStarter(units);

  it("has bars with lengths and a steel", () => {
    const { shop, units: read } = readShopFile(text, "shop.yaml");
    expect(read).toBe(units);
    expect(shop.rack?.length).toBeGreaterThan(2);
    for (const bar of shop.rack ?? [])
      expect(bar).toMatchObject({ steel: "1084", length: expect.any(Number) });
  });

  // Stops are reckoned with none where the group is empty, so the drills and the rest say the same.
  it.each(reports)(
    "says what holds without its keys: %s is the same with the defaults written out",
    async (command) => {
      expect(countOf(text, "default")).toBeGreaterThan(20);
      const written = uncommented(text, "default");
      expect(written).not.toBe(text);
      expect(await report(command, written)).toEqual(await report(command, text));
    },
  );

  it("can be read with everything written out that may be wanted", async () => {
    expect(countOf(text, "if wanted")).toBeGreaterThan(8);
    await report("setup", uncommented(text, "default", "if wanted"));
  });

  it("is no wider than a terminal", () => {
    for (const line of text.split("\n")) expect(line.length, line).toBeLessThanOrEqual(80);
  });
});
