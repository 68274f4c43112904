// What several of these tests need of the repository itself: its root, its files, its sources.
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, sep } from "node:path";
import { fileURLToPath } from "node:url";

export const ROOT = join(dirname(fileURLToPath(import.meta.url)), "..", "..");

const NOT_OURS = new Set(["node_modules", "dist", "out", ".git", ".cache"]);

/** Every file below a folder of the repository, as paths from its root with forward slashes. */
export function filesBelow(folder: string, ending: string): string[] {
  const found: string[] = [];
  const walk = (path: string): void => {
    for (const entry of readdirSync(path, { withFileTypes: true })) {
      if (NOT_OURS.has(entry.name)) continue;
      const full = join(path, entry.name);
      if (entry.isDirectory()) walk(full);
      else if (entry.name.endsWith(ending)) found.push(relative(ROOT, full).split(sep).join("/"));
    }
  };
  walk(join(ROOT, folder));
  return found.sort();
}

export const readText = (path: string): string => readFileSync(join(ROOT, path), "utf8");

/** Source text without its comments: rules about code do not read prose. */
export function withoutComments(source: string): string {
  // Strings first, so that `//` inside one is not taken for a comment.
  return source.replace(
    /("(?:\\.|[^"\\\n])*"|'(?:\\.|[^'\\\n])*'|`(?:\\.|[^`\\])*`)|\/\*[\s\S]*?\*\/|\/\/[^\n]*/g,
    (_, text: string | undefined) => text ?? "",
  );
}

export interface Fence {
  readonly language: string;
  readonly text: string;
  readonly line: number;
}

/** The fenced blocks of a Markdown text. */
export function fences(markdown: string): Fence[] {
  const found: Fence[] = [];
  let open: { language: string; line: number; lines: string[] } | undefined;
  markdown.split("\n").forEach((line, index) => {
    const mark = /^\s*```\s*(\w*)/.exec(line);
    if (!mark) open?.lines.push(line);
    else if (open) {
      found.push({ language: open.language, text: open.lines.join("\n"), line: open.line });
      open = undefined;
    } else open = { language: mark[1] ?? "", line: index + 1, lines: [] };
  });
  if (open) throw new Error(`a fence opened at line ${open.line} is never closed`);
  return found;
}
