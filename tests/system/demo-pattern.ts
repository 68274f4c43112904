import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const ROOT = join(dirname(fileURLToPath(import.meta.url)), "..", "..");

export interface DemoPattern {
  readonly file: string;
  readonly svg: string;
  /** Removes what was written. */
  remove(): void;
}

/** Draws the demo's pattern with the built command into a folder of its own. */
export function drawDemoPattern(): DemoPattern {
  const knife = join(ROOT, "examples", "market-garden", "harvest.knife.yaml");
  const out = mkdtempSync(join(tmpdir(), "scantling-pattern-"));
  const bin = join(ROOT, "packages", "cli", "dist", "bin.js");
  execFileSync(process.execPath, [bin, "pattern", knife, "--out", out], {
    stdio: ["ignore", "pipe", "pipe"],
  });
  const drawn = readdirSync(out).find((name) => name.endsWith(".svg"));
  if (drawn === undefined) throw new Error("pattern wrote no SVG");
  const file = join(out, drawn);
  const remove = (): void => rmSync(out, { recursive: true, force: true });
  return { file, svg: readFileSync(file, "utf8"), remove };
}
