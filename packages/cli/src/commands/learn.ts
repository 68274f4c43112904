import { dirname, resolve } from "node:path";
import { deliverReport, writeOutput } from "../deliver.js";
import { EXIT, type ExitCode } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import { FileError, readShopFile, type ShopFile } from "../file/index.js";
import type { Io } from "../io/io.js";
import { writeWhole } from "../io/write-whole.js";
import { findRecords, folderOfRecords } from "../learn/find-records.js";
import { jobOfRecord } from "../learn/job-of-record.js";
import { type LearnReport, learnReport } from "../learn/learn-report.js";
import { shopInput } from "../load.js";
import type { LearnOptions } from "../options.js";
import { type InputText, readInput, showPath } from "../read-input.js";
import { jsonText, reportText } from "../report/documents.js";
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
  const input = await shopOf(io, named, options);
  const file = input && readShop(input);
  const records = await findRecords(io, named, folderOfRecords(io, input?.path));
  if (records.length >= MANY) io.stderr.write(`Reading ${records.length} records.\n`);
  const jobs = [];
  for (const record of records) jobs.push(await jobOfRecord(io, record));
  const asked = { units: options.units, again: commandToWrite(named, options) };
  const learnt = learnReport(jobs, input && { shown: input.shown, text: input.text, file }, asked);
  // What came from standard input cannot be written back.
  const found =
    input !== undefined && input.path === undefined ? ({ ...learnt, outcome: "by-hand" } as const) : learnt;
  const refusal = options.write === true ? await store(io, input, found, options) : undefined;
  const wrote = options.write === true && refusal === undefined && found.edited !== undefined;
  const report: LearnReport = wrote ? { ...found, outcome: "written" } : found;
  await deliverReport(
    io,
    options.json
      ? { name: "learn.json", content: jsonText(learnJson(report)) }
      : { name: "learn.txt", content: reportText(learnText(report)) },
    options,
  );
  if (refusal !== undefined) throw refusal;
  return EXIT.done;
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
  options: LearnOptions,
): Promise<CommandFailure | undefined> {
  if (proposals.length === 0) return undefined;
  if (edited === undefined || outcome === "by-hand")
    return refused(
      `${input?.shown ?? NEW_NAME} cannot be changed here; nothing was written`,
      "Put the figures that are told above into it yourself.",
      input,
    );
  if (input?.path === undefined) {
    await writeOutput(io, ".", [{ name: NEW_NAME, content: edited }], { ...options, force: false });
    return undefined;
  }
  const now = await readInput(io, input.path, "shop");
  if (now.text !== input.text)
    return refused(
      `${input.shown} was changed by someone else in the meantime; nothing was written`,
      "Look at it, and try again.",
      input,
    );
  const show = (path: string): string => showPath(io, path);
  await writeWhole(io.disk, [{ path: input.path, content: edited }], { force: true, runId: io.runId, show });
  return undefined;
}

const refused = (message: string, todo: string, input: InputText | undefined): CommandFailure =>
  new CommandFailure(
    EXIT.write,
    "cannot-write",
    message,
    todo,
    input === undefined ? {} : { file: input.shown },
  );
