import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { readRecordFile } from "../../src/file/index.js";
import { answer, flat } from "../support/answer.js";
import { DEMO_FILES, DEMO_SHOP } from "../support/demo.js";
import { type FakeIo, fakeIo } from "../support/fake-io.js";

const RECORD = "/shop/harvest.record.yaml";
const KNIFE = "harvest.knife.yaml";
const HOURS = ["record", KNIFE, "--task", "forge", "--hours", "2"];
const entriesIn = (io: FakeIo): number =>
  io.disk.files.has(RECORD) ? readRecordFile(io.disk.text(RECORD), "").entries.length : 0;

const recordOf = (loss: number): string => `scantling: 1
units: mm
knife: none.knife.yaml
entries:
  - { revision: 1, on: 2026-03-02, stage: billet, mass: 1100 g, tare: 200 g }
  - { revision: 2, on: 2026-03-03, stage: forged, mass: ${Math.round(900 * (1 - loss) ** 8)} g, heats: 8 }
`;
const LEARN_FILES = {
  "shop.yaml": DEMO_SHOP,
  ...Object.fromEntries(
    [0.0175, 0.019, 0.0184, 0.017].map((loss, i) => [`orders/job-${i}.record.yaml`, recordOf(loss)]),
  ),
};

/** The one document of standard output; more than one cannot be parsed. */
const only = (out: string) => JSON.parse(out);

describe("record with a copy of its report", () => {
  it.each([["txt"], ["json"]])("refuses a taken name before it stores: %s", async (kind) => {
    const words = [...HOURS, "--out", "rep", ...(kind === "json" ? ["--json"] : [])];
    const first = await answer(words, { files: DEMO_FILES });
    expect(first.code).toBe(EXIT.done);
    expect(first.written).toContain(`/shop/rep/harvest.recorded.${kind}`);
    const second = await answer(words, first.io);
    expect(second.code).toBe(EXIT.write);
    expect(flat(second.err)).toContain("The entry is not stored either.");
    expect(entriesIn(first.io)).toBe(1);
    if (kind === "json") expect(only(second.out)).toMatchObject({ code: "would-overwrite" });
    // What it says to do enters it once.
    expect((await answer([...words, "--force"], first.io)).code).toBe(EXIT.done);
    expect(entriesIn(first.io)).toBe(2);
  });

  it("refuses a folder that cannot be written into before it stores", async () => {
    const io = fakeIo({ files: { ...DEMO_FILES, "rep/x": "" } });
    io.disk.modes.set("/shop/rep", 0o555);
    const asked = await answer([...HOURS, "--out", "rep/new"], io);
    expect(asked.code).toBe(EXIT.write);
    expect(flat(asked.err)).toContain("permission denied");
    expect(entriesIn(io)).toBe(0);
  });

  it.each([["text"], ["json"]])(
    "says that the entry is stored where only the copy fails: %s",
    async (kind) => {
      const io = fakeIo({ files: DEMO_FILES });
      io.disk.faults.push({ step: "createFile", code: "ENOSPC", path: ".recorded." });
      const words = [...HOURS, "--out", "rep", ...(kind === "json" ? ["--json"] : [])];
      const { code, out, err } = await answer(words, io);
      expect(code).toBe(EXIT.write);
      expect(entriesIn(io)).toBe(1);
      expect(flat(err)).toContain("the entry IS stored, as revision 1 in harvest.record.yaml; only the copy");
      expect(err).toContain("Do not enter it again.");
      expect(err).not.toContain("nothing was written");
      if (kind === "json") expect(only(out).entered.stored).toBe(true);
      else expect(out).toContain("STORED: revision 1");
    },
  );

  it("says so where standard output cannot be written", async () => {
    const io = fakeIo({ files: DEMO_FILES, stdoutFails: "ENOSPC" });
    const { code, err } = await answer(HOURS, io);
    expect(code).toBe(EXIT.write);
    expect(entriesIn(io)).toBe(1);
    expect(flat(err)).toContain("the entry IS stored, as revision 1 in harvest.record.yaml");
    expect(err).toContain("cannot write standard output");
  });

  it("does not take --force for a word on what is doubted", async () => {
    const doubted = ["record", KNIFE, "--task", "forge", "--hours", "35", "--force"];
    const { code, out, io } = await answer(doubted, { files: DEMO_FILES });
    expect(code).toBe(EXIT.notMet);
    expect(out).toContain("enter it again with --sure");
    expect(entriesIn(io)).toBe(0);
    expect((await answer([...doubted, "--sure"], io)).code).toBe(EXIT.done);
  });

  it("tells what is doubted though the copy cannot be written", async () => {
    const files = { ...DEMO_FILES, "rep/harvest.recorded.txt": "mine", "rep/harvest.recorded.json": "mine" };
    const words = ["record", KNIFE, "--task", "forge", "--hours", "35", "--out", "rep"];
    const { code, out, err, io } = await answer(words, { files });
    expect(code).toBe(EXIT.notMet);
    expect(out).toContain("NOT STORED: this cannot well be.");
    expect(err).toContain("rep/harvest.recorded.txt exists");
    const json = await answer([...words, "--json"], io);
    expect(only(json.out).entered.stored).toBe(false);
    expect(io.disk.text("/shop/rep/harvest.recorded.txt")).toBe("mine");
  });

  it("gives each knife of a folder a copy of its own", async () => {
    const files = { ...DEMO_FILES, "other.knife.yaml": DEMO_FILES[KNIFE] };
    const { io } = await answer([...HOURS, "--out", "rep"], { files });
    const other = ["record", "other.knife.yaml", "--task", "forge", "--hours", "2", "--out", "rep"];
    expect((await answer(other, io)).code).toBe(EXIT.done);
  });
});

