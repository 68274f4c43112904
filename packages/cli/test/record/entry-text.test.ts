import { describe, expect, it } from "vitest";
import { readRecordFile } from "../../src/file/index.js";
import { entryLine, newRecordText, withEntry } from "../../src/record/entry-text.js";

const HEAD = "scantling: 1\nunits: mm\nknife: a.knife.yaml\n";
const ENTRY = { revision: 1, on: "2026-11-28", stage: "billet", mass: "702 g" };
const next = (revision: number) => ({ ...ENTRY, revision });

const oneEntry = `# mine
scantling: 1   # version
units: mm
knife: a.knife.yaml

entries:
  # first
  - { revision: 1, on: 2026-11-28, note: "a: b # c" }  # behind
`;

describe("adding an entry to a record", () => {
  const layouts: readonly (readonly [string, string])[] = [
    ["comments and blank lines", `${oneEntry}\n# at the end\n\n`],
    ["no line end at the end", oneEntry.trimEnd()],
    ["Windows line ends", oneEntry.replaceAll("\n", "\r\n")],
    [
      "entries in lines of their own",
      `${HEAD}entries:\n- revision: 1\n  on: 2026-11-28\n  note: |\n    two\n    lines\n`.replace(
        "two\n    lines",
        "one line",
      ),
    ],
    ["entries not indented", `${HEAD}entries:\n- { revision: 1, on: 2026-11-28, note: a }\n`],
    ["entries indented far", `${HEAD}entries:\n        - { revision: 1, on: 2026-11-28, note: a }\n`],
    ["a comment that is no comment of the list", `${oneEntry}# a last word`],
  ];
  it.each(layouts)("keeps every byte that was there: %s", (_, text) => {
    const added = withEntry(text, { entry: next(2) });
    expect(added?.startsWith(text)).toBe(true);
    const { entries } = readRecordFile(added ?? "", "");
    expect(entries.map(({ revision }) => revision)).toEqual([1, 2]);
    expect(entries[1]).toMatchObject({ stage: "billet", mass: 702 });
    expect(withEntry(added ?? "", { entry: next(3) })?.startsWith(added ?? "-")).toBe(true);
  });

  it("uses the line ends of the file", () => {
    const added = withEntry(oneEntry.replaceAll("\n", "\r\n"), { entry: next(2) }) ?? "";
    expect(added.replaceAll("\r\n", "")).not.toContain("\n");
  });

  it("begins the list, with the plan before it, where there is none", () => {
    const added = withEntry(HEAD, { entry: ENTRY }) ?? "";
    expect(added).toBe(
      `${HEAD}\nentries:\n  - { revision: 1, on: 2026-11-28, stage: billet, mass: 702 g }\n`,
    );
  });

  const inside: readonly (readonly [string, string, string])[] = [
    [
      "JSON",
      JSON.stringify({ scantling: 1, units: "mm", knife: "a", entries: [ENTRY] }),
      `, ${JSON.stringify(next(2))}`,
    ],
    [
      "JSON in lines",
      JSON.stringify({ scantling: 1, units: "mm", knife: "a", entries: [ENTRY] }, undefined, 2),
      `,\n    ${JSON.stringify(next(2))}`,
    ],
    [
      "a list in brackets",
      `${HEAD}entries: [{ revision: 1, on: 2026-11-28, note: a }]\n`,
      `, ${entryLine(next(2))}`,
    ],
    [
      "a key behind the entries",
      `entries:\n  - { revision: 1, on: 2026-11-28, note: a }\n${HEAD}`,
      `  - ${entryLine(next(2))}\n`,
    ],
    ["the end of the document marked", `${oneEntry}...\n`, `  - ${entryLine(next(2))}\n`],
  ];
  it.each(inside)("puts one in, and nothing else of the file changes: %s", (_, text, piece) => {
    expect(readRecordFile(text, "").entries).toHaveLength(1);
    const added = withEntry(text, { entry: next(2) }) ?? "";
    expect(added).toContain(piece);
    expect(added.replace(piece, "")).toBe(text);
    expect(readRecordFile(added, "").entries.map(({ revision }) => revision)).toEqual([1, 2]);
    if (text.startsWith("{")) expect(JSON.parse(added).entries).toEqual([ENTRY, next(2)]);
    // And it goes on so.
    expect(readRecordFile(withEntry(added, { entry: next(3) }) ?? "", "").entries).toHaveLength(3);
  });

  const empty: readonly (readonly [string, string])[] = [
    ["JSON without the key", JSON.stringify({ scantling: 1, units: "mm", knife: "a" })],
    ["JSON with nothing in it", JSON.stringify({ scantling: 1, units: "mm", knife: "a", entries: [] })],
    ["brackets with nothing in them", `${HEAD}entries: []\n`],
    ["braces", "{ scantling: 1, units: mm, knife: a }\n"],
    ["the end of the document marked", `${HEAD}...\n`],
  ];
  it.each(empty)("begins the list: %s", (_, text) => {
    const added = withEntry(text, { entry: ENTRY }) ?? "";
    expect(readRecordFile(added, "").entries).toEqual([{ ...ENTRY, mass: 702 }]);
    if (text.startsWith('{"')) expect(JSON.parse(added).entries).toEqual([ENTRY]);
  });

  it("guesses nothing where entries are something else by a name of their own", () => {
    const shared = `scantling: 1\nunits: mm\nknife: a\nentries: &all [{ revision: 1, on: 2026-11-28, note: *n }]\n`;
    expect(withEntry(shared, { entry: next(2) })).toBeUndefined();
  });

  it("refuses an entry that would not be read, such as one with the wrong number", () => {
    expect(withEntry(oneEntry, { entry: next(3) })).toBeUndefined();
    expect(withEntry(oneEntry, { entry: { ...next(2), mass: "7 mm" } })).toBeUndefined();
  });

  const notes = [
    "plain",
    'said: "hard", {ok} [no] # yes',
    "it's 5 1/2\" long",
    "- a",
    "? b",
    "*c &d !e |f >g %h @i `j",
    "~",
    "null",
    "true",
    "0014",
    "1e3",
    "2026-11-28",
    "\\n \\t \\",
    "…, ± 5 °C, 漢字, 🔨",
    "#",
    ",",
    "{",
    "}",
    "]",
    "a,b: c",
    "'",
    '"',
    "---",
    "...",
    "x".repeat(1000),
  ];
  it.each(notes)("brings a note through, whatever is in it: %s", (note) => {
    const entry = { revision: 2, on: "2026-11-28", note, batch: note.slice(0, 200) };
    const added = withEntry(oneEntry, { entry });
    expect(readRecordFile(added ?? "", "").entries[1]).toEqual({ ...entry, batch: note.slice(0, 200) });
    expect(entryLine(entry)).not.toContain("\n");
  });
});

