import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import ts from "typescript";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { parseDocument } from "yaml";
import { type Fence, fences, ROOT, readText } from "./repository.js";

// The README is the first thing that anyone types from: every command, file and program in it has to work.
const all = fences(readText("README.md"));
const inLanguage = (...names: string[]): Fence[] => all.filter((fence) => names.includes(fence.language));
const title = (fence: Fence): string => `line ${fence.line}`;

let place = "";
const scripts = (JSON.parse(readText("package.json")) as { scripts: Record<string, string> }).scripts;

beforeAll(() => {
  // A folder like the README's reader has: the examples, and each knife file that the README shows under its own name.
  place = mkdtempSync(join(tmpdir(), "scantling-readme-"));
  cpSync(join(ROOT, "examples"), join(place, "examples"), {
    recursive: true,
    filter: (path) => !path.includes("node_modules"),
  });
  for (const fence of inLanguage("yaml")) {
    const name = /^#\s*(\S+\.yaml)\b/.exec(fence.text)?.[1];
    if (name === undefined) continue;
    mkdirSync(join(place, name, ".."), { recursive: true });
    writeFileSync(join(place, name), `${fence.text}\n`);
  }
});

afterAll(() => rmSync(place, { recursive: true, force: true }));

const bin = join(ROOT, "packages", "cli", "dist", "bin.js");
const scantling = (words: readonly string[]) =>
  spawnSync(process.execPath, [bin, ...words], { cwd: place, encoding: "utf8" });

describe("README", () => {
  test("has commands and a knife file to check", () => {
    expect(inLanguage("sh").length).toBeGreaterThan(0);
    expect(inLanguage("yaml").length).toBeGreaterThan(0);
  });

  describe("commands", () => {
    const lines = inLanguage("sh").flatMap((fence) =>
      fence.text
        .split("\n")
        .map((line) => line.replace(/(^|\s)#.*$/, "").trim())
        .filter((line) => line !== "")
        .map((line) => ({ line, at: fence.line })),
    );

    test.each(lines)("$line", ({ line }) => {
      const job = /^(?:npm start -s --|npm start --|npx scantling|scantling)\s+(.+)$/.exec(line)?.[1];
      if (job !== undefined) {
        const [words = "", redirect] = job.split(/\s+>\s+/);
        const result = scantling(words.split(/\s+/));
        expect(result.status, result.stderr).toBe(0);
        if (redirect !== undefined) expect(result.stdout).not.toBe("");
        return;
      }
      // The two set-up commands and the other scripts: running the tests from the tests would never end, so here the
      // script has to exist; scripts/check-fresh-clone.sh runs them on a fresh clone.
      const script = /^npm (?:run )?([\w:-]+)$/.exec(line)?.[1];
      if (script !== undefined) {
        expect(Object.keys(scripts)).toContain(script);
        return;
      }
      expect(line).toMatch(/^(git clone|cd) \S+/);
    });
  });

  // The link itself needs npm's own folder: scripts/check-fresh-clone.sh makes it in an empty one.
  test.runIf(process.platform !== "win32")("the word scantling, by the alias that it shows", () => {
    const { PATH = "" } = process.env;
    const alias = /`(alias scantling=[^`]+)`/.exec(readText("README.md"))?.[1] ?? "no alias";
    const script = `shopt -s expand_aliases\n${alias}\ncd ${JSON.stringify(place)}\nscantling --version\n`;
    const result = spawnSync("bash", ["--norc", "-c", script], {
      cwd: ROOT,
      encoding: "utf8",
      env: { HOME: place, PATH },
    });
    expect(result.stderr).toBe("");
    expect(result.stdout.trim()).toBe(
      (JSON.parse(readText("packages/cli/package.json")) as { version: string }).version,
    );
  });

  describe("files", () => {
    test.each(inLanguage("yaml").map((fence) => ({ fence, title: title(fence) })))(
      "yaml at $title",
      ({ fence }) => {
        const document = parseDocument(fence.text, { uniqueKeys: true });
        expect(document.errors).toEqual([]);
        if (!/^scantling:/m.test(fence.text) || !/^blade:/m.test(fence.text)) return;
        const name = `readme-line-${fence.line}.knife.yaml`;
        writeFileSync(join(place, name), `${fence.text}\n`);
        const result = scantling(["weigh", name, "--json"]);
        expect(result.status, result.stderr).toBe(0);
      },
    );
  });

  const programs = inLanguage("ts").map((fence) => ({ fence, title: title(fence) }));
  describe.runIf(programs.length > 0)("programs", () => {
    test.each(programs)("ts at $title", async ({ fence }) => {
      const folder = mkdtempSync(join(tmpdir(), "scantling-readme-ts-"));
      try {
        symlinkSync(join(ROOT, "tests", "node_modules"), join(folder, "node_modules"), "dir");
        writeFileSync(join(folder, "package.json"), JSON.stringify({ type: "module" }));
        const file = join(folder, "program.ts");
        writeFileSync(file, fence.text);
        const options: ts.CompilerOptions = {
          strict: true,
          target: ts.ScriptTarget.ES2022,
          module: ts.ModuleKind.NodeNext,
          skipLibCheck: true,
          types: ["node"],
          typeRoots: [join(ROOT, "tests", "node_modules", "@types")],
        };
        const program = ts.createProgram([file], options);
        const problems = ts
          .getPreEmitDiagnostics(program)
          .map((one) => ts.flattenDiagnosticMessageText(one.messageText, "\n"));
        expect(problems).toEqual([]);
        program.emit();
        await import(pathToFileURL(join(folder, "program.js")).href);
      } finally {
        rmSync(folder, { recursive: true, force: true });
      }
    });
  });
});
