// The references are TypeScript that the tests run from source; here they are stripped of their types once, into a cache.
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import ts from "typescript";

const tests = join(dirname(fileURLToPath(import.meta.url)), "..");

/** Everything that tests/reference exports. */
export async function loadReference() {
  const source = join(tests, "reference");
  const target = join(tests, "node_modules", ".cache", "reference");
  mkdirSync(target, { recursive: true });
  const names = readdirSync(source).filter((name) => name.endsWith(".ts"));
  for (const name of names) {
    const { outputText } = ts.transpileModule(readFileSync(join(source, name), "utf8"), {
      fileName: name,
      compilerOptions: {
        target: ts.ScriptTarget.ES2022,
        module: ts.ModuleKind.ES2022,
        verbatimModuleSyntax: true,
      },
    });
    writeFileSync(
      join(target, name.replace(/\.ts$/, ".mjs")),
      outputText.replace(/(from "\.\/[\w-]+)\.js"/g, '$1.mjs"'),
    );
  }
  const modules = await Promise.all(
    names.map((name) => import(pathToFileURL(join(target, name.replace(/\.ts$/, ".mjs"))).href)),
  );
  return Object.assign({}, ...modules);
}
