import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { KNIFE_DEFAULTS, MATERIALS } from "@scantling/geometry";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { fences, ROOT, readText } from "./repository.js";

// What the README shows is what there is today: the picture, the report that it quotes, tables and lists. Where this
// fails because something was meant to change, look at the new drawing, then copy it to docs/images and quote anew.
const PICTURE = "docs/images/market-garden-pattern.svg";

let place = "";
beforeAll(() => {
  place = mkdtempSync(join(tmpdir(), "scantling-picture-"));
});
afterAll(() => rmSync(place, { recursive: true, force: true }));

function scantling(...words: readonly string[]): string {
  const bin = join(ROOT, "packages", "cli", "dist", "bin.js");
  const result = spawnSync(process.execPath, [bin, ...words], { cwd: place, encoding: "utf8" });
  expect(result.status, result.stderr).toBe(0);
  return result.stdout;
}

describe("what the README shows", () => {
  const readme = readText("README.md");

  test("the picture stands in it, and is the demo's pattern", () => {
    expect(readme).toContain(`](${PICTURE})`);
    scantling("pattern", join(ROOT, "examples", "market-garden", "harvest.knife.yaml"), "--out", place);
    const drawn = readFileSync(join(place, "harvest.pattern.svg"), "utf8");
    expect(drawn).toContain("<svg");
    // Not toBe: the whole drawing twice would bury the message.
    expect(drawn === readText(PICTURE), `${PICTURE} is not what the command writes now`).toBe(true);
  });

  test("the report of its own example is the one that the command prints", () => {
    const all = fences(readme);
    for (const { language, text } of all) {
      const name = /^#\s*(my-knives\/\S+\.yaml)\b/.exec(text)?.[1];
      if (language !== "yaml" || name === undefined) continue;
      mkdirSync(join(place, dirname(name)), { recursive: true });
      writeFileSync(join(place, name), `${text}\n`);
    }
    const quoted = all.filter(({ language, text }) => language === "text" && text.startsWith("ASKED"));
    expect(quoted).toHaveLength(1);
    const printed = scantling("plan", "my-knives/workshop.knife.yaml", "--out", "my-knives/workshop");
    for (const { text } of quoted) expect(printed).toContain(text.trimEnd());
  });

  test("the list of materials is the table's, with a star on what is from memory", () => {
    const list = readme.slice(readme.indexOf("### Materials"), readme.indexOf("## The shop file"));
    const names = [...list.matchAll(/^- [^:]+: (.+)\.$/gm)].flatMap((match) => (match[1] ?? "").split(", "));
    const table = MATERIALS.map(({ name, mark }) => `${name}${mark === "from memory" ? "*" : ""}`);
    expect([...names].sort()).toEqual([...table].sort());
  });

  test("the allowances that hold where the file says nothing", () => {
    for (const [key, { value }] of Object.entries(KNIFE_DEFAULTS.allowances)) {
      const shown = typeof value === "number" ? `${value} mm` : `\`${value}\``;
      const cell = /tip|butt/.test(key) ? "`allowances.tip`, `.butt`" : `\`allowances.${key}\``;
      expect(readme).toContain(`| ${cell} | ${shown} |`);
    }
  });
});
