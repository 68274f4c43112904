import { describe, expect, it } from "vitest";
import { EXIT } from "../src/exit-code.js";
import { type Answer, answer } from "./support/answer.js";
import { DEMO_KNIFE } from "./support/demo.js";
import { EXAMPLES, FACTS, worldOf } from "./support/examples.js";
import { fakeIo } from "./support/fake-io.js";

// A program that calls this one reads standard output: with --json it is one document there, whatever happens.
const COMMANDS = FACTS.commands.filter(({ name }) => name !== "help");

/** A call of each command that goes well: the first of its examples. */
const CALLS = COMMANDS.map(({ name, arguments: all, options }) => ({
  name,
  words: [...(EXAMPLES.find(({ command }) => command === name)?.words ?? []), "--json"],
  takesKnife: all.some(({ about }) => /^the knife file|^knife files/u.test(about)),
  takesShop: options.some(({ long }) => long === "--shop"),
}));
const WITH_KNIFE = CALLS.filter(({ takesKnife }) => takesKnife);

interface Document {
  readonly schema: string;
  readonly exitCode?: number;
  readonly code?: string;
  readonly todo?: string;
  readonly problems?: readonly object[];
}

/** The one document on standard output, whole. */
function documentOf({ out }: Answer): Document {
  // More than one document, or a word beside it, cannot be parsed.
  const document = JSON.parse(out) as Document;
  expect(out.startsWith("{") && out.endsWith("}\n")).toBe(true);
  expect(document.schema).toMatch(/^scantling\/[a-z-]+\/\d+$/u);
  return document;
}

function errorOf(given: Answer): Document {
  const document = documentOf(given);
  expect(document.schema).toBe("scantling/error/1");
  expect(document.exitCode).toBe(given.code);
  expect(document).toMatchObject({ code: expect.stringMatching(/^[a-z-]+$/u), message: expect.any(String) });
  expect(document.todo).toMatch(/\w/u);
  // People see the same.
  expect(given.err).toContain("scantling: ");
  expect(given.written).toEqual([]);
  return document;
}

it("every command takes --json", () => {
  expect(COMMANDS.length).toBeGreaterThan(8);
  for (const { name, options } of COMMANDS)
    expect(
      options.map(({ long }) => long),
      name,
    ).toContain("--json");
});

describe("with --json standard output is one document with a schema", () => {
  it.each(EXAMPLES)("when all goes well: $line", async ({ words }) => {
    const given = await answer([...words, "--json"], worldOf(words));
    expect([EXIT.done, EXIT.notMet], given.err).toContain(given.code);
    expect(documentOf(given).schema).not.toBe("scantling/error/1");
  });

  it.each(CALLS)("wrong use: $name", async ({ words }) => {
    const unknown = await answer([...words, "--no-such-option"], worldOf(words));
    expect(unknown.code).toBe(EXIT.usage);
    expect(errorOf(unknown)).toMatchObject({ code: "unknown-option", problems: [] });
    const many = await answer([...words, ...Array.from({ length: 9 }, () => "one-more")], worldOf(words));
    // Of several files one is missing, of others there are too many.
    expect([EXIT.usage, EXIT.file]).toContain(many.code);
    errorOf(many);
  });

  it.each(WITH_KNIFE)("a file with errors: $name", async ({ words }) => {
    const broken = DEMO_KNIFE.replace("heelHeight", "heelHight").replace(
      "edgeAngle: 16 deg",
      "edgeAngle: 95 deg",
    );
    const given = await answer(words, worldOf(words, broken));
    expect(given.code).toBe(EXIT.file);
    const { problems = [] } = errorOf(given);
    expect(problems).toHaveLength(2);
    for (const problem of problems)
      expect(problem).toMatchObject({
        code: expect.any(String),
        line: expect.any(Number),
        column: expect.any(Number),
      });
  });

  it.each(WITH_KNIFE)("a file that is not there, is empty, or is no text: $name", async ({ words }) => {
    const missing = await answer(words, {});
    expect(missing.code).toBe(EXIT.file);
    expect(errorOf(missing).code).toBe(words.includes("-") ? "file-errors" : "cannot-read");
    for (const text of ["", "\u0000"]) {
      const given = await answer(words, worldOf(words, text));
      expect(given.code).toBe(EXIT.file);
      expect(errorOf(given).code).toBe("file-errors");
    }
  });

  it.each(CALLS.filter(({ takesShop }) => takesShop))("a shop file with errors: $name", async ({ words }) => {
    const given = await answer([...words, "--shop", "/shop.yaml"], worldOf(words, DEMO_KNIFE, "unitz: mm"));
    expect(given.code).toBe(EXIT.file);
    errorOf(given);
  });

  it.each(CALLS)("an output folder that cannot be written: $name", async ({ words }) => {
    const io = fakeIo(worldOf(words));
    io.disk.faults.push({ step: "makeFolder", code: "EACCES" }, { step: "createFile", code: "EACCES" });
    const given = await answer([...words.filter((word) => word !== "-"), "--out", "locked", "--force"], io);
    expect([EXIT.write, EXIT.usage, EXIT.done]).toContain(given.code);
    documentOf(given);
  });

  it.each(CALLS)("our own bug: $name", async ({ words }) => {
    const io = fakeIo(worldOf(words));
    const bug = async (): Promise<never> => {
      throw new TypeError("undefined is not a function");
    };
    Object.assign(io.disk, { readFile: bug, entry: bug, createFile: bug });
    const given = await answer([...words, "--out", "x"], io);
    // A disk that cannot even be asked is a failure to write.
    expect([EXIT.bug, EXIT.write]).toContain(given.code);
    errorOf(given);
  });

  it("no command, and one that is none", async () => {
    expect(errorOf(await answer(["--json"])).code).toBe("unknown-option");
    expect(errorOf(await answer(["weihg", "a.knife.yaml", "--json"])).code).toBe("unknown-command");
  });
});
