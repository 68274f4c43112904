import { samePaper } from "@scantling/render";
import type { Calibration } from "./calibration.js";
import { writeOutput } from "./deliver.js";
import { EXIT } from "./exit-code.js";
import { CommandFailure } from "./failure.js";
import { isJsonLike, printerLines, withPrinterLine } from "./file/edit-yaml.js";
import { FileError, markOf, readPaper, readShopFile, type ShopFile } from "./file/index.js";
import { changeFile } from "./io/change-file.js";
import type { Io } from "./io/io.js";
import { shopInput } from "./load.js";
import type { CalibrateOptions } from "./options.js";
import { paperSizeOf } from "./paper-choice.js";
import { type InputText, showPath } from "./read-input.js";
import type { StoreOutcome } from "./report/calibrate-text.js";

/** The shop file that holds the correction, or will; both undefined where there is none. */
export interface PrinterShop {
  readonly input: InputText | undefined;
  /** Undefined where the file has nothing but comments in it. */
  readonly file: ShopFile | undefined;
}

/** The shop file of `--shop`, or the nearest one in the current folder or above it. */
export async function findPrinterShop(io: Io, options: CalibrateOptions): Promise<PrinterShop> {
  const input = await shopInput(io, io.cwd, options);
  if (input === undefined) return { input, file: undefined };
  try {
    return { input, file: readShopFile(input.text, input.shown) };
  } catch (error) {
    const empty = error instanceof FileError && error.problems.every(({ code }) => code === "file-empty");
    if (empty) return { input, file: undefined };
    throw error;
  }
}

interface Stored {
  readonly outcome: StoreOutcome;
  /** Why it was not stored, and what to do; undefined where it was. */
  readonly refusal: CommandFailure | undefined;
}

/**
 * Stores the correction: in the shop file that there is, of which nothing else is changed, and that only under
 * `--force`; in a new one where there is none.
 */
export async function storeCorrection(
  io: Io,
  options: CalibrateOptions,
  found: Calibration,
  { input, file }: PrinterShop,
): Promise<Stored> {
  if (input === undefined) {
    const content = newShopFile(found);
    // A shop file that lies there, and was not found from here, is nobody's to write over.
    const place = { ...options, force: false };
    const [path = NEW_NAME] = await writeOutput(io, options.out ?? ".", [{ name: NEW_NAME, content }], place);
    return { outcome: { kind: "stored", file: path }, refusal: undefined };
  }
  const edited = withPrinterLine(input.text, found.line, (word) => isPaperOf(word, found, file));
  const lines = printerLines(found.line, isJsonLike(input.text));
  const outcome = { kind: "not-stored", file: input.shown, lines } as const;
  if (input.path === undefined || edited === undefined) {
    return {
      outcome,
      refusal: refused(`${input.shown} cannot be changed here`, "Put the lines into it yourself.", input),
    };
  }
  if (options.force !== true) {
    const todo =
      "Add --force: only these lines are changed in it, all else stays as it is. Or put them in yourself.";
    return { outcome, refusal: refused(`${input.shown} exists; nothing was written`, todo, input) };
  }
  const show = (path: string): string => showPath(io, path);
  const change = { path: input.path, seen: input.bytes, content: markOf(input.bytes) + edited };
  if ((await changeFile(io, change, show)) === "changed") {
    const message = `${input.shown} was changed by someone else in the meantime; nothing was written`;
    return { outcome, refusal: refused(message, "Look at it, and try again.", input) };
  }
  return { outcome: { kind: "stored", file: input.shown }, refusal: undefined };
}

const NEW_NAME = "shop.yaml";

function newShopFile({ line, units }: Calibration): string {
  return `scantling: 1
units: ${units}

# How the printer is set right, paper by paper; from: scantling calibrate
${printerLines(line).join("\n")}
`;
}

/** Whether an entry of the file is about the paper that was measured. */
function isPaperOf(word: string, { paper, units }: Calibration, file: ShopFile | undefined): boolean {
  const given = readPaper(word, file?.units ?? units, () => undefined);
  return given !== undefined && samePaper(paperSizeOf(given), paper);
}

const refused = (message: string, todo: string, { shown }: InputText): CommandFailure =>
  new CommandFailure(EXIT.write, "would-overwrite", message, todo, { file: shown });
