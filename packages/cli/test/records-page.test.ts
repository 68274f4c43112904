import { expect, test } from "vitest";
import { projectFile } from "./file/files.js";
import { answer } from "./support/answer.js";
import { DEMO_KNIFE, DEMO_SHOP } from "./support/demo.js";
import { KNIFE } from "./support/record-world.js";

const PAGE = projectFile("docs/records.md");
const RECORD = projectFile("examples/market-garden/harvest.record.yaml");

/** Blocks of printed text on the page. */
const printed = [...PAGE.matchAll(/```text\n([\s\S]*?)```/gu)].map(([, block = ""]) => block);

/** Every line of a block, in its order, among those that a command prints. */
function expectAmong(block: string, out: string): void {
  const lines = out.split("\n");
  let at = -1;
  for (const line of block.trimEnd().split("\n")) {
    at = lines.indexOf(line, at + 1);
    expect(at, line).toBeGreaterThanOrEqual(0);
  }
}

test("the page shows what record prints", async () => {
  // The demo's record as it was before its fourth entry, of the revision that the page shows.
  const until = RECORD.indexOf("  - { revision: 4,");
  const files = {
    [KNIFE]: DEMO_KNIFE,
    "shop.yaml": DEMO_SHOP,
    "harvest.record.yaml": RECORD.slice(0, until),
  };
  const argv = ["--stage", "forged", "--mass", "709g", "--tare", "0g", "--heats", "9", "--on", "2026-10-08"];
  const sizes = ["--size", "heel=4.7 x 96 mm", "--size", "60 %=3.7 mm", "--task", "forge", "--hours", "4"];
  const { out } = await answer(["record", KNIFE, ...argv, ...sizes], { files });
  expect(printed).toHaveLength(2);
  expectAmong(printed[0] ?? "", out);
});

test("the page shows what reorder prints", async () => {
  const shop = DEMO_SHOP.replace(
    "scalePerHeat: 1.2 % +0.8/-0.6 %",
    "scalePerHeat: 1.3 % +0.3/-0.3 %",
  ).replace(/^ {2}- \{ size: 1\/4 x 2 in,.*\n/mu, "");
  const files = { [KNIFE]: DEMO_KNIFE, "shop.yaml": shop, "harvest.record.yaml": RECORD };
  const { out } = await answer(["reorder", KNIFE], { files });
  expectAmong(printed[1] ?? "", out);
});
