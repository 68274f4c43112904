import { execFileSync, spawnSync } from "node:child_process";
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  realpathSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { fences, ROOT } from "./repository.js";

// What a user of the packages gets: the files that `npm pack` would publish, laid out in a folder of their own. The
// packages that they depend on are linked from the workspace, so that no network is needed.
const PACKAGES = ["geometry", "render", "cli"] as const;
let place = "";
const packed = new Map<string, string[]>();

interface PackReport {
  readonly files: readonly { readonly path: string }[];
}

beforeAll(() => {
  place = realpathSync(mkdtempSync(join(tmpdir(), "scantling-packed-")));
  for (const name of PACKAGES) {
    const source = join(ROOT, "packages", name);
    const report = execFileSync("npm", ["pack", "--dry-run", "--json", "--ignore-scripts"], {
      cwd: source,
      encoding: "utf8",
    });
    const [first] = JSON.parse(report) as readonly PackReport[];
    const files = first?.files.map((file) => file.path) ?? [];
    packed.set(name, files);
    const target = join(place, "node_modules", "@scantling", name);
    for (const file of files) cpSync(join(source, file), join(target, file));
    linkDependencies(source);
  }
}, 120_000);

afterAll(() => rmSync(place, { recursive: true, force: true }));

/** Links what a package declares as a dependency, and nothing that it only has for its own tests. */
function linkDependencies(source: string): void {
  const manifest = JSON.parse(readFileSync(join(source, "package.json"), "utf8")) as {
    dependencies?: Record<string, string>;
  };
  for (const dependency of Object.keys(manifest.dependencies ?? {})) {
    const link = join(place, "node_modules", dependency);
    if (dependency.startsWith("@scantling/") || existsSync(link)) continue;
    mkdirSync(join(link, ".."), { recursive: true });
    symlinkSync(realpathSync(join(source, "node_modules", dependency)), link, "dir");
  }
}

describe("packed packages", () => {
  test.each(PACKAGES)("%s ships its code, its types and no tests", (name) => {
    const files = packed.get(name) ?? [];
    expect(files).toContain("package.json");
    expect(files.some((file) => file.startsWith("dist/") && file.endsWith(".js"))).toBe(true);
    expect(files.some((file) => file.startsWith("dist/") && file.endsWith(".d.ts"))).toBe(true);
    expect(files.filter((file) => /test|\.tsbuildinfo$|golden/.test(file))).toEqual([]);
  });

  test.each(PACKAGES)("every entry that %s promises is there", (name) => {
    const folder = join(place, "node_modules", "@scantling", name);
    const manifest = JSON.parse(readFileSync(join(folder, "package.json"), "utf8")) as {
      exports: Record<string, string | Record<string, string>>;
      bin?: Record<string, string>;
    };
    const promised = [
      ...Object.values(manifest.exports).flatMap((entry) =>
        typeof entry === "string" ? [entry] : Object.values(entry),
      ),
      ...Object.values(manifest.bin ?? {}),
    ];
    expect(promised.length).toBeGreaterThan(1);
    expect(promised.filter((file) => !existsSync(join(folder, file)))).toEqual([]);
  });

  test("the command weighs and draws from an empty folder", () => {
    const shop = join(place, "shop");
    cpSync(join(ROOT, "examples", "market-garden"), shop, { recursive: true });
    const knife = readdirSync(shop).find((file) => file.endsWith(".knife.yaml"));
    if (knife === undefined) throw new Error("the example has a knife file");
    const bin = join(place, "node_modules", "@scantling", "cli", "dist", "bin.js");
    const scantling = (...words: string[]) =>
      spawnSync(process.execPath, [bin, ...words], { cwd: shop, encoding: "utf8" });

    const weighed = scantling("weigh", knife, "--json");
    expect(weighed.stderr).toBe("");
    expect(weighed.status).toBe(0);
    expect(JSON.parse(weighed.stdout)).toMatchObject({ schema: "scantling/weigh/1" });

    const drawn = scantling("pattern", knife, "--out", "drawings");
    expect(drawn.status, drawn.stderr).toBe(0);
    expect(readdirSync(join(shop, "drawings")).filter((file) => file.endsWith(".svg"))).not.toEqual([]);
  });

  test("a program written against the published types compiles and runs", () => {
    writeFileSync(join(place, "package.json"), JSON.stringify({ type: "module" }));
    // The program of the package's own page.
    const page = readFileSync(join(place, "node_modules", "@scantling", "geometry", "README.md"), "utf8");
    const [program] = fences(page).filter(({ language }) => language === "ts");
    writeFileSync(join(place, "consumer.ts"), program?.text ?? "");
    const tsc = join(ROOT, "node_modules", "typescript", "bin", "tsc");
    const compilerOptions = {
      strict: true,
      exactOptionalPropertyTypes: true,
      target: "es2022",
      module: "nodenext",
      // For nothing but its console.
      lib: ["es2023", "dom"],
      types: [],
      outDir: "built",
    };
    writeFileSync(join(place, "tsconfig.json"), JSON.stringify({ compilerOptions, files: ["consumer.ts"] }));
    const compiled = spawnSync(process.execPath, [tsc, "-p", place], { cwd: place, encoding: "utf8" });
    expect(compiled.stdout).toBe("");
    expect(compiled.status).toBe(0);
    const ran = spawnSync(process.execPath, [join("built", "consumer.js")], { cwd: place, encoding: "utf8" });
    expect(ran.stderr).toBe("");
    expect(ran.status).toBe(0);
    const lines = ran.stdout.trim().split("\n");
    expect(lines[0]).toMatch(/^\d{3} g of which steel \d+(\.\d)? g$/);
    expect(lines[1]).toMatch(/^balances -?\d+\.\d mm ahead of the heel$/);
    expect(lines[2]).toMatch(/^between \d+(\.\d)? g and \d+(\.\d)? g$/);
    expect(lines.slice(3, 8).every((line) => /^\d+ \d\.\d\d \d\.\d\d \d\.\d\d$/.test(line))).toBe(true);
    expect(lines.at(-1)).toContain("blade.edgeAngle A sharpening angle of 0° per side is no edge.");
  });
});
