import { paperNamed } from "@scantling/render";
import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { readPaper } from "../../src/file/index.js";
import { factsOf } from "../../src/manual/facts.js";
import { SHELLS } from "../../src/options.js";
import { PAPERS } from "../../src/program/shared-options.js";
import { makeProgram } from "../../src/program.js";
import { answer, flat } from "../support/answer.js";
import { fakeIo } from "../support/fake-io.js";

const facts = factsOf(makeProgram(fakeIo(), () => undefined));

describe.each(SHELLS)("completion %s", (shell) => {
  it("knows every command and every long option that help knows", async () => {
    const { code, out, err } = await answer(["completion", shell]);
    expect(code).toBe(EXIT.done);
    expect(err).toBe("");
    for (const command of facts.commands) {
      expect(out).toContain(command.name);
      for (const { long } of command.options)
        expect(out).toContain(shell === "fish" ? `-l ${long.slice(2)} ` : long);
    }
  });

  it("goes into a folder under the name that the shell looks for", async () => {
    const name = { bash: "scantling", zsh: "_scantling", fish: "scantling.fish" }[shell];
    const { out, err, io } = await answer(["completion", shell, "--out", "words"]);
    expect(out).toBe("");
    expect(err).toBe(`Wrote words/${name}\n`);
    expect(io.disk.text(`/shop/words/${name}`)).toBe((await answer(["completion", shell])).out);
    expect((await answer(["completion", shell, "--out", "words"], io)).code).toBe(EXIT.write);
    expect((await answer(["completion", shell, "--out", "words", "--force"], io)).code).toBe(EXIT.done);
  });

  it("is one document with --json, which changes no file", async () => {
    const { out, written } = await answer(["completion", shell, "--json"]);
    const script = (await answer(["completion", shell])).out;
    expect(JSON.parse(out)).toEqual({ schema: "scantling/completion/1", shell, file: null, script });
    expect(written).toEqual([]);
  });
});

describe("what is declared", () => {
  it("has words for every command, option and argument", () => {
    for (const { about, options, arguments: all } of facts.commands) {
      expect(about).not.toBe("");
      for (const each of [...options, ...all]) expect(each.about, each.about).toMatch(/\w{3}/u);
    }
  });

  it("offers only papers that are known", () => {
    const unknown: string[] = [];
    for (const word of PAPERS) {
      const paper = readPaper(word, "mm", (_, message) => unknown.push(message));
      expect(paper !== undefined && "name" in paper && paperNamed(paper.name).width).toBeGreaterThan(200);
    }
    expect(unknown).toEqual([]);
  });

  it("tells each exit code once", () => {
    expect(facts.exitCodes.map(({ code }) => Number(code))).toEqual(Object.values(EXIT));
  });
});

it("answers a shell that it does not know with those that it does", async () => {
  const { code, err } = await answer(["completion", "tcsh"]);
  expect(code).toBe(EXIT.usage);
  expect(flat(err)).toContain("completion tcsh: SHELL is one of bash, zsh, fish");
});