describe("learn with a copy of its report", () => {
  it("refuses a taken name before it changes the shop file", async () => {
    const files = { ...LEARN_FILES, "rep/learn.txt": "mine" };
    const { code, err, io } = await answer(["learn", "--write", "--out", "rep"], { files });
    expect(code).toBe(EXIT.write);
    expect(err).toContain("rep/learn.txt exists; nothing was written");
    expect(io.disk.text("/shop/shop.yaml")).toBe(DEMO_SHOP);
  });

  it("says that the shop file is changed where only the copy fails", async () => {
    const io = fakeIo({ files: LEARN_FILES });
    io.disk.faults.push({ step: "createFile", code: "ENOSPC", path: "learn." });
    const { code, out, err } = await answer(["learn", "--write", "--json", "--out", "rep"], io);
    expect(code).toBe(EXIT.write);
    expect(io.disk.text("/shop/shop.yaml")).not.toBe(DEMO_SHOP);
    expect(flat(err)).toContain("shop.yaml IS changed; only the copy of the report is missing");
    expect(err).not.toContain("nothing was written");
    expect(only(out).written).toBe(true);
  });

  it("counts a record once, by whatever links it is come to", async () => {
    const plain = await answer(["learn", "--json"], { files: LEARN_FILES });
    const io = fakeIo({ files: LEARN_FILES });
    io.disk.links.set("/shop/orders/again.record.yaml", "/shop/orders/job-1.record.yaml");
    io.disk.links.set("/shop/a.record.yaml", "/shop/orders/job-1.record.yaml");
    const linked = await answer(["learn", "--json"], io);
    expect(only(linked.out).records).toEqual(only(plain.out).records);
    expect(only(linked.out).figures).toEqual(only(plain.out).figures);
    const named = [
      "learn",
      "--json",
      "a.record.yaml",
      "orders/job-1.record.yaml",
      "orders/again.record.yaml",
    ];
    expect(only((await answer(named, io)).out).records).toEqual(["orders/job-1.record.yaml"]);
  });

  it("answers with one document where it refuses", async () => {
    const words = ["learn", "--write", "--json", "--shop", "-"];
    const { "shop.yaml": stdin, ...files } = LEARN_FILES;
    const { code, out, err } = await answer(words, { files, stdin });
    expect(code).toBe(EXIT.write);
    expect(only(out)).toMatchObject({ schema: "scantling/learn/1", written: false, byHand: true });
    expect(err).toContain("cannot be changed here");
  });
});

describe("a shop file that a command changes", () => {
  const MARK = "\uFEFF";
  const LENGTHS = ["calibrate", "--short", "179.6mm", "--long", "269.3mm", "--force"];
  const commands: readonly (readonly [string, readonly string[]])[] = [
    ["learn --write", ["learn", "--write"]],
    ["calibrate --force", LENGTHS],
  ];

  it.each(commands)("keeps its link, its rights and the mark before its text: %s", async (_, words) => {
    const { "shop.yaml": _shop, ...files } = LEARN_FILES;
    const io = fakeIo({ files: { ...files, "/kept/shop.yaml": MARK + DEMO_SHOP } });
    io.disk.links.set("/shop/shop.yaml", "/kept/shop.yaml");
    io.disk.modes.set("/kept/shop.yaml", 0o600);
    expect((await answer(words, io)).code).toBe(EXIT.done);
    const bytes = io.disk.files.get("/kept/shop.yaml") ?? new Uint8Array();
    expect([...bytes.slice(0, 3)]).toEqual([0xef, 0xbb, 0xbf]);
    expect(io.disk.text("/kept/shop.yaml")).not.toBe(DEMO_SHOP);
    expect(io.disk.modes.get("/kept/shop.yaml")).toBe(0o600);
    expect(io.disk.links.has("/shop/shop.yaml")).toBe(true);
  });

  it.each(commands)("is locked meanwhile, and its folder synced: %s", async (_, words) => {
    const io = fakeIo({ files: LEARN_FILES, running: [7] });
    io.disk.files.set("/shop/.shop.yaml.lock.bench.7.7-0123abcd", new Uint8Array());
    const held = await answer(words, io);
    expect(held.code).toBe(EXIT.write);
    expect(flat(held.err)).toContain("another command holds shop.yaml: process 7");
    expect(io.disk.text("/shop/shop.yaml")).toBe(DEMO_SHOP);
    io.disk.files.delete("/shop/.shop.yaml.lock.bench.7.7-0123abcd");
    io.disk.faults.push({ step: "syncFolder", code: "EIO" });
    expect(flat((await answer(words, io)).err)).toContain("did not say that it is there for good");
  });

  it.each(commands)(
    "is left alone where it is write-protected, and one document says so: %s",
    async (_, words) => {
      const io = fakeIo({ files: LEARN_FILES });
      io.disk.modes.set("/shop/shop.yaml", 0o444);
      const { code, out } = await answer([...words, "--json"], io);
      expect(code).toBe(EXIT.write);
      expect(only(out)).toMatchObject({ code: "write-protected" });
      expect(io.disk.text("/shop/shop.yaml")).toBe(DEMO_SHOP);
    },
  );

  it("is said to be changed where standard output cannot be written", async () => {
    const io = fakeIo({ files: { "shop.yaml": DEMO_SHOP }, stdoutFails: "ENOSPC" });
    const { code, err } = await answer(LENGTHS, io);
    expect(code).toBe(EXIT.write);
    expect(flat(err)).toContain("the correction IS stored in shop.yaml");
  });
});
