import { existsSync } from "node:fs";
import { dirname, join, posix } from "node:path";
import { describe, expect, test } from "vitest";
import { filesBelow, ROOT, readText, withoutComments } from "./repository.js";

const PACKAGES = ["geometry", "render", "cli"];
const sourceOf = (name: string): string[] => filesBelow(`packages/${name}/src`, ".ts");
const sources = PACKAGES.flatMap(sourceOf);
const code = new Map(sources.map((path) => [path, withoutComments(readText(path))]));
const codeOf = (path: string): string => code.get(path) ?? "";

/** What a file imports, statically or on demand, as written. */
function importsOf(path: string): string[] {
  const pattern =
    /(?:^\s*(?:import|export)\b[^;"']*?\bfrom\s*|\bimport\s*\(\s*|^\s*import\s+)["']([^"']+)["']/gm;
  return [...codeOf(path).matchAll(pattern)].map((match) => match[1] ?? "");
}

/** Lines of code, written as `path:line`, that a pattern is found on. */
function placesOf(paths: readonly string[], pattern: RegExp): string[] {
  return paths.flatMap((path) =>
    withoutCommentsByLine(path).flatMap((line, index) =>
      pattern.test(line) ? [`${path}:${index + 1}: ${line.trim()}`] : [],
    ),
  );
}

function withoutCommentsByLine(path: string): string[] {
  // Block comments are blanked line by line so that numbers stay right.
  const kept = readText(path).replace(/\/\*[\s\S]*?\*\//g, (comment) => comment.replace(/[^\n]/g, ""));
  return withoutComments(kept).split("\n");
}

test("there are sources to look at", () => {
  for (const name of PACKAGES) expect(sourceOf(name).length, name).toBeGreaterThan(1);
});

describe("import direction", () => {
  const order = [
    "errors",
    "limits",
    "words",
    "units",
    "numeric",
    "plane",
    "drawing",
    "materials",
    "blade",
    "stock",
    "bench",
    "job",
    "fitting",
    "learning",
  ];
  const folderOf = (path: string): string => path.split("/")[3] ?? "";

  test("every folder of geometry has its place in the order", () => {
    const folders = new Set(
      sourceOf("geometry")
        .filter((path) => path.split("/").length > 4)
        .map(folderOf),
    );
    expect([...folders].filter((folder) => !order.includes(folder))).toEqual([]);
  });

  test("inside geometry a folder imports only from folders before it, and units from none of the computing ones", () => {
    const wrong: string[] = [];
    for (const path of sourceOf("geometry")) {
      const from = folderOf(path);
      if (!order.includes(from)) continue;
      for (const target of importsOf(path).filter((name) => name.startsWith("."))) {
        const to = folderOf(posix.join(dirname(path), target));
        const allowed =
          to === from ||
          (order.indexOf(to) >= 0 &&
            order.indexOf(to) < order.indexOf(from) &&
            // A foreign drawing brings its own units: it is read in mm at that boundary.
            (to !== "units" || from === "drawing"));
        if (!allowed) wrong.push(`${path} imports ${target}`);
      }
    }
    expect(wrong).toEqual([]);
  });

  test("packages see only what is below them, and only through its entry", () => {
    const allowed: Record<string, readonly string[]> = {
      geometry: [],
      render: ["@scantling/geometry", "@scantling/geometry/units"],
      cli: ["@scantling/geometry", "@scantling/geometry/units", "@scantling/render"],
    };
    const wrong: string[] = [];
    for (const name of PACKAGES) {
      const manifest = JSON.parse(readText(`packages/${name}/package.json`)) as {
        dependencies?: Record<string, string>;
      };
      const declared = Object.keys(manifest.dependencies ?? {});
      for (const path of sourceOf(name)) {
        for (const target of importsOf(path)) {
          if (target.startsWith(".")) {
            if (!posix.join(dirname(path), target).startsWith(`packages/${name}/src/`))
              wrong.push(`${path} imports ${target}`);
          } else if (target.startsWith("@scantling/")) {
            if (!allowed[name]?.includes(target)) wrong.push(`${path} imports ${target}`);
          } else if (!target.startsWith("node:")) {
            const dependency = target
              .split("/")
              .slice(0, target.startsWith("@") ? 2 : 1)
              .join("/");
            if (!declared.includes(dependency))
              wrong.push(`${path} imports ${target}, which is not declared`);
          }
        }
      }
    }
    expect(wrong).toEqual([]);
  });

  test("index files re-export and do nothing else", () => {
    const indexes = sources.filter((path) => path.endsWith("/index.ts"));
    expect(indexes).not.toEqual([]);
    for (const path of indexes) {
      const rest = codeOf(path)
        .replace(/export\s+(type\s+)?(\*|\{[^}]*\})\s*(as\s+\w+\s*)?from\s*"[^"]+";/g, "")
        .trim();
      expect(rest, path).toBe("");
    }
  });
});

describe("pure packages", () => {
  const pure = ["geometry", "render"].flatMap(sourceOf);

  test("use no file system, process, clock, randomness or console", () => {
    const banned =
      /["']node:|\brequire\s*\(|\bprocess\.|\bconsole\.|\bnew Date\b|\bDate\.|\bperformance\.|\bMath\.random\b|\bcrypto\.|\bfetch\s*\(|\bsetTimeout\b|\b__dirname\b/;
    expect(placesOf(pure, banned)).toEqual([]);
  });

  test("keep no module state", () => {
    expect(placesOf(pure, /^(export\s+)?(let|var)\s/)).toEqual([]);
  });
});

describe("house rules", () => {
  test("no file is longer than 350 lines", () => {
    const all = [
      ...sources,
      ...PACKAGES.flatMap((name) =>
        existsSync(join(ROOT, "packages", name, "test")) ? filesBelow(`packages/${name}/test`, ".ts") : [],
      ),
      ...filesBelow("tests", ".ts"),
    ];
    const long = all
      .map((path) => [path, readText(path).split("\n").length] as const)
      .filter(([, lines]) => lines > 350);
    expect(long).toEqual([]);
  });

  test("no default exports", () => {
    expect(
      placesOf([...sources, ...filesBelow("tests", ".ts")], /^\s*export\s+default\b|\bas default\b/),
    ).toEqual([]);
  });

  test("the exact unit constants are written in geometry/src/units and nowhere else", () => {
    const constant =
      /(?<![\d.])(25\.4|453\.59237|0\.45359237|28\.349523125|28\.3495231?)(?!\d)|Math\.PI\s*\/\s*180\b|180\s*\)?\s*\/\s*Math\.PI\b/;
    const places = placesOf(sources, constant);
    expect(places.filter((place) => !place.startsWith("packages/geometry/src/units/"))).toEqual([]);
    const inUnits = places.join("\n");
    for (const text of ["25.4", "453.59237", "28.349523125", "Math.PI / 180"])
      expect(inUnits).toContain(text);
  });
});

describe("documents", () => {
  const documents = [
    ...["README.md", "DEVELOPERS.md", "ARCHITECTURE.md", "CHANGELOG.md"],
    ...filesBelow("docs", ".md"),
    ...filesBelow("packages", ".md"),
    ...filesBelow("examples", ".md"),
  ];

  test.each([
    "README.md",
    "DEVELOPERS.md",
    "ARCHITECTURE.md",
    "CHANGELOG.md",
    "LICENSE",
    "docs/model.md",
    "docs/glossary.md",
    "docs/accuracy.md",
  ])("%s exists and says something", (path) => {
    expect(existsSync(join(ROOT, path)), path).toBe(true);
    expect(readText(path).length).toBeGreaterThan(200);
  });

  test("decisions are recorded", () => {
    expect(filesBelow("docs/decisions", ".md")).not.toEqual([]);
  });

  test("relative links lead somewhere, anchors included", () => {
    const dead: string[] = [];
    for (const path of documents.filter((name) => existsSync(join(ROOT, name)))) {
      const prose = readText(path)
        .replace(/```[\s\S]*?```/g, "")
        .replace(/`[^`\n]*`/g, "");
      for (const match of prose.matchAll(/\]\(<?([^)>\s]+)>?(?:\s+"[^"]*")?\)/g)) {
        const target = match[1] ?? "";
        if (/^[a-z]+:/i.test(target)) continue;
        const [file = "", anchor] = target.split("#");
        const full = file === "" ? path : posix.join(dirname(path), file);
        if (!existsSync(join(ROOT, full))) dead.push(`${path}: ${target}`);
        else if (anchor !== undefined && full.endsWith(".md") && !anchorsOf(full).includes(anchor))
          dead.push(`${path}: ${target}`);
      }
    }
    expect(dead).toEqual([]);
  });

  /** Anchors that headings get on the usual hosts: lower case, punctuation dropped, spaces to hyphens. */
  function anchorsOf(path: string): string[] {
    return [...readText(path).matchAll(/^#{1,6}\s+(.+?)\s*$/gm)].map((match) =>
      (match[1] ?? "")
        .toLowerCase()
        .replace(/[^\p{L}\p{N}\s_-]/gu, "")
        .replace(/\s/g, "-"),
    );
  }
});
