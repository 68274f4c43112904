import { describe, expect, it } from "vitest";
import { readShopFile } from "../../src/file/index.js";
import { withChanges, type YamlChange } from "../../src/file/set-yaml.js";
import { DEMO_SHOP } from "../support/demo.js";

const LOSS: YamlChange = { path: ["losses", "scalePerHeat"], value: "1.48 % +0.4/-0.31 %" };
const SPREAD: YamlChange = { path: ["limits", "forge", "bevelSpreadShare"], value: "41 %" };
const learned = (key: string, value: string | number): YamlChange => ({
  path: ["learned", "losses.scalePerHeat", key],
  value,
  comment: "keep it",
});
const LEARNED = [learned("is", "1.48 %"), learned("jobs", 10)];

describe("a key that is there", () => {
  it("keeps every byte of the demo's shop but the figure itself", () => {
    const line = "  scalePerHeat: 1.2 % +0.8/-0.6 %\n";
    expect(DEMO_SHOP).toContain(line);
    expect(withChanges(DEMO_SHOP, [LOSS])).toBe(
      DEMO_SHOP.replace(line, "  scalePerHeat: 1.48 % +0.4/-0.31 %\n"),
    );
  });

  it.each([
    [
      "a comment behind it",
      "losses:\n  scalePerHeat: 1 % # fire\n",
      "losses:\n  scalePerHeat: 1.48 % +0.4/-0.31 % # fire\n",
    ],
    [
      "braces",
      "losses: { scalePerHeat: 1 %, scale: skin }\n",
      "losses: { scalePerHeat: 1.48 % +0.4/-0.31 %, scale: skin }\n",
    ],
    ["double quotes", 'losses:\n  scalePerHeat: "1 %"\n', 'losses:\n  scalePerHeat: "1.48 % +0.4/-0.31 %"\n'],
    ["single quotes", "losses:\n  scalePerHeat: '1 %'\n", "losses:\n  scalePerHeat: '1.48 % +0.4/-0.31 %'\n"],
    ["a bare number", "losses:\n  scalePerHeat: 0.01\n", "losses:\n  scalePerHeat: 1.48 % +0.4/-0.31 %\n"],
    [
      "Windows line ends",
      "losses:\r\n  scalePerHeat: 1 %\r\nkerf: 1\r\n",
      "losses:\r\n  scalePerHeat: 1.48 % +0.4/-0.31 %\r\nkerf: 1\r\n",
    ],
    ["JSON", '{"losses":{"scalePerHeat":"1 %"}}', '{"losses":{"scalePerHeat":"1.48 % +0.4/-0.31 %"}}'],
  ])("with %s", (_, before, after) => {
    expect(withChanges(before, [LOSS])).toBe(after);
    expect(readShopFile(after, "shop.yaml").shop.losses?.scalePerHeat?.value).toBeCloseTo(0.0148, 12);
  });

  it("with a number in it", () => {
    const before = "learned:\n  losses.scalePerHeat: { is: 1.3 %, jobs: 2 }  # ours\n";
    expect(withChanges(before, LEARNED)).toBe(
      "learned:\n  losses.scalePerHeat: { is: 1.48 %, jobs: 10 }  # ours\n",
    );
  });
});

describe("a key that is not there", () => {
  it.each([
    ["nothing in the file", "", [LOSS], "losses:\n  scalePerHeat: 1.48 % +0.4/-0.31 %\n"],
    ["comments alone", "# ours\n", [LOSS], "# ours\nlosses:\n  scalePerHeat: 1.48 % +0.4/-0.31 %\n"],
    [
      "its group",
      "losses:\n  scale: skin # so\nkerf: 1\n",
      [LOSS],
      "losses:\n  scale: skin # so\n  scalePerHeat: 1.48 % +0.4/-0.31 %\nkerf: 1\n",
    ],
    [
      "its group at the end, without a line end",
      "losses:\n  scale: skin",
      [LOSS],
      "losses:\n  scale: skin\n  scalePerHeat: 1.48 % +0.4/-0.31 %",
    ],
    ["no group", "kerf: 1\n", [LOSS], "kerf: 1\n\nlosses:\n  scalePerHeat: 1.48 % +0.4/-0.31 %\n"],
    [
      "a group of a group",
      "limits:\n  maxBars: 5\nkerf: 1\n",
      [SPREAD],
      "limits:\n  maxBars: 5\n  forge:\n    bevelSpreadShare: 41 %\nkerf: 1\n",
    ],
    ["no group at all", "kerf: 1\n", [SPREAD], "kerf: 1\n\nlimits:\n  forge:\n    bevelSpreadShare: 41 %\n"],
    [
      "a group whose last key is a group",
      "limits:\n  reach:\n    easy: 30 %\n\nkerf: 1\n",
      [SPREAD],
      "limits:\n  reach:\n    easy: 30 %\n  forge:\n    bevelSpreadShare: 41 %\n\nkerf: 1\n",
    ],
    [
      "braces",
      "limits: { maxBars: 5 }\n",
      [SPREAD],
      "limits: { maxBars: 5, forge: { bevelSpreadShare: 41 % } }\n",
    ],
    [
      "a mark at the end",
      "kerf: 1\n...\n",
      [LOSS],
      "kerf: 1\n\nlosses:\n  scalePerHeat: 1.48 % +0.4/-0.31 %\n...\n",
    ],
    [
      "a comment above, once",
      "kerf: 1\n",
      LEARNED,
      "kerf: 1\n\n# keep it\nlearned:\n  losses.scalePerHeat:\n    is: 1.48 %\n    jobs: 10\n",
    ],
    [
      "JSON",
      '{ "kerf": 1 }',
      [...LEARNED, SPREAD],
      `{ "kerf": 1, "learned": { "losses.scalePerHeat": { "is": "1.48 %", "jobs": 10 } }, "limits": { "forge": { "bevelSpreadShare": "41 %" } } }`,
    ],
  ] as const)("with %s", (_, before, changes, after) => {
    expect(withChanges(before, changes)).toBe(after);
    if (before.startsWith("{")) expect(JSON.parse(after)).toHaveProperty("kerf", 1);
  });
});

describe("what cannot be changed without guessing is left alone", () => {
  it.each([
    ["a place that others point to", "losses:\n  scalePerHeat: &a 1 %\n  scalePerWeldingHeat: *a\n"],
    ["a pointer", "losses:\n  scalePerWeldingHeat: &a 1 %\n  scalePerHeat: *a\n"],
    ["a group where a figure should be", "losses:\n  scalePerHeat:\n    value: 1 %\n"],
    ["a figure where a group should be", "losses: 3\n"],
  ])("%s", (_, before) => {
    expect(withChanges(before, [LOSS])).toBeUndefined();
  });
});
