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
import { ROOT } from "./repository.js";

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
    writeFileSync(
      join(place, "consumer.ts"),
      `import { type KnifeSpec, makeKnife, weighKnife } from "@scantling/geometry";

const spec: KnifeSpec = {
  steel: { name: "1084", density: 0.00785 },
  blade: {
    outline: { family: "straight-back", edgeLength: 200, heelHeight: 45 },
    ricasso: 10,
    thickness: [{ at: { kind: "heel" }, is: 3 }, { at: { kind: "tip" }, is: 1.5 }],
    bevel: { form: "flat", height: "full", edgeThickness: 0.3 },
    edgeAngle: 0.26,
  },
  tang: { form: "full", length: 120, heights: { front: 26, middle: 22, butt: 26 } },
};
const grams: number = weighKnife(makeKnife(spec)).steel.mass;
if (!(grams > 50 && grams < 500)) throw new Error(\`\${grams} g\`);
`,
    );
    const tsc = join(ROOT, "node_modules", "typescript", "bin", "tsc");
    const compilerOptions = {
      strict: true,
      exactOptionalPropertyTypes: true,
      target: "es2022",
      module: "nodenext",
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
  });
});
