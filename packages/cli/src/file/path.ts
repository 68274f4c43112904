/** Steps from the top of a file to a place in it: keys and list indices. */
export type FilePath = readonly (string | number)[];

/**
 * A path as issues and JSON carry it: lists are counted from 0.
 *
 * @example
 * formatPath(["blade", "thickness", 1, "is"]); // "blade.thickness[1].is"
 */
export function formatPath(path: FilePath): string {
  return path.reduce<string>(
    (text, step) => (typeof step === "number" ? `${text}[${step}]` : text === "" ? step : `${text}.${step}`),
    "",
  );
}

/**
 * A path as people read it: they count lists from 1.
 *
 * @example
 * pathWords(["blade", "thickness", 1, "is"]); // "blade.thickness[2nd].is"
 */
export function pathWords(path: FilePath): string {
  return formatPath(path).replace(/\[(\d+)\]/gu, (_, index: string) => `[${ordinal(Number(index) + 1)}]`);
}

/** The same inside a text: every path that an issue names beside its own. */
export function withPathWords(text: string): string {
  return text.replace(/\b(?:blade|tang|handle|rack)\b[\w.]*\[\d+\][\w.[\]]*/gu, (path) =>
    pathWords(parsePath(path)),
  );
}

/** `1st`, `2nd`, `3rd`, `4th`, … */
export function ordinal(n: number): string {
  const tens = n % 100;
  const ending = tens >= 11 && tens <= 13 ? "th" : (["th", "st", "nd", "rd"][n % 10] ?? "th");
  return `${n}${ending}`;
}

/** The steps of a path as {@link formatPath} writes it. */
export function parsePath(text: string): FilePath {
  return [...text.matchAll(/\[(\d+)\]|[^.[\]]+/gu)].map(([word, index]) =>
    index === undefined ? word : Number(index),
  );
}

/** What stands at a path in plain data; undefined where there is nothing. */
export function valueAt(data: unknown, path: FilePath): unknown {
  return path.reduce<unknown>((value, step) => {
    if (typeof value !== "object" || value === null || !Object.hasOwn(value, step)) return undefined;
    return (value as Record<string | number, unknown>)[step];
  }, data);
}
