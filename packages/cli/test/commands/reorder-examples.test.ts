import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { answer, wideLines } from "../support/answer.js";
import { fakeIo } from "../support/fake-io.js";

const EXAMPLES = fileURLToPath(new URL("../../../../examples/", import.meta.url));
const read = (path: string): string => readFileSync(`${EXAMPLES}${path}`, "utf8");
const orders = readdirSync(EXAMPLES, { recursive: true, encoding: "utf8" }).filter((path) =>
  path.endsWith(".knife.yaml"),
);
const shops = ["shop.yaml", ...readdirSync(EXAMPLES).map((folder) => `${folder}/shop.yaml`)];

/** All examples in a fake world, without the demo's own record. */
const files = Object.fromEntries(
  [...orders, ...shops].flatMap((path) => {
    try {
      return [[path, read(path)]];
    } catch {
      return [];
    }
  }),
);

describe("each example, recorded and made again", () => {
  it("there are some", () => {
    expect(orders.length).toBeGreaterThan(5);
  });

  it.each(orders)("%s: nothing changed, whatever the snapshot rounds", async (order) => {
    const io = fakeIo({ files });
    const begun = await answer(["record", order, "--note", "begun"], io);
    expect(begun.err).toBe("");
    expect(begun.code).toBe(0);
    const { out } = await answer(["reorder", order, "--json"], io);
    const { rows, causes, unchanging, unexplained } = JSON.parse(out);
    expect(rows.filter(({ same }: { same: boolean }) => !same)).toEqual([]);
    expect([causes, unchanging, unexplained]).toEqual([[], [], null]);
    expect(wideLines((await answer(["reorder", order, "--units", "in"], io)).out)).toEqual([]);
  });
});
