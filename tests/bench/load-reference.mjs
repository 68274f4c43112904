// The references are TypeScript that the tests run from source; here they are stripped of their types once, into a cache.
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import ts from "typescript";

const tests = join(dirname(fileURLToPath(import.meta.url)), "..");
const source = join(tests, "reference");
const target = join(tests, "node_modules", ".cache", "reference");

/** Everything that the named modules of tests/reference export. */
export async function loadReference(...names) {
  for (const path of readdirSync(source, { recursive: true })) {
    if (path.endsWith(".ts")) strip(path);
  }
  const modules = await Promise.all(
    names.map((name) => import(pathToFileURL(join(target, `${name}.mjs`)).href)),
  );
  return Object.assign({}, ...modules);
}

function strip(path) {
  const { outputText } = ts.transpileModule(readFileSync(join(source, path), "utf8"), {
    fileName: path,
    compilerOptions: {
      target: ts.ScriptTarget.ES2022,
      module: ts.ModuleKind.ES2022,
      verbatimModuleSyntax: true,
    },
  });
  const file = join(target, path.replace(/\.ts$/, ".mjs"));
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, outputText.replace(/(from "\.{1,2}\/[\w/-]+)\.js"/g, '$1.mjs"'));
}