describe("a new record", () => {
  const files = {
    knife: "# a\nscantling: 1\n  x:   y\n\n",
    shop: "a: 1\r\nb: 2\r\n",
    drawing: "<svg>\n\t<path/>  \n</svg>",
  };
  const need = { low: "1 g", usual: "2 g", high: "3 g" };
  const planned = {
    on: "2026-11-28",
    program: "0.1.0",
    heats: 9,
    weldingHeats: 0,
    needed: { cut: need },
    knife: { mass: "2 g", least: "1 g", most: "3 g" },
    balance: { at: "-2 mm", least: "-3 mm", most: "1 mm" },
    asks: [{ ask: "mass", verdict: "at-risk" }],
    losses: { scale: "skin", skinPerHeat: "0.04 mm +0.04/-0.02 mm" },
    files,
  };

  it("holds the plan and the files byte for byte, and is read again", () => {
    const text = newRecordText(
      { knife: "a.knife.yaml", units: "in", command: "scantling record a.knife.yaml" },
      { planned, entry: ENTRY },
    );
    const read = readRecordFile(text, "");
    expect(read.units).toBe("in");
    expect(read.planned?.files).toEqual(files);
    expect(read.planned).toMatchObject({
      needed: { cut: { low: 1, usual: 2, high: 3 } },
      balance: { at: -2, least: -3, most: 1 },
      losses: { scaleModel: "skin", skinPerHeat: { value: 0.04, low: 0.02, high: 0.08 } },
    });
    expect(text).toMatch(/^# What was measured/u);
    expect(text.endsWith("entries:\n  - { revision: 1, on: 2026-11-28, stage: billet, mass: 702 g }\n")).toBe(
      true,
    );
    expect(withEntry(text, { entry: next(2) })?.startsWith(text)).toBe(true);
  });

  it("of JSON gets the plan with its first entry, and is JSON still", () => {
    const text = JSON.stringify({ scantling: 1, units: "mm", knife: "a.knife.yaml" });
    const added = withEntry(text, { planned, entry: ENTRY }) ?? "";
    expect(readRecordFile(added, "").planned?.files).toEqual(files);
    expect(JSON.parse(added).planned.files).toEqual(files);
  });
});
