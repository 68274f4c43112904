import { readdirSync, readFileSync } from "node:fs";
import {
  checkLayout,
  gaugesContents,
  layOutSheet,
  papersFor,
  type SheetContent,
  sheathContents,
  slabsContents,
} from "@scantling/render";
import { describe, expect, it } from "vitest";
import { makeGaugesModel } from "../../src/models/gauges-model.js";
import { makeSheathModel } from "../../src/models/sheath-model.js";
import { makeSlabsModel, whyNoSlabs } from "../../src/models/slabs-model.js";
import { DEMO_KNIFE } from "../support/demo.js";
import { measured } from "../support/sample-job.js";

const root = new URL("../../../../examples/", import.meta.url);
const examples = readdirSync(root, { withFileTypes: true })
  .filter((entry) => entry.isDirectory() && entry.name !== "node_modules")
  .flatMap(({ name }) => {
    const folder = new URL(`${name}/`, root);
    const file = readdirSync(folder).find((entry) => entry.endsWith(".knife.yaml"));
    return file === undefined ? [] : [[name, readFileSync(new URL(file, folder), "utf8")] as const];
  });

const faults = (contents: readonly SheetContent[]): unknown[] =>
  layOutSheet(contents, { kind: "smallest", papers: papersFor("mm") }).flatMap((page) => checkLayout(page));

describe.each(examples)("%s", (_, text) => {
  it("has gauges and a sheath on which nothing overlaps, and slabs where the file describes them", async () => {
    const knife = await measured(text);
    expect(faults(gaugesContents(makeGaugesModel(knife)))).toEqual([]);
    expect(faults(sheathContents(makeSheathModel(knife)))).toEqual([]);
    const slabs = makeSlabsModel(knife);
    expect(slabs === undefined).toBe(!/slabs:|block:/.test(text));
    if (slabs !== undefined) expect(faults(slabsContents(slabs))).toEqual([]);
  });
});

it("a knife without wood to draw says why: no handle, or one given as parts or by fittings alone", async () => {
  const told = async (handle: string): Promise<string> => {
    const [before = ""] = DEMO_KNIFE.split(/^handle:/mu);
    const after = /^(?:finish|allowances|forging):[\s\S]*/mu.exec(DEMO_KNIFE)?.[0] ?? "";
    const bare = before.replace(/ {2}holes:.*\n(?: {4}- .*\n)+/u, "");
    const knife = await measured(`${bare}${handle}${after}`);
    expect(makeSlabsModel(knife)).toBeUndefined();
    return whyNoSlabs(knife);
  };
  expect(await told("")).toBe("the knife has no handle");
  expect(await told("handle:\n  parts: [{ name: both slabs, mass: 90 g, at: [-62, 27] }]\n")).toBe(
    "the handle is given as parts, without slabs or a block",
  );
  expect(
    await told("handle:\n  bolsters: [{ material: brass, at: -2, length: 8, height: 30, width: 14 }]\n"),
  ).toBe("the handle is given without slabs or a block");
});

it("the demo's slabs are sawn with the shop's kerf between them", async () => {
  const knife = await measured(DEMO_KNIFE);
  const blank = makeSlabsModel(knife)?.stock.blank;
  expect(blank).toMatchObject({ length: 128 + 6, height: 30 + 6 });
  expect(blank?.bookMatched).toBeCloseTo(2 * (blank?.thickness ?? 0) + knife.job.shop.kerf, 9);
});

it("the demo's sheath is 92 high, half of 4.6 thick, a welt of 12 and 2 to trim on each side", async () => {
  const { sheath } = makeSheathModel(await measured(DEMO_KNIFE));
  expect(sheath.halfWidth).toBeCloseTo(92 + 2.3 + 12 + 2, 9);
  expect(sheath).toMatchObject({ mouth: -10, weltLayers: 2, mouthHeight: 92 });
});
