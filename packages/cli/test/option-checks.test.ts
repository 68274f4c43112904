import { describe, expect, it } from "vitest";
import { EXIT } from "../src/exit-code.js";
import { optionFailures } from "../src/option-checks.js";
import { answer, flat } from "./support/answer.js";
import { DEMO_FILES, DEMO_SHOP, demoWith } from "./support/demo.js";

const FILE = "harvest.knife.yaml";
const BROKEN = { [FILE]: demoWith(["at: [-116, 76]", "at: [-116, 96]"]), "shop.yaml": DEMO_SHOP };

async function answered(argv: readonly string[], files: Record<string, string>) {
  const { err, ...rest } = await answer(argv, { files });
  return { ...rest, err: flat(err) };
}

describe("a file with errors and options with errors", () => {
  it("are told in one go, the file first", async () => {
    const { code, err, written } = await answered(
      ["pattern", FILE, "--sheet", "sections", "--paper", "a44", "--at", "hel", "--offset", "x"],
      BROKEN,
    );
    expect(code).toBe(EXIT.file);
    expect(written).toEqual([]);
    const places = [
      "This hole of 6 mm lies wholly outside the steel.",
      '--paper: "a44" is not a paper known here; did you mean a4?',
      '--at "hel" is no place on a knife; did you mean heel?',
      '--offset: "x" is not a length',
    ].map((text) => err.indexOf(text));
    expect(places.every((place) => place >= 0)).toBe(true);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  it("are told to programs too, in one document", async () => {
    const { out } = await answered(["weigh", FILE, "--at", "hel", "--json"], BROKEN);
    expect(JSON.parse(out)).toMatchObject({
      schema: "scantling/error/1",
      code: "file-errors",
      problems: [{ code: "hole-outside-steel" }],
      also: [{ code: "unknown-place" }],
    });
  });

  it("are told of gate: masses and readings", async () => {
    const argv = ["gate", FILE, "--stage", "forged", "--mass", "7q", "--at", "heel="];
    const { err } = await answered(argv, BROKEN);
    expect(err).toContain('--mass "7q"');
    expect(err).toContain('--at "heel=" is not understood');
    expect(err).toContain("lies wholly outside the steel");
  });

  it("leave sound options alone", async () => {
    const argv = ["pattern", FILE, "--paper", "8.5x11", "--at", "heel,60 %", "--offset=-1mm"];
    const { err } = await answered(argv, BROKEN);
    expect(err).not.toContain("--");
  });
});

it("two options with errors are told in one go, each once", async () => {
  const argv = ["pattern", FILE, "--sheet", "sections", "--paper", "a44", "--at", "hel"];
  const { code, err } = await answered(argv, DEMO_FILES);
  expect(code).toBe(EXIT.usage);
  expect(err.split('--at "hel"')).toHaveLength(2);
  expect(err.split('--paper: "a44"')).toHaveLength(2);
});

it("a folder with the name of a command is not taken for it", async () => {
  const argv = ["pattern", FILE, "--out", "plan", "--paper", "a44", "--margin", "x"];
  const { err } = await answered(argv, DEMO_FILES);
  expect(err).toContain('--paper: "a44"');
  expect(err).toContain('--margin: "x" is not a length');
  const gate = ["gate", FILE, "--stage", "forged", "--mass", "7q", "--at", "heel=", "--out", "plan"];
  expect((await answered(gate, BROKEN)).err).toContain('--at "heel=" is not understood');
});

it("the papers are listed with fit where it is one, alone and beside another fault", async () => {
  const list = /write a4, .*, ansi-e, fit, or its sides/u;
  const argv = ["pattern", FILE, "--paper", "zzzzzz"];
  expect((await answered(argv, DEMO_FILES)).err).toMatch(list);
  expect((await answered(argv, BROKEN)).err).toMatch(list);
  const [failure] = optionFailures("calibrate", { paper: "zzzzzz" });
  expect(failure?.message).toMatch(/ansi-e, or its sides/u);
});

it("margin and overlap are held to their limits where nothing is joined, both told", async () => {
  for (const files of [DEMO_FILES, BROKEN]) {
    const argv = ["pattern", FILE, "--margin", "31mm", "--overlap", "5mm"];
    const { code, err, written } = await answered(argv, files);
    expect(code).toBe(files === BROKEN ? EXIT.file : EXIT.usage);
    expect(written).toEqual([]);
    expect(err).toContain("--margin 31mm: the margin of a tiled sheet is 0 to 30 mm");
    expect(err.split("--overlap 5mm: the overlap of a tiled sheet is 6 to 50 mm")).toHaveLength(2);
  }
  expect(optionFailures("pattern", { margin: "0mm", overlap: "6mm" })).toEqual([]);
  expect(optionFailures("pattern", { margin: "30mm", overlap: "50mm" })).toEqual([]);
});

it("calibrate tells its paper and both lengths in one go", async () => {
  const argv = ["calibrate", "--short", "6.98q", "--long", "", "--paper", "lettr"];
  const { code, err } = await answered(argv, {});
  expect(code).toBe(EXIT.usage);
  expect(err).toContain('--paper: "lettr" is not a paper known here; did you mean letter?');
  expect(err.split('--short "6.98q"')).toHaveLength(2);
  expect(err.split('--long ""')).toHaveLength(2);
});

it("what hangs on the units of a file is left until that is read: 8.5 x 11 is a paper in inches", () => {
  expect(optionFailures("pattern", { paper: "8.5x11" })).toEqual([]);
  expect(optionFailures("pattern", { paper: "fit" })).toEqual([]);
  expect(optionFailures("jobsheet", { paper: "1x1mm" }).map(({ code }) => code)).toEqual(["unknown-paper"]);
  expect(optionFailures("pattern", {})).toEqual([]);
});

it("places behind the heel are told with a minus sign, not a hyphen", async () => {
  const argv = ["weigh", FILE, "--at", "900 mm"];
  const { err } = await answered(argv, DEMO_FILES);
  expect(err).toMatch(/which reaches from −[\d.]+ mm to [\d.]+ mm/u);
});
