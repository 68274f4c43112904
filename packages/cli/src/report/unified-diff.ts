/** Lines around a change that stay as they are. */
const CONTEXT = 3;

/** What a new shop file is called. */
const NEW_NAME = "shop.yaml";

interface Line {
  readonly mark: " " | "-" | "+";
  readonly text: string;
}

/**
 * What changed between two texts, in the unified form that `patch` reads. Empty where nothing did.
 *
 * @param name - Of the file, as both sides have it; left out: a file that is new.
 *
 * @example
 * unifiedDiff("a\nb\n", "a\nc\n", "shop.yaml"); // ["--- shop.yaml", "+++ shop.yaml", "@@ -1,2 +1,2 @@", " a", "-b", "+c"]
 */
export function unifiedDiff(before: string, after: string, name?: string): readonly string[] {
  if (before === after) return [];
  const lines = compared(linesOf(before), linesOf(after));
  const hunks = hunksOf(lines);
  return [
    `--- ${name ?? "/dev/null"}`,
    `+++ ${name ?? NEW_NAME}`,
    ...hunks.flatMap((hunk) => hunkText(lines, hunk)),
  ];
}

/** Each line with its end; the last one may have none. */
const linesOf = (text: string): string[] => text.match(/[^\n]*\n|[^\n]+$/gu) ?? [];

/** Lines kept, taken out and put in, by the longest list of lines that both have in common. */
function compared(before: readonly string[], after: readonly string[]): Line[] {
  const common = before.map(() => new Int32Array(after.length + 1)).concat(new Int32Array(after.length + 1));
  const at = (i: number, j: number): number => common[i]?.[j] ?? 0;
  for (let i = before.length - 1; i >= 0; i--) {
    for (let j = after.length - 1; j >= 0; j--) {
      const row = common[i];
      if (row === undefined) continue;
      row[j] = before[i] === after[j] ? at(i + 1, j + 1) + 1 : Math.max(at(i + 1, j), at(i, j + 1));
    }
  }
  const lines: Line[] = [];
  let [i, j] = [0, 0];
  while (i < before.length || j < after.length) {
    const [was, is] = [before[i], after[j]];
    if (was !== undefined && was === is) {
      lines.push({ mark: " ", text: was });
      i++;
      j++;
    } else if (was !== undefined && (is === undefined || at(i + 1, j) >= at(i, j + 1))) {
      lines.push({ mark: "-", text: was });
      i++;
    } else {
      lines.push({ mark: "+", text: is ?? "" });
      j++;
    }
  }
  return lines;
}

interface Hunk {
  readonly from: number;
  readonly to: number;
}

/** Stretches with their context; those that touch are one. */
function hunksOf(lines: readonly Line[]): Hunk[] {
  const hunks: { from: number; to: number }[] = [];
  for (const [index, { mark }] of lines.entries()) {
    if (mark === " ") continue;
    const [from, to] = [Math.max(0, index - CONTEXT), Math.min(lines.length, index + CONTEXT + 1)];
    const last = hunks.at(-1);
    if (last !== undefined && from <= last.to) last.to = to;
    else hunks.push({ from, to });
  }
  return hunks;
}

function hunkText(lines: readonly Line[], { from, to }: Hunk): string[] {
  const start = (other: Line["mark"]): number =>
    lines.slice(0, from).filter(({ mark }) => mark !== other).length;
  const count = (other: Line["mark"]): number =>
    lines.slice(from, to).filter(({ mark }) => mark !== other).length;
  const range = (other: Line["mark"]): string => {
    const many = count(other);
    // An empty side is said to stand behind the line before it.
    return `${start(other) + (many === 0 ? 0 : 1)}${many === 1 ? "" : `,${many}`}`;
  };
  return [
    `@@ -${range("+")} +${range("-")} @@`,
    ...lines.slice(from, to).flatMap(({ mark, text }) => {
      const bare = text.replace(/\n$/u, "");
      return text.endsWith("\n") ? [mark + bare] : [mark + bare, "\\ No newline at end of file"];
    }),
  ];
}
