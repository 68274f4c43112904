/**
 * Number of single-letter changes (insert, delete, replace, swap of neighbours) that turn `a` into `b`.
 *
 * @example
 * editDistance("1048", "1084"); // 1: two neighbours swapped
 */
export function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const replace = (last[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      let best = Math.min(replace, (last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        best = Math.min(best, (beforeLast[j - 2] ?? 0) + 1);
      row.push(best);
    }
    beforeLast = last;
    last = row;
  }
  return last[b.length] ?? 0;
}

/**
 * The names nearest to a mistyped one, nearest first: those that begin with it or contain it, then those within about
 * a third of its letters.
 */
export function nearestNames(typed: string, names: readonly string[], most = 3): string[] {
  if (typed === "") return [];
  const reach = Math.max(1, Math.ceil(typed.length / 3));
  return names
    .map((name) => ({
      name,
      distance: name.includes(typed) ? (name.startsWith(typed) ? 0 : 0.5) : editDistance(typed, name),
    }))
    .filter(({ distance }) => distance <= reach)
    .sort((a, b) => a.distance - b.distance || a.name.length - b.name.length || (a.name < b.name ? -1 : 1))
    .slice(0, most)
    .map(({ name }) => name);
}
