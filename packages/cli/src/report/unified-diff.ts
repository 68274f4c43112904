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

/** Lines kept, taken out and put in. What both texts begin and end with is not compared any further. */
function compared(before: readonly string[], after: readonly string[]): Line[] {
  const shorter = Math.min(before.length, after.length);
  let head = 0;
  while (head < shorter && before[head] === after[head]) head++;
  let tail = 0;
  while (tail < shorter - head && before.at(-1 - tail) === after.at(-1 - tail)) tail++;
  const kept = (lines: readonly string[]): Line[] => lines.map((text) => ({ mark: " ", text }));
  const inside = (lines: readonly string[]): readonly string[] => lines.slice(head, lines.length - tail);
  return [
    ...kept(before.slice(0, head)),
    ...shortestChange(inside(before), inside(after)),
    ...kept(before.slice(before.length - tail)),
  ];
}

/**
 * The fewest lines to take out and put in, by the greedy search of Myers (An O(ND) Difference Algorithm and Its Variations,
 * Algorithmica 1, 1986): how far each diagonal gets with one change more. Long texts with few changes take no longer than
 * reading them.
 */
function shortestChange(before: readonly string[], after: readonly string[]): Line[] {
  if (before.length === 0) return after.map((text) => ({ mark: "+", text }));
  const rounds: Map<number, number>[] = [];
  let reach = new Map([[1, 0]]);
  for (let changes = 0; ; changes++) {
    rounds.push(reach);
    const next = new Map<number, number>();
    for (let k = -changes; k <= changes; k += 2) {
      let x = startOn(reach, k, changes);
      while (x < before.length && x - k < after.length && before[x] === after[x - k]) x++;
      next.set(k, x);
      if (x >= before.length && x - k >= after.length) return wayBack(before, after, rounds);
    }
    reach = next;
  }
}

/** Where a diagonal is come to: by a line that is put in, from the one above, or taken out, from the one below. */
const startOn = (reach: ReadonlyMap<number, number>, k: number, changes: number): number =>
  isPutIn(reach, k, changes) ? (reach.get(k + 1) ?? 0) : (reach.get(k - 1) ?? 0) + 1;

const isPutIn = (reach: ReadonlyMap<number, number>, k: number, changes: number): boolean =>
  k === -changes || (k !== changes && (reach.get(k - 1) ?? 0) < (reach.get(k + 1) ?? 0));

function wayBack(
  before: readonly string[],
  after: readonly string[],
  rounds: readonly ReadonlyMap<number, number>[],
): Line[] {
  const lines: Line[] = [];
  let [x, y] = [before.length, after.length];
  for (const [changes, reach] of [...rounds.entries()].reverse()) {
    const k = x - y;
    const start = changes === 0 ? 0 : startOn(reach, k, changes);
    while (x > start) lines.push({ mark: " ", text: before[--x] ?? "" });
    y = x - k;
    if (changes === 0) break;
    if (isPutIn(reach, k, changes)) lines.push({ mark: "+", text: after[--y] ?? "" });
    else lines.push({ mark: "-", text: before[--x] ?? "" });
  }
  return lines.reverse();
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
