import { FINDING_CODES, LIMIT_TABLE } from "@scantling/geometry";
import { describe, expect, test } from "vitest";
import { RED_FLAGS } from "../red-flags/flags.js";
import { limitsPage, redFlagsPage } from "../red-flags/pages.js";
import { filesBelow, ROOT, readText, withoutComments } from "./repository.js";

describe("docs made of the program's own tables", () => {
  // Run with -u after a change to a table, and look at what moved.
  test("docs/limits.md", async () => {
    await expect(limitsPage()).toMatchFileSnapshot(`${ROOT}/docs/limits.md`);
  });

  test("docs/red-flags.md", async () => {
    await expect(redFlagsPage()).toMatchFileSnapshot(`${ROOT}/docs/red-flags.md`);
  });
});

describe("the table of limits", () => {
  test("has every name once, each with a basis and something that it limits", () => {
    const keys = LIMIT_TABLE.map(({ key }) => key);
    expect(new Set(keys).size).toBe(keys.length);
    for (const { key, basis, about } of LIMIT_TABLE) {
      expect(basis.length, key).toBeGreaterThan(10);
      expect(about.length, key).toBeGreaterThan(10);
    }
  });

  test("names only findings that there are", () => {
    const known: readonly string[] = FINDING_CODES;
    for (const { key, trips } of LIMIT_TABLE)
      expect(
        trips.filter((code) => !known.includes(code)),
        key,
      ).toEqual([]);
  });
});

describe("the list of finding codes", () => {
  const sources = ["geometry", "cli"]
    .flatMap((name) => filesBelow(`packages/${name}/src`, ".ts"))
    .filter((path) => !/finding-codes\.ts$|finding-commands\.ts$|\/limits\//u.test(path))
    .map((path) => withoutComments(readText(path)))
    .join("\n");

  test("has each code once, and none that nothing tells", () => {
    expect(new Set(FINDING_CODES).size).toBe(FINDING_CODES.length);
    expect(FINDING_CODES.filter((code) => !sources.includes(`"${code}"`))).toEqual([]);
  });

  test("every code stands in the model's table of findings", () => {
    const model = readText("docs/model.md");
    const findings = model.slice(model.indexOf("## 12. Findings"), model.indexOf("## 13."));
    expect(FINDING_CODES.filter((code) => !findings.includes(code))).toEqual([]);
  });
});

describe("the inventory of red flags", () => {
  test("has all 38, in order, and rows 4 and 5", () => {
    const names = Array.from({ length: 38 }, (_, i) => `R${i + 1}`);
    expect(RED_FLAGS.map(({ name }) => name)).toEqual([...names, "row 4", "row 5"]);
  });

  test("names for each a finding, or the reason why there is none", () => {
    for (const { name, codes, not } of RED_FLAGS)
      expect(codes.length > 0 || (not ?? "").length > 10, name).toBe(true);
  });
});
