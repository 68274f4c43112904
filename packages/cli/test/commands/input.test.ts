import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { run } from "../../src/run.js";
import { answer as answerPlain, flat } from "../support/answer.js";
import { DEMO_FILES, demoWith, placeOf } from "../support/demo.js";
import { type FakeIoOptions, fakeIo } from "../support/fake-io.js";

const COMMANDS = ["plan", "weigh", "stock", "pattern", "check"] as const;

async function answer(argv: readonly string[], options: FakeIoOptions) {
  const { err, ...rest } = await answerPlain(argv, options);
  return { ...rest, err: flat(err) };
}

describe("a file that cannot be read: exit 3, its path, what to do, nothing written", () => {
  for (const command of COMMANDS) {
    it(`${command} of a file that is not there proposes the nearest name`, async () => {
      const { code, out, err, written } = await answer([command, "harvst.knife.yaml"], { files: DEMO_FILES });
      expect(code).toBe(EXIT.file);
      expect(out).toBe("");
      expect(err).toContain("cannot read harvst.knife.yaml: no such file or folder (ENOENT)");
      expect(err).toContain("Did you mean harvest.knife.yaml?");
      expect(written).toEqual([]);
    });
  }

  it("lists the knife files where no name is near", async () => {
    const { err } = await answer(["weigh", "other.yaml"], { files: DEMO_FILES });
    expect(err).toContain("Check the name: harvest.knife.yaml");
  });

  it("says that a folder is a folder and what is in it", async () => {
    const { code, err } = await answer(["weigh", "orders"], { files: { "orders/a.knife.yaml": "" } });
    expect(code).toBe(EXIT.file);
    expect(err).toContain("cannot read orders: it is a folder (EISDIR)");
    expect(err).toContain("orders/a.knife.yaml");
  });

  it("says so where the folder is missing too", async () => {
    const { code, err } = await answer(["weigh", "nowhere/a.knife.yaml"], {});
    expect(code).toBe(EXIT.file);
    expect(err).toContain("There is no folder nowhere to read from.");
  });

  it("says so where reading is not permitted", async () => {
    const io = fakeIo({ files: DEMO_FILES });
    io.disk.faults.push({ step: "readFile", code: "EACCES" });
    expect(await run(["weigh", "harvest.knife.yaml"], io)).toBe(EXIT.file);
    expect(io.err()).toContain("permission denied");
  });

  it("names the shop file that --shop names", async () => {
    const { code, err } = await answer(["weigh", "harvest.knife.yaml", "--shop", "shpo.yaml"], {
      files: DEMO_FILES,
    });
    expect(code).toBe(EXIT.file);
    expect(err).toContain("cannot read shpo.yaml");
    expect(err).toContain("Did you mean shop.yaml?");
  });

  it("proposes no knife file where a shop file is missing", async () => {
    const files = { ...DEMO_FILES, "a.knife.yaml": "", "b.knife.yaml": "", "prices.yaml": "" };
    const { err } = await answer(["weigh", "harvest.knife.yaml", "--shop", "none.yaml"], { files });
    expect(err).toContain("Check the name: prices.yaml, shop.yaml");
    expect(err).not.toContain("a.knife.yaml");
    const alone = await answer(["weigh", "a.knife.yaml", "--shop", "none.yaml"], {
      files: { "a.knife.yaml": DEMO_FILES["harvest.knife.yaml"] },
    });
    expect(alone.err).toContain("there is no shop file (NAME.yaml) in that folder");
  });

  it("proposes no name that is near by its ending alone", async () => {
    const { err } = await answer(["weigh", "axe.knife.yaml"], { files: { "bread.knife.yaml": "" } });
    expect(err).not.toContain("Did you mean");
    expect(err).toContain("Check the name: bread.knife.yaml");
  });

  it("refuses two files from one standard input", async () => {
    const { code, err } = await answer(["weigh", "-", "--shop", "-"], { stdin: "" });
    expect(code).toBe(EXIT.usage);
    expect(err).toContain("both");
  });
});

