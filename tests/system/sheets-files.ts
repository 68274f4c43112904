import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const ROOT = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
const BIN = join(ROOT, "packages", "cli", "dist", "bin.js");

/** What the built command wrote into a folder of its own. */
export interface Written {
  /** Names of the files, sorted. */
  readonly names: readonly string[];
  path(name: string): string;
  bytes(name: string): Buffer;
  text(name: string): string;
  /** Removes what was written. */
  remove(): void;
}

/** Runs the built command on an example; `words` stand behind the knife file. */
export function runBuilt(command: string, example: string, ...words: readonly string[]): Written {
  const out = mkdtempSync(join(tmpdir(), "scantling-sheets-"));
  const knife = join(ROOT, "examples", example);
  execFileSync(process.execPath, [BIN, command, knife, ...words, "--out", out], {
    stdio: ["ignore", "pipe", "pipe"],
  });
  const path = (name: string): string => join(out, name);
  return {
    names: readdirSync(out).sort(),
    path,
    bytes: (name) => readFileSync(path(name)),
    text: (name) => readFileSync(path(name), "utf8"),
    remove: () => rmSync(out, { recursive: true, force: true }),
  };
}
