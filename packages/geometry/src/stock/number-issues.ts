import { type Issue, length, type QuantityValue, share } from "../errors/issue.js";

/**
 * Nothing where a number is positive and finite, or left out; else the issue that says so.
 *
 * @param kind - What the number is, so that the message shows it as such.
 *
 * @example
 * positiveIssues("cutStep", 0); // [{ code: "not-positive", path: "cutStep", … }]
 */
export function positiveIssues(
  path: string,
  value: number | undefined,
  kind: (value: number) => QuantityValue = length,
  code = "not-positive",
): Issue[] {
  if (value === undefined || (value > 0 && Number.isFinite(value))) return [];
  return [{ code, path, text: "{value} has to be more than nothing.", values: { value: kind(value) } }];
}

/**
 * Nothing where a length is finite and not below nothing, or left out; else the issue that says so.
 *
 * @example
 * lengthIssues("kerf", -1); // [{ code: "length-negative", path: "kerf", … }]
 */
export function lengthIssues(path: string, value: number | undefined): Issue[] {
  if (value === undefined || (value >= 0 && Number.isFinite(value))) return [];
  return [
    { code: "length-negative", path, text: "A length cannot be {value}.", values: { value: length(value) } },
  ];
}

/**
 * Nothing where a share is more than nothing and less than all, or left out; else the issue that says so.
 *
 * @example
 * insideShareIssues("press.maxReduction", 1); // [{ code: "share-out-of-range", path: "press.maxReduction", … }]
 */
export function insideShareIssues(path: string, value: number | undefined): Issue[] {
  if (value === undefined || (value > 0 && value < 1)) return [];
  return [
    {
      code: "share-out-of-range",
      path,
      text: "{value} has to be more than 0 % and less than 100 %.",
      values: { value: share(value) },
    },
  ];
}
