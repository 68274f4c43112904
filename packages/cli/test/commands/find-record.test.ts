import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { readRecordFile } from "../../src/file/index.js";
import { answer, flat } from "../support/answer.js";
import { DEMO_FILES } from "../support/demo.js";
import { fakeIo } from "../support/fake-io.js";

const KNIFE = "harvest.knife.yaml";
const HOURS = ["record", KNIFE, "--task", "forge", "--hours", "2"];
const recordOf = (knife: string): string =>
  `scantling: 1\nunits: mm\nknife: ${knife}\nentries:\n  - { revision: 1, on: 2026-03-02, note: begun }\n`;

describe("the record beside a knife file", () => {
  it("of another knife is not added to", async () => {
    const text = recordOf("carver.knife.yaml");
    const files = { ...DEMO_FILES, "harvest.record.yaml": text };
    for (const words of [HOURS, ["record", KNIFE], ["reorder", KNIFE]]) {
      const { code, err, io } = await answer(words, { files });
      expect(code).toBe(EXIT.file);
      expect(flat(err)).toContain(
        "harvest.record.yaml is the record of carver.knife.yaml, not of harvest.knife.yaml",
      );
      expect(io.disk.text("/shop/harvest.record.yaml")).toBe(text);
    }
  });

  it("of the same knife under another path is added to", async () => {
    const files = { ...DEMO_FILES, "harvest.record.yaml": recordOf("./harvest.knife.yaml") };
    expect((await answer(HOURS, { files })).code).toBe(EXIT.done);
    const io = fakeIo({ files: { ...DEMO_FILES, "carver.record.yaml": recordOf(KNIFE) } });
    io.disk.links.set("/shop/carver.knife.yaml", `/shop/${KNIFE}`);
    const linked = await answer(["record", "carver.knife.yaml", "--task", "forge", "--hours", "2"], io);
    expect(linked.code, linked.err).toBe(EXIT.done);
  });

  it("is one: of two none is guessed, and named it is taken", async () => {
    const files = {
      ...DEMO_FILES,
      "harvest.record.yaml": recordOf(KNIFE),
      "harvest.record.yml": recordOf(KNIFE),
    };
    const { code, err, io } = await answer(HOURS, { files });
    expect(code).toBe(EXIT.file);
    expect(flat(err)).toContain("harvest.record.yaml and harvest.record.yml are both there");
    const [, , ...entry] = HOURS;
    expect((await answer(["record", "harvest.record.yml", ...entry], io)).code).toBe(EXIT.done);
    expect(readRecordFile(io.disk.text("/shop/harvest.record.yml"), "").entries).toHaveLength(2);
  });

  it("under two names that are one file is that file", async () => {
    const io = fakeIo({ files: { ...DEMO_FILES, "harvest.record.yaml": recordOf(KNIFE) } });
    io.disk.links.set("/shop/harvest.record.yml", "/shop/harvest.record.yaml");
    expect((await answer(HOURS, io)).code).toBe(EXIT.done);
  });

  it("that is a link to nothing is told so, and not to be overwritten", async () => {
    const io = fakeIo({ files: DEMO_FILES });
    io.disk.links.set("/shop/harvest.record.yaml", "/kept/harvest.record.yaml");
    const { code, err } = await answer(HOURS, io);
    expect(code).toBe(EXIT.file);
    expect(flat(err)).toContain("harvest.record.yaml is a link, and what it leads to is not there");
    expect(err).not.toContain("--force");
  });

  it("cannot be begun for a knife file whose name is too long for it, and that is said", async () => {
    const name = `${"n".repeat(226)}.knife.yaml`;
    const files = { "shop.yaml": DEMO_FILES["shop.yaml"], [name]: DEMO_FILES[KNIFE] };
    const { code, err, io } = await answer(["record", name, "--task", "forge", "--hours", "2"], { files });
    expect(code).toBe(EXIT.usage);
    expect(flat(err)).toContain(
      "the name of the knife file is too long; 200 characters are the most; nothing was stored",
    );
    expect(io.disk.paths()).toHaveLength(2);
  });

  it("in JSON is added to as it is", async () => {
    const text =
      '{\n  "scantling": 1,\n  "units": "mm",\n  "knife": "harvest.knife.yaml",\n  "entries": []\n}\n';
    const { code, io } = await answer(HOURS, { files: { ...DEMO_FILES, "harvest.record.json": text } });
    expect(code).toBe(EXIT.done);
    expect((await answer(HOURS, io)).code).toBe(EXIT.done);
    const { entries } = JSON.parse(io.disk.text("/shop/harvest.record.json"));
    expect(entries.map(({ revision }: { revision: number }) => revision)).toEqual([1, 2]);
  });
});
