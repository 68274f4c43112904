import { posix } from "node:path";
import * as geometry from "@scantling/geometry";
import * as units from "@scantling/geometry/units";
import ts from "typescript";
import { describe, expect, test } from "vitest";
import { filesBelow, ROOT, readText } from "./repository.js";

// Every example in the library's docstrings is run, and what it says comes out is what comes out. An example may use all
// that the library exports, what its own file exports, and the samples below.
const FOLDER = "packages/geometry/src";

interface Example {
  readonly file: string;
  readonly line: number;
  readonly code: string;
}

const examples: readonly Example[] = filesBelow(FOLDER, ".ts").flatMap((file) => {
  const text = readText(file);
  return [...text.matchAll(/\/\*\*(?:(?!\*\/)[\s\S])*?\*\//g)].flatMap((comment) =>
    [...comment[0].matchAll(/@example\n((?:(?!\n\s*\* @)[\s\S])*)/g)].map((match) => ({
      file,
      line: text.slice(0, comment.index + match.index).split("\n").length,
      code: (match[1] ?? "")
        .replace(/\*\/\s*$/, "")
        .replace(/^\s*\* ?/gm, "")
        .trim(),
    })),
  );
});

const spec: geometry.KnifeSpec = {
  steel: { name: "1084" },
  blade: {
    outline: { family: "drop-point", edgeLength: 100, heelHeight: 28 },
    ricasso: 10,
    thickness: [
      { at: { kind: "heel" }, is: 3.2 },
      { at: { kind: "tip" }, is: 1.6 },
    ],
    bevel: { form: "flat", height: "full", edgeThickness: 0.4 },
    edgeAngle: 0.3,
  },
  tang: { form: "full", length: 105, heights: { front: 22, middle: 20, butt: 24 } },
  handle: { slabs: { material: { name: "European ash" }, thickness: 8 } },
};
const knife = geometry.makeKnife(spec);

/** What examples may use without making it. */
const SAMPLES = { spec, knife, outline: knife.outline, bevel: spec.blade.bevel };

const SAMPLE_TYPES: Readonly<Record<keyof typeof SAMPLES, string>> = {
  spec: 'import("@scantling/geometry").KnifeSpec',
  knife: 'import("@scantling/geometry").Knife',
  outline: 'import("@scantling/geometry").Outline',
  bevel: 'import("@scantling/geometry").BevelSpec',
};

interface Claim {
  readonly expression: string;
  readonly says: string;
}

/** The example as a function body that collects the value of every expression, and what the text says of each. */
function take(code: string): { readonly body: string; readonly claims: readonly Claim[] } {
  const source = ts.createSourceFile("example.ts", code, ts.ScriptTarget.ES2022, true);
  const claims: Claim[] = [];
  const parts = source.statements.map((statement) => {
    if (!ts.isExpressionStatement(statement)) return statement.getText(source);
    const after = code.slice(statement.getEnd());
    // The comment on the same line, or the lines of comment right below.
    const comment = /^[ \t]*(?:\/\/ ?(.*)|\n((?:[ \t]*\/\/.*\n?)+))/.exec(after);
    const says = comment?.[1] ?? comment?.[2]?.replace(/^[ \t]*\/\/ ?/gm, "") ?? "";
    const expression = statement.expression.getText(source);
    claims.push({ expression, says: says.trim() });
    return `values.push(${expression});`;
  });
  const text = ts.transpileModule(parts.join("\n"), {
    compilerOptions: { target: ts.ScriptTarget.ES2022, module: ts.ModuleKind.ESNext },
  }).outputText;
  return { body: `${text}\nreturn values;`, claims };
}

/** The literal that a comment begins with: a string, a number, a list or a group; undefined where it begins with words. */
function literalIn(says: string): { readonly value: unknown; readonly within: number } | undefined {
  const number = /^-?\d{1,3}(?: \d{3})*(?:\.(\d+))?(?=…|[\s,;:]|$)/.exec(says);
  if (number !== null) {
    const shown = number[1]?.length ?? 0;
    return { value: Number(number[0].replaceAll(" ", "")), within: 0.501 * 10 ** -shown };
  }
  if (!/^["'[{]/.test(says) || says.includes("…")) return undefined;
  for (let end = says.length; end > 0; end--) {
    if (!/["'\]}]/.test(says[end - 1] ?? "")) continue;
    try {
      return { value: new Function(`return (${says.slice(0, end)});`)(), within: 0 };
    } catch (error) {
      if (!(error instanceof SyntaxError || error instanceof ReferenceError)) throw error;
    }
  }
  return undefined;
}

interface Named {
  readonly value: unknown;
  /** Module that exports it; undefined for a sample. */
  readonly from: string | undefined;
}

/**
 * What an example may use: what the files of its folder export, for examples of parts that are not public; what the
 * library exports; the samples.
 */
async function scopeOf(file: string): Promise<Record<string, Named>> {
  const scope: Record<string, Named> = {};
  const put = (values: object, from: string | undefined): void => {
    for (const [name, value] of Object.entries(values)) scope[name] = { value, from };
  };
  const folder = file.slice(0, file.lastIndexOf("/"));
  for (const name of filesBelow(folder, ".ts")) put(await import(`${ROOT}/${name}`), name);
  put(units, `${FOLDER}/units/index.ts`);
  put(geometry, `${FOLDER}/index.ts`);
  put(SAMPLES, undefined);
  return scope;
}

/** Names of the scope that an example uses; what it makes itself hides others of that name. */
function usedNames(code: string, names: readonly string[]): string[] {
  const made = [...code.matchAll(/^(?:const|let) (?:\{([^}]*)\}|\[([^\]]*)\]|(\w+))/gm)].flatMap((match) =>
    (match[1] ?? match[2] ?? match[3] ?? "").split(",").map((name) => name.trim()),
  );
  const bare = code.replace(/\/\/.*$/gm, "");
  return names.filter(
    (name) =>
      !made.includes(name) && new RegExp(`(?<!(?<!\\.\\.)\\.)(?<![\\w"])${name}\\b(?!["]|:)`).test(bare),
  );
}

/** The example as a file of its own beside the file that it stands in. */
async function asModule(file: string, code: string): Promise<string> {
  const scope = await scopeOf(file);
  const imports = usedNames(code, Object.keys(scope)).map((name) => {
    const from = scope[name]?.from;
    if (from === undefined) {
      return `declare const ${name}: ${SAMPLE_TYPES[name as keyof typeof SAMPLES]};`;
    }
    return `import { ${name} } from ${JSON.stringify(relativePath(file, from))};`;
  });
  return `${imports.join("\n")}\nexport {};\n${code}\n`;
}

const relativePath = (file: string, to: string): string => {
  const path = posix.relative(posix.dirname(file), to).replace(/\.ts$/, ".js");
  return path.startsWith(".") ? path : `./${path}`;
};

/** A value as it is written: numbers to 9 digits after the point, no negative zero, exact ratios as numbers. */
function rounded(value: unknown): unknown {
  if (typeof value === "number") return Math.round(value * 1e9) / 1e9 + 0;
  if (Array.isArray(value)) return value.map(rounded);
  if (typeof value !== "object" || value === null) return value;
  if (Object.getPrototypeOf(value) !== Object.prototype) return rounded(value.valueOf());
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, rounded(inner)]));
}

