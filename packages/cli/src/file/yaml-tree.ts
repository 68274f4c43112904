import { invariant } from "@scantling/geometry";
import {
  Composer,
  type CST,
  type Document,
  isAlias,
  isMap,
  isScalar,
  isSeq,
  Lexer,
  LineCounter,
  type ParsedNode,
  Parser,
  type YAMLMap,
  type YAMLSeq,
} from "yaml";
import { type FilePath, formatPath, pathWords } from "./path.js";
import { FileError, type Position, type Problem, showText } from "./problem.js";
import { describeSyntax } from "./yaml-syntax.js";

/** What a file says, as plain data, and where it says it. */
export interface FileTree {
  readonly fileName: string;
  /** Maps are objects without a prototype. What could not be taken over is left out. */
  readonly data: unknown;
  /** Problems of the notation itself. */
  readonly problems: readonly Problem[];
  /** Paths of values that were left out because of one of these problems. */
  readonly leftOut: readonly FilePath[];
  /** Where a value stands; a group of lines stands where its key does. */
  positionOf(path: FilePath): Position | undefined;
  /** Where the key of a value stands. */
  keyPositionOf(path: FilePath): Position | undefined;
}

/** Deeper than any real file goes; the composer calls itself once a level. */
const MAX_DEPTH = 40;

/** Keys that JavaScript objects treat as something else. */
const UNSAFE_KEYS = new Set(["__proto__", "constructor", "prototype"]);

/**
 * Reads YAML, and JSON with it, keeping the position of everything. Aliases are never followed, so no text can
 * grow beyond itself.
 *
 * @throws {FileError} where the text cannot be taken for one document: syntax errors, nothing in it, more than one
 * document, nesting beyond reason.
 */
export function readTree(text: string, fileName: string): FileTree {
  const lines = new LineCounter();
  const place = (offset: number): Position => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(line, 1), column: Math.max(col, 1) };
  };
  const problem = (code: string, offset: number, message: string, path: FilePath = []): Problem => ({
    code,
    file: fileName,
    path: formatPath(path),
    ...place(offset),
    message,
  });
  const refuse = (code: string, offset: number, message: string): FileError =>
    new FileError(fileName, [problem(code, offset, message)]);

  const document = compose(scan(text, lines, refuse), text.length);
  if (document.errors.length > 0) {
    const seen = new Set<number>();
    const problems = document.errors
      .map((error) => problem("yaml-syntax", error.pos[0], describeSyntax(error)))
      .filter(({ line }) => line !== undefined && !seen.has(line) && seen.add(line));
    throw new FileError(fileName, problems, "keys and values");
  }
  const { contents } = document;
  if (contents === null || (isScalar(contents) && contents.value === null)) {
    throw new FileError(fileName, [
      {
        code: "file-empty",
        file: fileName,
        path: "",
        line: 1,
        column: 1,
        message: `the file ${/\S/u.test(text) ? "has only comments in it" : "is empty"}; its first key is scantling: 1`,
      },
    ]);
  }
  return new TreeBuilder(fileName, place, problem).build(contents);
}

/** Tokens of the text, with a watch on nesting and on the number of documents while they are read. */
function scan(
  text: string,
  lines: LineCounter,
  refuse: (code: string, offset: number, message: string) => FileError,
): CST.Token[] {
  const tokens: CST.Token[] = [];
  const parser = new Parser(lines.addNewLine);
  lines.addNewLine(0);
  let documents = 0;
  const take = (token: CST.Token): void => {
    if (token.type === "directive") {
      throw refuse("yaml-directive", token.offset, "leave out lines that begin with %");
    }
    if (token.type === "document" && ++documents > 1) {
      throw refuse(
        "many-documents",
        token.offset,
        "a second document begins here; keep one order to a file, without ---",
      );
    }
    tokens.push(token);
  };
  for (const lexeme of new Lexer().lex(text)) {
    for (const token of parser.next(lexeme)) take(token);
    if (parser.stack.length > MAX_DEPTH) {
      throw refuse(
        "too-deep",
        parser.offset,
        "keys are nested too deeply here; no file needs more than a few levels",
      );
    }
  }
  for (const token of parser.end()) take(token);
  return tokens;
}

function compose(tokens: readonly CST.Token[], length: number): Document.Parsed {
  const options = {
    version: "1.2",
    schema: "core",
    merge: false,
    uniqueKeys: false,
    prettyErrors: false,
  } as const;
  const [document] = new Composer(options).compose(tokens, true, length);
  invariant(document !== undefined, "the composer gives a document when forced");
  return document;
}

class TreeBuilder {
  private readonly values = new Map<string, Position>();
  private readonly keys = new Map<string, Position>();
  private readonly problems: Problem[] = [];
  private readonly leftOut: FilePath[] = [];

  private readonly fileName: string;
  private readonly place: (offset: number) => Position;
  private readonly problem: (code: string, offset: number, message: string, path: FilePath) => Problem;

  constructor(fileName: string, place: TreeBuilder["place"], problem: TreeBuilder["problem"]) {
    this.fileName = fileName;
    this.place = place;
    this.problem = problem;
  }

  build(contents: ParsedNode): FileTree {
    const data = this.take(contents, []);
    const { fileName, problems, leftOut, values, keys } = this;
    return {
      fileName,
      data,
      problems,
      leftOut,
      positionOf: (path) => values.get(mapKey(path)),
      keyPositionOf: (path) => keys.get(mapKey(path)) ?? values.get(mapKey(path)),
    };
  }

