import { basename } from "node:path";
import { EXIT } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import { KnifeText, type NewPart, type NewSize, newSizes, readKnifeFile } from "../file/index.js";
import type { Job } from "../load.js";
import type { FitReport } from "./fit-report.js";
import { sameButFor } from "./same-but-for.js";

/** The knife file with the fitted sizes in it. */
export interface FittedFile {
  readonly name: string;
  readonly content: string;
}

/**
 * The knife file as it was given, with nothing but the fitted sizes changed. It is read back before it is handed over.
 *
 * @throws {CommandFailure} exit code 5 where the file is laid out in a way that cannot be changed.
 */
export function fittedFile({ answer, changes }: FitReport, job: Job): FittedFile {
  const { texts, knife, mark = "" } = job;
  const all = answer.knife.dimensions.flatMap(({ dimension, sizes }) =>
    sizes === undefined ? [] : newSizes(dimension, sizes),
  );
  const isAdded = ({ path }: NewSize): boolean =>
    changes.part !== undefined && changes.names.get(path)?.startsWith("added@") === true;
  const mass = all.find(isAdded)?.value;
  const part: NewPart | undefined =
    changes.part === undefined || mass === undefined ? undefined : { ...changes.part, mass };
  const sizes = all.filter((size) => !isAdded(size));
  const content = new KnifeText(texts.knife, knife.units).withSizes(sizes, part);
  if (content === undefined || !isRight(content, texts.knife, sizes, part))
    throw new CommandFailure(
      EXIT.write,
      "cannot-change-file",
      `${knife.fileName} is laid out in a way that cannot be changed here`,
      "Put the sizes into it yourself.",
      { file: knife.fileName },
    );
  return { name: fittedName(job), content: mark + content };
}

/** What the fitted file is called: as the one that was given. */
export const fittedName = ({ fromStdin, name, knife }: Job): string =>
  fromStdin ? `${name}.knife.yaml` : basename(knife.fileName);

/** Whether a changed file says what it said before but for the new sizes, and those. */
function isRight(
  content: string,
  before: string,
  sizes: readonly NewSize[],
  part: NewPart | undefined,
): boolean {
  try {
    const [was, is] = [before, content].map((text) => readKnifeFile(text, "").spec);
    return sameButFor(was, is, sizes, part);
  } catch {
    // What cannot be read back was not written right.
    return false;
  }
}