describe("a file with errors: exit 3, line and column, all at once, nothing written", () => {
  const mistakes: readonly (readonly [string, readonly (readonly [string, string])[], readonly string[]])[] =
    [
      [
        "unknown keys",
        [
          ["heelHeight:", "heelHigth:"],
          ["ricasso:", "ricaso:"],
        ],
        ["did you mean heelHeight?", "did you mean ricasso?", "2 errors"],
      ],
      ["a wrong unit", [["height: 48", "height: 48 g"]], ["48 g", "is a mass"]],
      ["no number", [["edgeLength: 225", "edgeLength: .nan"]], ["NaN"]],
      ["a negative size", [["edgeLength: 225", "edgeLength: -225"]], ["must be more than 0"]],
      ["a size of nothing", [["heelHeight: 92", "heelHeight: 0"]], ["must be more than 0"]],
      ["a sharpening angle of 90", [["edgeAngle: 16 deg", "edgeAngle: 90 deg"]], ["less than 90"]],
      ["a sharpening angle of 0", [["edgeAngle: 16 deg", "edgeAngle: 0 deg"]], ["more than 0"]],
    ];
  for (const [name, changes, says] of mistakes) {
    it(name, async () => {
      const text = demoWith(...changes);
      const { code, out, err, written } = await answer(["plan", "k.knife.yaml"], {
        files: { "k.knife.yaml": text },
      });
      expect(code).toBe(EXIT.file);
      expect(out).toBe("");
      for (const part of says) expect(err).toContain(part);
      for (const [, changed] of changes) {
        const [line = ""] = placeOf(text, changed).split(":");
        expect(err).toContain(`k.knife.yaml:${line}:`);
      }
      expect(written).toEqual([]);
    });
  }

  const wrongFiles: readonly (readonly [string, string | Uint8Array, RegExp])[] = [
    ["nothing", "", /empty/],
    ["50 MB", new Uint8Array(50 * 1024 * 1024).fill(0x20), /the file is 50(\.\d)? MB/],
    ["no text", Uint8Array.of(0x7f, 0x45, 0x4c, 0x46, 0, 1, 2), /not text/],
    ["an alias bomb", `a: &a [x, x]\nb: &b [*a, *a]\nc: [*b, *b]\n`, /k\.knife\.yaml:1:/],
  ];
  for (const [name, content, says] of wrongFiles) {
    it(name, async () => {
      const { code, out, err, written } = await answer(["plan", "k.knife.yaml"], {
        files: { "k.knife.yaml": content },
      });
      expect(code).toBe(EXIT.file);
      expect(out).toBe("");
      expect(err).toMatch(says);
      expect(written).toEqual([]);
    });
  }

  it("gives the problems as JSON under --json", async () => {
    const text = demoWith(["heelHeight", "heelHigth"]);
    const [line, column] = placeOf(text, "heelHigth").split(":").map(Number);
    const files = { "k.knife.yaml": text };
    const { code, out } = await answer(["check", "k.knife.yaml", "--json"], { files });
    expect(code).toBe(EXIT.file);
    expect(JSON.parse(out)).toMatchObject({
      schema: "scantling/error/1",
      exitCode: 3,
      code: "file-errors",
      file: "k.knife.yaml",
      problems: [
        { code: "unknown-key", file: "k.knife.yaml", line, column, path: "blade.outline.heelHigth" },
      ],
    });
  });

  it("says which checks were not reached, or that all were made", async () => {
    const said = async (...changes: (readonly [string, string])[]): Promise<string> =>
      (await answer(["check", "k.knife.yaml"], { files: { "k.knife.yaml": demoWith(...changes) } })).err;
    expect(await said(["height: 48", "height: 48 g"])).toContain(
      "Mend it and try again. More may come then: later checks (outline, stations, holes) were not reached.",
    );
    // An outline that cannot be drawn hides what lies on it.
    const early = await said(["edgeLength: 225", "edgeLength: 20"]);
    expect(early).toContain("More may come then: later checks (holes, handle and bevels on the outline)");
    const notation = await said(["order:", "order: ]"]);
    expect(notation).toContain("More may come then: later checks (keys and values)");
    expect(await said(["ricasso:", "ricaso:"], ["edgeAngle: 16 deg", "edgeAngle: 18 mm"])).toContain(
      "Mend them and try again; all that could be found are listed.",
    );
  });

  it("hides nothing behind a material that is not known", async () => {
    const text = demoWith(['steel: "1084"', 'steel: "1048"'], ["at: [-26, 76]", "at: [-26, 20]"]);
    const { err } = await answer(["check", "k.knife.yaml"], { files: { "k.knife.yaml": text } });
    expect(err).toContain("1048 is not in the table of materials");
    expect(err).toContain("outside the steel");
  });

  it("tells errors of the shop file with its own name", async () => {
    const files = { ...DEMO_FILES, "shop.yaml": "scantling: 1\nunits: mm\ncutSteep: 5\n" };
    const { code, err } = await answer(["stock", "harvest.knife.yaml"], { files });
    expect(code).toBe(EXIT.file);
    expect(err).toMatch(/shop\.yaml:3:1 .*did you mean cutStep\?/);
  });

  it("shows no character that could steer a terminal", async () => {
    const files = { "k.knife.yaml": 'scantling: 1\n"\\u001b[31mred": 1\n' };
    const { err } = await answer(["check", "k.knife.yaml"], { files });
    expect(err).not.toContain("\u001b");
  });
});
