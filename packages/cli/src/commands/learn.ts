import { dirname, resolve } from "node:path";
import { deliverDone, deliverReport, type ReportFile, refuseOutput } from "../deliver.js";
import { EXIT, type ExitCode } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import { FileError, markOf, readShopFile, type ShopFile } from "../file/index.js";
import { changeFile } from "../io/change-file.js";
import type { Io } from "../io/io.js";
import { withoutCopies } from "../learn/copied-records.js";
import { findRecords, folderOfRecords } from "../learn/find-records.js";
import { jobOfRecord } from "../learn/job-of-record.js";
import { type LearnReport, learnReport } from "../learn/learn-report.js";
import { shopInput } from "../load.js";
import type { LearnOptions } from "../options.js";
import { type InputText, showPath } from "../read-input.js";
import { jsonText, reportText } from "../report/documents.js";
import { failureText } from "../report/failure-report.js";
import { learnJson } from "../report/learn-json.js";
import { learnText } from "../report/learn-text.js";
import { commandLines } from "../shell-words.js";

/** The name of a shop file where there is none yet. */
const NEW_NAME = "shop.yaml";
/** So many records take more than a blink, and it is said that they are read. */
const MANY = 10;

/**
 * `scantling learn [RECORDS…]`: what records say of the shop's losses and hours, and the change of the shop file that follows
 * from it; written only on request. Exit code 3 where a record or the shop file cannot be used, 5 where the change cannot be
 * written.
 */
export async function learn(io: Io, named: readonly string[], options: LearnOptions): Promise<ExitCode> {
  const name = options.json ? "learn.json" : "learn.txt";
  await refuseOutput(io, [name], options);
  const input = await shopOf(io, named, options);
  const file = input && readShop(input);
  const found = await findRecords(io, named, folderOfRecords(io, input?.path));
  const { records, copies } = withoutCopies(found);
  if (records.length >= MANY) io.stderr.write(`Reading ${records.length} records.\n`);
  const jobs = [];
  for (const record of records) jobs.push(await jobOfRecord(io, record));
  const asked = { units: options.units, again: commandToWrite(named, options), copies };
  const learnt = learnReport(jobs, input && { shown: input.shown, text: input.text, file }, asked);
  // What came from standard input cannot be written back.
  const told =
    input !== undefined && input.path === undefined ? ({ ...learnt, outcome: "by-hand" } as const) : learnt;
  const refusal = options.write === true ? await store(io, input, told) : undefined;
  const wrote = options.write === true && refusal === undefined && told.edited !== undefined;
  const report: LearnReport = wrote ? { ...told, outcome: "written" } : told;
  const make = (): ReportFile => ({
    name,
    content: options.json ? jsonText(learnJson(report)) : reportText(learnText(report)),
  });
  if (wrote) {
    const is = `${told.shop ?? NEW_NAME} IS changed`;
    return deliverDone(io, { is, todo: "To see what is learnt now: scantling learn" }, make, options);
  }
  await deliverReport(io, make(), options);
  if (refusal === undefined) return EXIT.done;
  // The report is the one document of standard output.
  io.stderr.write(failureText(refusal));
  return refusal.exitCode;
}

/** The shop file of `--shop`; else the nearest one beside the records that were named, or above them. */
async function shopOf(
  io: Io,
  named: readonly string[],
  options: LearnOptions,
): Promise<InputText | undefined> {
  if (options.shop !== undefined || named.length === 0) return shopInput(io, io.cwd, options);
  const found: (InputText | undefined)[] = [];
  for (const one of named) found.push(await shopInput(io, await folderOf(io, one), options));
  const [first, ...others] = found;
  if (others.some((other) => other?.path !== first?.path))
    throw new CommandFailure(
      EXIT.usage,
      "several-shops",
      "the records that were named belong to different shop files",
      "Learn for one shop at a time, or name it with --shop FILE.",
    );
  return first;
}

async function folderOf(io: Io, named: string): Promise<string> {
  const path = resolve(io.cwd, named);
  const entry = await io.disk.entry(path).catch(() => "nothing" as const);
  return entry === "folder" ? path : dirname(path);
}

/** Undefined where the file has nothing but comments in it. */
function readShop({ text, shown }: InputText): ShopFile | undefined {
  try {
    return readShopFile(text, shown);
  } catch (error) {
    if (error instanceof FileError && error.problems.every(({ code }) => code === "file-empty"))
      return undefined;
    throw error;
  }
}

function commandToWrite(named: readonly string[], { shop, units }: LearnOptions): string[] {
  const option = (name: string, value: string | undefined): string[] =>
    value === undefined ? [] : [name, value];
  return commandLines([
    ...["scantling", "learn", ...named],
    ...option("--shop", shop),
    ...option("--units", units),
    "--write",
  ]);
}

/** Writes the change; answers why it could not be, or nothing. */
async function store(
  io: Io,
  input: InputText | undefined,
  { edited, outcome, proposals }: LearnReport,
): Promise<CommandFailure | undefined> {
  if (proposals.length === 0) return undefined;
  if (edited === undefined || outcome === "by-hand")
    return refused(
      `${input?.shown ?? NEW_NAME} cannot be changed here; nothing was written`,
      "Put the figures that are told above into it yourself.",
      input,
    );
  const path = input?.path ?? resolve(io.cwd, NEW_NAME);
  const content = markOf(input?.bytes) + edited;
  const show = (each: string): string => showPath(io, each);
  const became = await changeFile(io, { path, seen: input?.bytes, content }, show);
  if (became === "stored") return undefined;
  return refused(
    `${show(path)} was changed by someone else in the meantime; nothing was written`,
    "Look at it, and try again.",
    input,
  );
}

const refused = (message: string, todo: string, input: InputText | undefined): CommandFailure =>
  new CommandFailure(
    EXIT.write,
    "cannot-write",
    message,
    todo,
    input === undefined ? {} : { file: input.shown },
  );