describe("examples in docstrings", () => {
  test("are there to be run, and most of them say a value", () => {
    const claims = examples.flatMap(({ code }) => take(code).claims);
    expect(examples.length).toBeGreaterThan(100);
    expect(claims.filter(({ says }) => literalIn(says) !== undefined).length).toBeGreaterThan(90);
  });

  test("are right as to types", async () => {
    const options: ts.CompilerOptions = {
      strict: true,
      exactOptionalPropertyTypes: true,
      target: ts.ScriptTarget.ES2022,
      lib: ["lib.es2023.d.ts"],
      module: ts.ModuleKind.NodeNext,
      customConditions: ["@scantling/source"],
      types: [],
      skipLibCheck: true,
      noEmit: true,
    };
    const texts = new Map<string, string>();
    for (const { file, line, code } of examples) {
      texts.set(`${ROOT}/${file.replace(/\.ts$/, `.example-${line}.ts`)}`, await asModule(file, code));
    }
    const host = ts.createCompilerHost(options);
    const { fileExists, getSourceFile, readFile } = host;
    host.fileExists = (path) => texts.has(path) || fileExists.call(host, path);
    host.readFile = (path) => texts.get(path) ?? readFile.call(host, path);
    host.getSourceFile = (path, ...rest) => {
      const text = texts.get(path);
      return text === undefined
        ? getSourceFile.call(host, path, ...rest)
        : ts.createSourceFile(path, text, ts.ScriptTarget.ES2022);
    };
    const program = ts.createProgram([...texts.keys()], options, host);
    const problems = [...texts.keys()].flatMap((path) => {
      const source = program.getSourceFile(path);
      return [...program.getSyntacticDiagnostics(source), ...program.getSemanticDiagnostics(source)].map(
        (one) => `${path.slice(ROOT.length + 1)}: ${ts.flattenDiagnosticMessageText(one.messageText, "\n")}`,
      );
    });
    expect(problems).toEqual([]);
  });

  test.each(examples.map((example) => [`${example.file}:${example.line}`, example] as const))(
    "%s",
    async (_, { file, code }) => {
      const { body, claims } = take(code);
      const scope = await scopeOf(file);
      const used = usedNames(body, Object.keys(scope));
      // Names that it both makes and needs, such as { knife } = weighKnife(knife), cannot be; they would throw here.
      const run = new Function("values", ...used, `"use strict";\n${body}`) as (
        ...given: readonly unknown[]
      ) => readonly unknown[];
      const values = run([], ...used.map((name) => scope[name]?.value));
      expect(values).toHaveLength(claims.length);
      for (const [i, { expression, says }] of claims.entries()) {
        const value = values[i];
        if (typeof value === "number") expect(Number.isFinite(value), expression).toBe(true);
        const literal = literalIn(says);
        if (literal === undefined) continue;
        if (typeof literal.value === "number") {
          expect(Math.abs(Number(value) - literal.value), expression).toBeLessThanOrEqual(literal.within);
        } else expect(rounded(value), expression).toEqual(literal.value);
      }
    },
  );
});
