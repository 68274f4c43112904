/** A number as SVG attributes write it, for use in larger patterns; it can be read in one way only, so in linear time. */
export const NUMBER = "[+-]?(?:\\d+(?:\\.\\d*)?|\\.\\d+)(?:[eE][+-]?\\d+)?";

/**
 * Numbers parted by blanks, commas, or nothing but a sign; undefined where the text is anything else or one of them is
 * not finite.
 *
 * @example
 * readNumbers("1,2 -3.5"); // [1, 2, -3.5]
 */
export function readNumbers(text: string): number[] | undefined {
  const found = text.match(new RegExp(NUMBER, "gu")) ?? [];
  const rest = text.replace(new RegExp(NUMBER, "gu"), " ");
  if (/[^\s,]/u.test(rest) || /,\s*,/u.test(text)) return undefined;
  const numbers = found.map(Number);
  return numbers.every(Number.isFinite) ? numbers : undefined;
}
