import { expect, it } from "vitest";
import { readText } from "./repository.js";

const TABLES = readText("README.md")
  .split(/^## /mu)
  .map((section) => section.split("\n").filter((line) => line.startsWith("| ")));

/** Keys in the first cell of the rows of a README section's tables, without what lies under them. */
function keysBeside(known: string): Set<string> {
  const rows = TABLES.find((lines) => lines.some((line) => line.startsWith(known))) ?? [];
  return new Set(
    rows.flatMap((line) => [...(line.split(" | ")[0] ?? "").matchAll(/`(\w+)/gu)].map(([, key = ""]) => key)),
  );
}

it.each([
  ["knife", "| `order.code`"],
  ["shop", "| `rack`"],
])("every key at the top of a %s file stands in the README's table of keys", (name, known) => {
  const schema = JSON.parse(readText(`schemas/${name}.schema.json`)) as { properties: object };
  const keys = Object.keys(schema.properties);
  expect(keys).toContain("sheath");
  const told = keysBeside(known);
  expect(keys.filter((key) => !told.has(key))).toEqual([]);
});
