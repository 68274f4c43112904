/** Steps from the top of a file to a place in it: keys and list indices. */
export type FilePath = readonly (string | number)[];

/**
 * A path as messages show it and as issues carry it.
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
