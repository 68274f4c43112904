import type { CardModel, Drawing } from "@scantling/render";
import { makeCardModel } from "../card/card-model.js";
import { writeOutput } from "../deliver.js";
import { EXIT, type ExitCode } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import { setupOf } from "../forge-setup.js";
import type { Io } from "../io/io.js";
import { type Job, loadJob } from "../load.js";
import { type Measured, measure } from "../measure.js";
import type { JobsheetOptions } from "../options.js";
import { paperChoiceOf } from "../paper-choice.js";
import { jsonText } from "../report/documents.js";
import { findingCounts } from "../report/findings.js";
import type { Setup } from "../report/setup-json.js";
import { inPaperTerms } from "../sheets/paper-terms.js";
import { drawingFiles, type NamedPages } from "../sheets/write-drawings.js";
import { knifeFindings, planBars } from "../stock-report.js";

/** `scantling jobsheet FILE`: the bench card, one or two pages to hang up where the work is done. */
export async function jobsheet(io: Io, file: string, options: JobsheetOptions): Promise<ExitCode> {
  const measured = measure(await loadJob(io, file, options));
  const setup = setupOf(measured, planBars(measured), options.plan);
  const card = makeCardModel(measured, setup);
  const pages = await drawModel(measured, card, options.paper);
  const sheet = cardFile(measured.job, pages);
  const files = await drawingFiles([sheet], options.format, sheet);
  const paths = await writeOutput(io, options.out ?? ".", files, options);
  const json = {
    schema: "scantling/jobsheet/1",
    files: paths,
    pages: pages.map(({ width, height, paper }) => ({
      widthMm: width,
      heightMm: height,
      ...(paper === undefined ? {} : { paper }),
    })),
    // As printed: texts with the units that the card has.
    warnings: card.warnings,
    sides: card.sides,
  };
  io.stdout.write(options.json ? jsonText(json) : paths.map((path) => `${path}\n`).join(""));
  if (options.plan !== undefined && setup.plan === undefined) io.stderr.write(`${idlePlan(setup)}\n`);
  for (const counts of findingCounts(knifeFindings(measured))) io.stderr.write(`${counts}\n`);
  return EXIT.done;
}

/** Why the plan that was asked for changed nothing. */
const idlePlan = ({ mixed }: Setup): string =>
  mixed === undefined
    ? "--plan changed nothing: no bar on the rack can become this blade."
    : "--plan changed nothing: the knife file describes its own stack.";

/** What the file of a bench card is called, and its title. */
export function cardFile(
  { name, knife: { order } }: Job,
  pages: readonly Drawing[],
): NamedPages & { readonly title: string } {
  const words = [order.code, order.title].filter((part) => part !== "").join(" ");
  return { name: `${name}.jobsheet`, title: `${words === "" ? "Knife" : words}: bench card`, pages };
}

/**
 * The pages of the bench card.
 *
 * @param paper - Left out: the shop's own.
 * @throws {CommandFailure} exit code 2 where the paper is too small.
 */
export const drawCard = (measured: Measured, setup: Setup, paper?: string): Promise<Drawing[]> =>
  drawModel(measured, makeCardModel(measured, setup), paper);

async function drawModel(measured: Measured, card: CardModel, paper?: string): Promise<Drawing[]> {
  const { benchCard } = await import("@scantling/render");
  const choice = paperChoiceOf(measured.job, paper, "shop-paper");
  if (choice.kind !== "paper") {
    throw new CommandFailure(
      EXIT.usage,
      "unknown-paper",
      "--paper fit: a bench card has no size of its own",
      "Give a paper: --paper a4, --paper letter.",
    );
  }
  return inPaperTerms(
    () => benchCard(card, choice.paper),
    () => "Give a larger paper, such as --paper a4.",
  );
}
