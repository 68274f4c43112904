import { spawn, spawnSync } from "node:child_process";
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { EXIT } from "../src/exit-code.js";

// The built command in a process of its own, on a real disk: what a fake world cannot show.
const BIN = fileURLToPath(new URL("../dist/bin.js", import.meta.url));
const DEMO = fileURLToPath(new URL("../../../examples/market-garden/", import.meta.url));
const KNIFE = "harvest.knife.yaml";

let folder = "";

beforeAll(() => {
  if (!existsSync(BIN)) throw new Error("the command is not built: npm run build");
  folder = mkdtempSync(join(tmpdir(), "scantling-"));
  cpSync(DEMO, folder, { recursive: true });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function scantling(argv: readonly string[], input?: string) {
  const { NO_COLOR: _, ...env } = process.env;
  const result = spawnSync(process.execPath, [BIN, ...argv], { cwd: folder, encoding: "utf8", input, env });
  return { code: result.status, out: result.stdout, err: result.stderr };
}

describe("the built command", () => {
  it("runs the main job, and a second time only with --force", () => {
    const first = scantling(["plan", KNIFE, "--out", "out"]);
    expect(first.err).toBe("");
    expect(first.code).toBe(EXIT.done);
    expect(readdirSync(join(folder, "out")).sort()).toEqual([
      "check.json",
      "harvest.jobsheet.pdf",
      "harvest.pattern.svg",
      "harvest.sheets.pdf",
      "setup.json",
      "setup.txt",
      "stock.json",
      "summary.txt",
      "weigh.json",
    ]);
    expect(readFileSync(join(folder, "out", "summary.txt"), "utf8")).toBe(first.out);

    const second = scantling(["plan", KNIFE, "--out", "out"]);
    expect(second.code).toBe(EXIT.write);
    expect(second.err).toContain("--force");
    expect(scantling(["plan", KNIFE, "--out", "out", "--force"])).toEqual(first);
    expect(readdirSync(join(folder, "out"))).toHaveLength(9);
  });

  it("reads standard input and finds the shop from the current folder", () => {
    const text = readFileSync(join(folder, KNIFE), "utf8");
    const piped = scantling(["stock", "-", "--json"], text);
    expect(piped.code).toBe(EXIT.done);
    expect(JSON.parse(piped.out)).toEqual(JSON.parse(scantling(["stock", KNIFE, "--json"]).out));
  });

  it("answers wrong use with 2 and a missing file with 3", () => {
    expect(scantling(["weihg", KNIFE]).code).toBe(EXIT.usage);
    const missing = scantling(["weigh", "harvst.knife.yaml"]);
    expect(missing.code).toBe(EXIT.file);
    expect(missing.err).toContain("Did you mean harvest.knife.yaml?");
  });

  it("stays quiet when a reader leaves early", async () => {
    const child = spawn(process.execPath, [BIN, "stock", KNIFE, "--json"], { cwd: folder });
    child.stdout.destroy();
    let err = "";
    child.stderr.on("data", (chunk) => {
      err += String(chunk);
    });
    const code = await new Promise((resolve) => child.on("close", resolve));
    expect(err).toBe("");
    expect(code).toBe(EXIT.done);
  });
});
