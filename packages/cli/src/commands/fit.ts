import { changeables } from "@scantling/geometry";
import { refuseOutput, writeOutput } from "../deliver.js";
import { EXIT, type ExitCode } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import { KnifeText } from "../file/index.js";
import { changesOf, placeName } from "../fit/changes.js";
import { fitReport, hasNewStop } from "../fit/fit-report.js";
import { type FittedFile, fittedFile, fittedName } from "../fit/fitted-file.js";
import { orderTargets } from "../fit/order-targets.js";
import { targetsOf, wrong } from "../fit/targets.js";
import { refuseIdle } from "../idle-options.js";
import type { Io } from "../io/io.js";
import { loadJob } from "../load.js";
import { inFileTerms, measure } from "../measure.js";
import type { FitOptions } from "../options.js";
import { changeableJson, changeableText } from "../report/changeable-text.js";
import { jsonText, reportText } from "../report/documents.js";
import { failureText } from "../report/failure-report.js";
import { fitJson } from "../report/fit-json.js";
import { fitText } from "../report/fit-text.js";
import { headingLines } from "../report/heading.js";

/**
 * `scantling fit FILE`: changes sizes within ranges until what is asked is met, by the least change from the drawing; says when
 * that cannot be, how near it gets, and what to relax. Exit code 4 where it cannot, or where the change brings a finding that
 * says stop.
 */
export async function fit(io: Io, file: string, options: FitOptions): Promise<ExitCode> {
  const isHelp = options.change?.some((name) => name.trim().toLowerCase() === "help") === true;
  refuseIdleHere(isHelp, options);
  const measured = measure(await loadJob(io, file, options));
  const { job, knife } = measured;
  if (isHelp) {
    const all = changeables(knife, placeName(job.knife.units));
    io.stdout.write(
      options.json ? jsonText(changeableJson(all, knife)) : reportText(changeableText(all, knife, job)),
    );
    return EXIT.done;
  }
  const asked = targetsOf(options, measured);
  const targets = [...asked, ...orderTargets(measured, asked)];
  if (targets.length === 0)
    throw wrong(
      "nothing-asked",
      "nothing is asked for, neither by the order nor on the command line",
      "Give a target, for example --mass 480g, or asks in the knife file.",
    );
  const name = `${job.name}.fit.${options.json ? "json" : "txt"}`;
  await refuseOutput(io, [fittedName(job), name], options);
  const text = new KnifeText(job.texts.knife, job.knife.units);
  const changes = changesOf(knife, options.change, text, job.knife.units);
  io.stderr.write(`Looking: ${changes.dimensions.length} to change, ${targets.length} asked.\n`);
  const report = inFileTerms(job, () => fitReport(measured, changes, targets, options.sure === true));
  const contentWith = (fitted: FittedFile | undefined): string =>
    options.json
      ? jsonText(fitJson(report, job, fitted?.name))
      : reportText([...headingLines(measured), "", ...fitText(report, job)]);
  try {
    const fitted = options.out === undefined || !report.isMet ? undefined : fittedFile(report, job);
    const content = contentWith(fitted);
    if (options.out !== undefined) {
      const files = [...(fitted === undefined ? [] : [fitted]), { name, content }];
      const paths = await writeOutput(io, options.out, files, options);
      io.stderr.write(paths.map((path) => `Wrote ${path}\n`).join(""));
      if (fitted === undefined) io.stderr.write("No knife file was written: not all is met.\n");
    }
    io.stdout.write(content);
  } catch (error) {
    if (!(error instanceof CommandFailure)) throw error;
    // What was found took its time; it is not lost because it cannot be written.
    io.stdout.write(contentWith(undefined));
    io.stderr.write(failureText(error));
    return error.exitCode;
  }
  return report.isMet && !hasNewStop(report) ? EXIT.done : EXIT.notMet;
}

function refuseIdleHere(isHelp: boolean, options: FitOptions): void {
  const { mass, balance, bevelAngle, behindEdge, steel, at, above, sure, out } = options;
  if (isHelp) {
    const asked = { "--mass": mass, "--balance": balance, "--bevel-angle": bevelAngle };
    const more = { "--behind-edge": behindEdge, "--steel": steel, "--at": at, "--above": above };
    refuseIdle({
      given: { ...asked, ...more, "--sure": sure, "--out": out },
      says: (option) => `${option} does nothing beside --change help, which only lists what can be changed`,
      todo: "Leave it out, or leave out --change help.",
    });
  }
  if (behindEdge === undefined) {
    refuseIdle({
      given: { "--above": above },
      says: (option) => `${option} says where --behind-edge is asked for, and that is not`,
      todo: "Add --behind-edge, for example --behind-edge 0.4mm, or leave it out.",
    });
  }
}
