import { basename, dirname, resolve } from "node:path";
import { nearestWord } from "@scantling/geometry/units";
import {
  decodeFile,
  FileError,
  type KnifeFile,
  type Problem,
  SHAPE_CHECKS,
  withDrawing,
} from "./file/index.js";
import { type Io, MOST_BYTES } from "./io/io.js";
import { describeSystemError, systemCode } from "./io/system-code.js";
import { showPath } from "./read-input.js";

const KEY = "blade.outline.drawing";

/**
 * The knife file with the text of the drawing that it names, if it names one.
 *
 * @param folder - Of the knife file: a drawing stands beside it.
 * @throws {FileError} of the knife file, at the key that names the drawing, where that cannot be read.
 */
export async function readItsDrawing(io: Io, knife: KnifeFile, folder: string): Promise<KnifeFile> {
  if (knife.drawing === undefined) return knife;
  const path = resolve(folder, knife.drawing);
  const shown = showPath(io, path);
  try {
    const bytes = await io.disk.readFile(path, MOST_BYTES);
    return withDrawing(knife, decodeFile(bytes, shown, "a drawing saved as plain SVG, not compressed"));
  } catch (error) {
    if (error instanceof FileError) {
      throw new FileError(
        knife.fileName,
        error.problems.map(({ code, message, line, column }) => {
          const place = line === undefined ? "" : `:${line}:${column ?? 1}`;
          return atKey(knife, code, `${KEY}: ${shown}${place}: ${message}`);
        }),
        SHAPE_CHECKS,
      );
    }
    const code = systemCode(error);
    if (code === undefined) throw error;
    const problem = atKey(
      knife,
      "cannot-read",
      `${KEY}: cannot read ${shown}: ${describeSystemError(error)}`,
    );
    const hint = code === "ENOENT" ? await nearby(io, path) : undefined;
    throw new FileError(knife.fileName, [hint === undefined ? problem : { ...problem, hint }], SHAPE_CHECKS);
  }
}

function atKey(knife: KnifeFile, code: string, message: string): Problem {
  const position = knife.positionOf(KEY);
  return {
    code,
    file: knife.fileName,
    path: KEY,
    line: position?.line,
    column: position?.column,
    message,
  };
}

async function nearby(io: Io, path: string): Promise<string | undefined> {
  const names = await io.disk.list(dirname(path)).catch(() => []);
  const near = nearestWord(basename(path), names);
  return near === undefined
    ? "Save the drawing in the folder of the knife file, or write its path from there."
    : `Did you mean ${near}?`;
}
