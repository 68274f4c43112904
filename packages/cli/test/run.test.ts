import { describe, expect, it } from "vitest";
import { EXIT } from "../src/exit-code.js";
import { run } from "../src/run.js";
import { version } from "../src/version.js";
import { fakeIo } from "./support/fake-io.js";

async function answer(...argv: readonly string[]) {
  const io = fakeIo();
  return { code: await run(argv, io), out: io.out(), err: io.err() };
}

describe("help and version", () => {
  it("prints help on standard output and answers 0", async () => {
    const { code, out, err } = await answer("--help");
    expect(code).toBe(EXIT.done);
    expect(err).toBe("");
    for (const command of ["plan", "weigh", "stock", "pattern", "check"])
      expect(out).toContain(`  ${command} `);
  });

  for (const command of ["plan", "weigh", "stock", "pattern", "check"]) {
    it(`prints help with examples for ${command}, no wider than 80 columns`, async () => {
      const { code, out } = await answer(command, "--help");
      expect(code).toBe(EXIT.done);
      expect(out).toContain("Examples:");
      for (const option of ["--json", "--out", "--units", "--shop", "--force"]) expect(out).toContain(option);
      for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(80);
      expect((await answer("help", command)).out).toBe(out);
    });
  }

  it("prints the version of the package", async () => {
    expect(version()).toMatch(/^\d+\.\d+\.\d+/);
    expect(await answer("--version")).toEqual({ code: EXIT.done, out: `${version()}\n`, err: "" });
  });
});

describe("wrong use: exit 2, talk on standard error, what to do next", () => {
  const cases: readonly (readonly [string, readonly string[], readonly RegExp[]])[] = [
    ["no command", [], [/Usage: scantling/]],
    ["a mistyped command", ["weihg", "a.knife.yaml"], [/unknown command 'weihg'/, /Did you mean weigh\?/]],
    [
      "a mistyped option",
      ["weigh", "a.knife.yaml", "--jsn"],
      [/--jsn/, /Did you mean --json\?/, /scantling weigh --help/],
    ],
    [
      "no file",
      ["plan"],
      [
        /plan needs FILE: the knife file/,
        /For example: scantling plan harvest\.knife\.yaml --out out\. More: scantling plan --help/,
      ],
    ],
    [
      "an option that has to be there",
      ["gate", "a", "--mass", "1"],
      [/gate needs --stage STAGE: what is on the scale: cut, billet/, /For example: scantling gate/],
    ],
    ["two files", ["weigh", "a", "b"], [/too many arguments/, /quotes around a name with blanks/]],
    [
      "a size without its quotes",
      ["record", "a", "--stage", "finished", "--mass", "11.2", "oz"],
      [/Put quotes around a size with blanks in it, as "11\.2 oz", or leave the blanks out: 11\.2oz/],
    ],
    ["half a fraction", ["record", "a", "--size", "heel=3", "1/2"], [/quotes around a size with blanks/]],
    [
      "a file after a number",
      ["record", "a", "--heats", "9", "b.yaml"],
      [/quotes around a name with blanks/],
    ],
    ["unknown units", ["weigh", "a", "--units", "cm"], [/cm/, /Allowed choices are in, mm/]],
    [
      "a format that is none",
      ["pattern", "a", "--format", "svgg"],
      [/Did you mean svg\?/, /The formats are: svg, pdf, dxf/],
    ],
    [
      "a sheet that is none",
      ["pattern", "a", "--sheet", "gages"],
      [/Did you mean gauges\?/, /The sheets are:/],
    ],
    ["a state that is none", ["pattern", "a", "--state", "forge"], [/Did you mean forged\?/]],
    ["an option without its value", ["weigh", "a", "--shop"], [/--shop needs FILE behind it: the shop file/]],
    [
      "help for no command",
      ["help", "weihg"],
      [/unknown command 'weihg' \(Did you mean weigh\?\)/, /See: scantling --help/],
    ],
  ];
  for (const [name, argv, says] of cases) {
    it(name, async () => {
      const { code, out, err } = await answer(...argv);
      expect(code).toBe(EXIT.usage);
      expect(out).toBe("");
      for (const pattern of says) expect(err.replace(/\s+/g, " ")).toMatch(pattern);
    });
  }

  it("answers with a JSON document on standard output under --json", async () => {
    const { code, out, err } = await answer("weigh", "a.knife.yaml", "--json", "--frce");
    expect(code).toBe(EXIT.usage);
    expect(JSON.parse(out)).toMatchObject({
      schema: "scantling/error/1",
      exitCode: 2,
      code: "unknown-option",
      problems: [],
    });
    expect(err).toContain("--force");
  });
});

describe("our own bug: exit 1", () => {
  const broken = (env: Readonly<Record<string, string>>) => {
    const io = fakeIo({ files: { "a.knife.yaml": "" }, env });
    io.disk.readFile = async () => {
      throw new TypeError("cannot read properties of undefined");
    };
    return io;
  };

  it("says that it is ours and how to report it, without a stack", async () => {
    const io = broken({});
    expect(await run(["weigh", "a.knife.yaml"], io)).toBe(EXIT.bug);
    expect(io.err()).toContain("this is our bug");
    expect(io.err()).toContain("issue tracker");
    expect(io.err()).not.toMatch(/\n\s+at /);
  });

  it("shows the stack under SCANTLING_DEBUG", async () => {
    const io = broken({ SCANTLING_DEBUG: "1" });
    expect(await run(["weigh", "a.knife.yaml"], io)).toBe(EXIT.bug);
    expect(io.err()).toMatch(/\n\s+at /);
  });
});