  private take(node: ParsedNode, path: FilePath): unknown {
    const name = pathWords(path);
    const [offset] = node.range;
    const key = this.keys.get(mapKey(path));
    const block = (isMap(node) || isSeq(node)) && node.flow !== true;
    const nothing = isScalar(node) && node.value === null && node.source === "";
    this.values.set(mapKey(path), key !== undefined && (block || nothing) ? key : this.place(offset));
    const shown = name === "" ? "this" : name;
    if (isAlias(node)) {
      return this.leave(
        "yaml-alias",
        offset,
        `${shown}: *${showText(node.source)} is not followed; write the value out`,
        path,
      );
    }
    if (node.anchor !== undefined) {
      return this.leave(
        "yaml-anchor",
        offset,
        `${shown}: leave out the mark &${showText(node.anchor)} and write each value out`,
        path,
      );
    }
    if (node.tag !== undefined) {
      return this.leave("yaml-tag", offset, `${shown}: leave out the ${showText(node.tag)} mark`, path);
    }
    if (isMap(node)) return this.takeMap(node, path);
    if (isSeq(node))
      return (node as YAMLSeq<ParsedNode>).items.map((item, index) => this.take(item, [...path, index]));
    return plainScalar(node.value, node.source);
  }

  private takeMap(map: YAMLMap<ParsedNode, ParsedNode | null>, path: FilePath): Record<string, unknown> {
    const data: Record<string, unknown> = Object.create(null);
    for (const [index, { key, value }] of map.items.entries()) {
      const offset = key.range[0];
      const before = map.items[index - 1];
      if (map.flow === true && before !== undefined && isDecimalComma(before, { key, value })) {
        this.leaveDecimals(before, key, path);
        continue;
      }
      const word = isScalar(key) && (typeof key.value === "string" || typeof key.value === "number");
      if (!word || key.tag !== undefined || key.anchor !== undefined) {
        this.leave(
          "key-not-a-word",
          offset,
          `${pathWords(path) || "the file"} has a key that is not a word`,
          path,
        );
        continue;
      }
      const name = String(key.value);
      const inner = [...path, name];
      const shown = showText(pathWords(inner), 60);
      if (name === "<<") {
        this.leave("yaml-merge", offset, "<< is not followed; write the keys out", path);
      } else if (UNSAFE_KEYS.has(name)) {
        this.leave("unknown-key", offset, `${shown} is not a key here`, path);
      } else if (this.keys.has(mapKey(inner))) {
        const first = this.keys.get(mapKey(inner));
        this.problems.push(
          this.problem(
            "duplicate-key",
            offset,
            `${shown} is already set on line ${first?.line}; keep one of them`,
            inner,
          ),
        );
      } else {
        this.keys.set(mapKey(inner), this.place(offset));
        const taken = value === null ? this.takeNothing(inner) : this.take(value, inner);
        if (taken !== undefined) data[name] = taken;
      }
    }
    return data;
  }

  /** `is: 4,2` between braces is `is: 4` and a key 2: what was meant is a decimal comma. */
  private leaveDecimals(before: FlowPair, key: ParsedNode, path: FilePath): void {
    const name = isScalar(before.key) ? String(before.key.value) : "";
    const inner = [...path, name];
    const written = `${sourceOf(before.value)},${sourceOf(key)}`;
    this.leave(
      "quantity-comma",
      before.value?.range[0] ?? key.range[0],
      `${showText(pathWords(inner), 60)}: "${showText(written)}" has a comma; write decimals with a point, such as ${showText(written.replace(",", "."))}`,
      inner,
    );
  }

  private takeNothing(path: FilePath): null {
    const key = this.keys.get(mapKey(path));
    if (key !== undefined) this.values.set(mapKey(path), key);
    return null;
  }

  private leave(code: string, offset: number, message: string, path: FilePath): undefined {
    this.problems.push(this.problem(code, offset, message, path));
    this.leftOut.push(path);
    return undefined;
  }
}

interface FlowPair {
  readonly key: ParsedNode;
  readonly value: ParsedNode | null;
}

const sourceOf = (node: ParsedNode | null): string => (isScalar(node) ? String(node.source ?? "") : "");

/** Whether a pair is what a comma leaves of a number: digits without a value, right behind a number and its comma. */
function isDecimalComma(before: FlowPair, { key, value }: FlowPair): boolean {
  const nothing = value === null || (isScalar(value) && value.value === null && value.source === "");
  if (!nothing || before.value === null || key.range[0] !== before.value.range[1] + 1) return false;
  return /^[+-]?\d+$/u.test(sourceOf(before.value)) && /^\d+(?!\S)/u.test(sourceOf(key));
}

/** Unlike the text of a path, different for a key with a full stop in it. */
const mapKey = (path: FilePath): string => JSON.stringify(path);

/** Numbers that would not be written back as they stand, such as 0014 or 4.60, stay text: a name may look like one. */
function plainScalar(value: unknown, source: string): unknown {
  const decimal = /^[+-]?(?:\d+\.?\d*|\.\d+)$/u.test(source);
  return typeof value === "number" && decimal && String(value) !== source ? source : value;
}
