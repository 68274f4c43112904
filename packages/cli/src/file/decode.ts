import { FileError, type Problem } from "./problem.js";

/** No file of a shop is near this; a larger one is the wrong file and is not read at all. */
export const MAX_FILE_BYTES = 1_048_576;

/**
 * Text of a file from its bytes.
 *
 * @param wanted - What the file should be, for the message about one that is no text.
 * @throws {FileError} `file-too-large`, `file-binary`, `file-not-utf-8`.
 */
export function decodeFile(
  bytes: Uint8Array,
  fileName: string,
  wanted = "a knife file in YAML or JSON",
): string {
  if (bytes.length > MAX_FILE_BYTES) {
    const size = Math.round(bytes.length / 104_857.6) / 10;
    throw refused("file-too-large", `the file is ${size} MB; a file of this kind is a few kB`);
  }
  const [first, second] = bytes;
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) {
    throw refused("file-not-utf-8", "the file is saved as UTF-16; save it as UTF-8");
  }
  const nul = bytes.indexOf(0);
  if (nul >= 0) throw refused("file-binary", `the file is not text; give ${wanted}`, nul);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    // The decoder says only that it failed.
    throw refused("file-not-utf-8", "the file is not UTF-8 text; save it as UTF-8", firstBadByte(bytes));
  }

  function refused(code: string, message: string, byte?: number): FileError {
    const place = byte === undefined ? { line: undefined, column: undefined } : positionOfByte(bytes, byte);
    const problem: Problem = { code, file: fileName, path: "", ...place, message };
    return new FileError(fileName, [problem]);
  }
}

/** The mark that some editors put before a text, which is not part of it: written again with the text, it stays. */
export function markOf(bytes: Uint8Array | undefined): string {
  const marked = bytes !== undefined && bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf;
  return marked ? "\uFEFF" : "";
}

/** Where the first wrong character begins, by halving: decoding a prefix fails exactly when it holds a wrong byte. */
function firstBadByte(bytes: Uint8Array): number {
  const decodes = (end: number, stream = true): boolean => {
    try {
      // `stream` takes a character cut off at the end for unfinished, not for wrong.
      new TextDecoder("utf-8", { fatal: true }).decode(bytes.subarray(0, end), { stream });
      return true;
    } catch {
      return false;
    }
  };
  let good = 0;
  let bad = bytes.length + 1;
  while (bad - good > 1) {
    const middle = (good + bad) >> 1;
    if (decodes(middle)) good = middle;
    else bad = middle;
  }
  // Back to the beginning of a character of several bytes.
  while (good > 0 && !decodes(good, false)) good--;
  return good;
}

function positionOfByte(bytes: Uint8Array, byte: number): { line: number; column: number } {
  const before = new TextDecoder().decode(bytes.subarray(0, byte)).split("\n");
  return { line: before.length, column: (before.at(-1) ?? "").length + 1 };
}
