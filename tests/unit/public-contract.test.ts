import ts from "typescript";
import { describe, expect, test } from "vitest";
import { ROOT } from "./repository.js";

// The published entries of the library: every export says what it is, and every function shows how it is called.
const ENTRIES = ["index.ts", "units/index.ts"].map((name) => `${ROOT}/packages/geometry/src/${name}`);

interface Export {
  readonly name: string;
  readonly called: boolean;
  readonly documented: boolean;
  readonly hasExample: boolean;
}

function exportsOf(): readonly Export[] {
  const program = ts.createProgram(ENTRIES, {
    strict: true,
    module: ts.ModuleKind.NodeNext,
    target: ts.ScriptTarget.ES2022,
    types: [],
    skipLibCheck: true,
    noEmit: true,
  });
  const checker = program.getTypeChecker();
  return ENTRIES.flatMap((entry) => {
    const source = program.getSourceFile(entry);
    const module = source && checker.getSymbolAtLocation(source);
    if (module === undefined) throw new Error(`${entry} is no module`);
    return checker.getExportsOfModule(module).map((exported): Export => {
      const symbol = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported;
      const type =
        symbol.valueDeclaration && checker.getTypeOfSymbolAtLocation(symbol, symbol.valueDeclaration);
      return {
        name: exported.name,
        called: (type?.getCallSignatures().length ?? 0) + (type?.getConstructSignatures().length ?? 0) > 0,
        documented: symbol.getDocumentationComment(checker).length > 0,
        hasExample: symbol.getJsDocTags(checker).some(({ name }) => name === "example"),
      };
    });
  });
}

describe("what the library publishes", () => {
  const all = exportsOf();

  test("is there", () => {
    expect(all.length).toBeGreaterThan(300);
    expect(all.filter(({ called }) => called).length).toBeGreaterThan(150);
  });

  test("says what it is", () => {
    expect(all.filter(({ documented }) => !documented).map(({ name }) => name)).toEqual([]);
  });

  test("shows how it is called", () => {
    const silent = all.filter(({ called, hasExample }) => called && !hasExample);
    expect(silent.map(({ name }) => name)).toEqual([]);
  });
});
