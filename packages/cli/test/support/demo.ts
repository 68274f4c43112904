import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const folder = new URL("../../../../examples/market-garden/", import.meta.url);

function example(name: string): string {
  return readFileSync(fileURLToPath(new URL(name, folder)), "utf8");
}

/** The demo's knife file and shop file, as text. */
export const DEMO_KNIFE = example("harvest.knife.yaml");
export const DEMO_SHOP = example("shop.yaml");
export const DEMO_RECORD = example("harvest.record.yaml");

/** The demo's files in the current folder of a fake world. */
export const DEMO_FILES = { "harvest.knife.yaml": DEMO_KNIFE, "shop.yaml": DEMO_SHOP } as const;

/** The demo's knife with a piece of its text replaced; the piece must be there. */
export function demoWith(...changes: readonly (readonly [string, string])[]): string {
  return changes.reduce((text, [from, to]) => {
    if (!text.includes(from)) throw new Error(`the demo has no "${from}"`);
    return text.replace(from, to);
  }, DEMO_KNIFE);
}

/** Where a piece of text stands in a file, as `line:column`. */
export function placeOf(text: string, piece: string): string {
  const offset = text.indexOf(piece);
  if (offset < 0) throw new Error(`the text has no "${piece}"`);
  const before = text.slice(0, offset).split("\n");
  return `${before.length}:${(before.at(-1) ?? "").length + 1}`;
}
