import { describe, expect, it } from "vitest";
import { FileError, type Problem, readRecordFile } from "../../src/file/index.js";
import { inShort } from "./files.js";

const HEAD = `scantling: 1
units: mm
knife: harvest.knife.yaml
`;

/** A record with these entries, from line 5 on. */
const withEntries = (...entries: readonly string[]): string =>
  `${HEAD}entries:\n${entries.map((entry) => `  - ${entry}\n`).join("")}`;

function problemsOf(text: string): readonly Problem[] {
  try {
    readRecordFile(text, "harvest.record.yaml");
  } catch (error) {
    if (error instanceof FileError) return error.problems;
    throw error;
  }
  return [];
}

describe("a record file", () => {
  it("is read in g and mm, whatever its units, with all that an entry can say", () => {
    const text = `scantling: 1
units: in
knife: harvest.knife.yaml
entries:
  - { revision: 1, on: 2026-11-28, stage: billet, mass: 24.8 oz, tare: 200 g, weldingHeats: 3, batch: 0014 }
  - { revision: 2, on: 2026-11-28, stage: forged, mass: 23, heats: 9, sizes: [{ at: heel, thickness: 7/32, height: 96 mm }, { at: 60 %, thickness: 4.6 mm }, { at: -2, thickness: 3/16 }] }
  - { revision: 3, on: 2026-11-29, drawn: { from: { height: 2, thickness: 1 }, to: { height: 2 1/4, thickness: 3/4 }, with: flat dies } }
  - { revision: 4, on: 2026-11-30, task: forge, hours: 3.5, hardness: { filesCut: 65, filesSkate: 60, after: quench } }
  - { revision: 5, on: 2026-11-30, note: "scale misread", correctsRevision: 2, stage: forged, mass: 22.9 oz, confirmed: true }
`;
    const { entries, units, knife, planned } = readRecordFile(text, "harvest.record.yaml");
    expect([units, knife, planned]).toEqual(["in", "harvest.knife.yaml", undefined]);
    const ounce = 28.349523125;
    expect(entries).toHaveLength(5);
    expect(entries[0]).toEqual({
      revision: 1,
      on: "2026-11-28",
      stage: "billet",
      mass: expect.closeTo(24.8 * ounce, 9),
      tare: 200,
      weldingHeats: 3,
      batch: "0014",
    });
    expect(entries[1]).toMatchObject({ stage: "forged", mass: expect.closeTo(23 * ounce, 9), heats: 9 });
    expect(entries[1]?.sizes).toEqual([
      { at: { kind: "heel" }, thickness: 5.55625, height: 96 },
      { at: { kind: "fraction", share: 0.6 }, thickness: 4.6 },
      { at: { kind: "distance", mm: -50.8 }, thickness: 4.7625 },
    ]);
    expect(entries[2]?.drawn).toEqual({
      from: { height: 50.8, thickness: 25.4 },
      to: { height: 57.15, thickness: 19.05 },
      with: "flat dies",
    });
    expect(entries[3]).toMatchObject({
      task: "forge",
      hours: 3.5,
      hardness: { filesCut: 65, filesSkate: 60, after: "quench" },
    });
    expect(entries[4]).toMatchObject({ correctsRevision: 2, note: "scale misread", confirmed: true });
  });

  it("says the same in JSON", () => {
    const json = JSON.stringify({
      scantling: 1,
      units: "mm",
      knife: "harvest.knife.yaml",
      entries: [{ revision: 1, on: "2026-11-28", stage: "billet", mass: "702 g" }],
    });
    const yaml = withEntries("{ revision: 1, on: 2026-11-28, stage: billet, mass: 702 g }");
    expect(readRecordFile(json, "").entries).toEqual(readRecordFile(yaml, "").entries);
  });

  it("may have no entries yet, and knows where its values stand", () => {
    expect(readRecordFile(HEAD, "").entries).toEqual([]);
    const file = readRecordFile(withEntries("{ revision: 1, on: 2026-11-28, note: a }"), "");
    expect(file.positionOf("entries[0].note")).toEqual({ line: 5, column: 42 });
  });

  it("tells every mistake at once, each at its place", () => {
    const text = `scantling: 1
knife: harvest.knife.yaml
units: mm
entrys: []
entries:
  - { revision: 2, on: 2026-02-29, stage: bilet, mass: 902 g, tare: 1200 g }
  - { revision: 2, on: 2026-02-28, heats: 3, task: forge, hardness: { filesCut: 60, filesSkate: 65 } }
  - { revision: 3, on: 2026-02-28, correctsRevision: 3 }
  - { revision: 4, on: 2026-02-28, drawn: { from: { height: 40, thickness: 20 }, to: { height: 48, thickness: 30 } } }
`;
    expect(inShort(problemsOf(text))).toEqual([
      "4:1 unknown-key | entrys is not a key here; did you mean entries?",
      "6:17 revision-order | entries[1st].revision must be 1: entries are numbered in the order of the file",
      '6:24 not-a-day | entries[1st].on: "2026-02-29" is not a day; write year, month and day: 2026-11-28',
      '6:43 unknown-word | entries[1st].stage: "bilet" is not known here; did you mean billet?',
      "6:69 tare-too-great | entries[1st].tare leaves no steel of the mass: it must be less than that",
      "7:43 stage-missing | entries[2nd].heats needs a stage beside it: cut, billet, forged, ready, finished",
      "7:52 hours-missing | entries[2nd].task needs hours beside it",
      "7:69 files-swapped | entries[2nd].hardness must have a file that cuts harder than the one that skates",
      "8:5 entry-empty | entries[3rd] says nothing but its day",
      "8:54 corrects-nothing | entries[3rd].correctsRevision must be the revision of an earlier entry",
      "9:43 not-drawn | entries[4th].drawn must get thinner: write the section before it under from, the one after it under to",
    ]);
  });

  const entry = (rest: string): string => `{ revision: 1, on: 2026-11-28${rest} }`;
  const mistakes: readonly (readonly [string, string, string])[] = [
    ["a stage that says nothing", ", stage: billet", "stage-alone"],
    ["a mass without its stage", ", mass: 702 g", "stage-missing"],
    ["a mass of nothing", ", stage: billet, mass: 0 g", "out-of-range"],
    ["a length for a mass", ", stage: billet, mass: 70 mm", "quantity-unit-wrong-kind"],
    ["a mass with a tolerance", ", stage: billet, mass: 702 ± 2 g", "tolerance-not-taken"],
    ["a tare without a mass", ", stage: billet, heats: 2, tare: 200 g", "mass-missing"],
    ["half a heat", ", stage: forged, heats: 2.5", "not-a-count"],
    ["sizes of a billet", ", stage: billet, sizes: [{ at: heel, thickness: 5 }]", "sizes-too-early"],
    ["a place without a size", ", stage: forged, sizes: [{ at: heel }]", "size-missing"],
    ["a place that is none", ", stage: forged, sizes: [{ at: hel, thickness: 5 }]", "unknown-place"],
    ["hours of nothing", ", hours: 3", "task-missing"],
    ["a task that is none", ", task: forging, hours: 3", "unknown-word"],
    ["no hours", ", task: forge, hours: 0", "out-of-range"],
    ["a hardness beyond the scale", ", hardness: { HRC: 75 }", "out-of-range"],
    ["a hardness that says nothing", ", hardness: { after: quench }", "hardness-missing"],
  ];
  it.each(mistakes)("refuses %s", (_, rest, code) => {
    expect(problemsOf(withEntries(entry(rest))).map((problem) => problem.code)).toContain(code);
  });

  it.each(["2026-1-5", "28.11.2026", "2026-13-01", "2026-02-30", "yesterday", "20261128"])(
    "takes %s for no day",
    (day) => {
      const found = problemsOf(withEntries(`{ revision: 1, on: ${day}, note: a }`));
      expect(found.map(({ code }) => code)).toEqual([day === "20261128" ? "wrong-type" : "not-a-day"]);
    },
  );

  it("refuses a correction of what is corrected already", () => {
    const text = withEntries(
      "{ revision: 1, on: 2026-11-28, note: a }",
      "{ revision: 2, on: 2026-11-28, note: b, correctsRevision: 1 }",
      "{ revision: 3, on: 2026-11-28, note: c, correctsRevision: 1 }",
    );
    expect(inShort(problemsOf(text))).toEqual([
      "7:63 corrected-already | entries[3rd].correctsRevision is corrected by revision 2 already; correct that one",
    ]);
  });

  it("sends keys of the knife file back there", () => {
    expect(inShort(problemsOf(`${HEAD}tang: { form: full }\n`))).toEqual([
      "4:1 unknown-key | tang belongs in the knife file, not in this file",
    ]);
  });
});
