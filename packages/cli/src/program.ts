import { Command } from "commander";
import type { ExitCode } from "./exit-code.js";
import type { Io } from "./io/io.js";
import { declareCalibrate } from "./program/calibrate-command.js";
import { declareCheck } from "./program/check-command.js";
import { declareCompletion } from "./program/completion-command.js";
import { declareFit } from "./program/fit-command.js";
import { declareGate } from "./program/gate-command.js";
import { declareJobsheet } from "./program/jobsheet-command.js";
import { declareLearn } from "./program/learn-command.js";
import { declareNew } from "./program/new-command.js";
import { declarePattern } from "./program/pattern-command.js";
import { declarePlan } from "./program/plan-command.js";
import { declareQuote } from "./program/quote-command.js";
import { declareRecord } from "./program/record-command.js";
import { declareReorder } from "./program/reorder-command.js";
import { declareSetup } from "./program/setup-command.js";
import { EXIT_CODES } from "./program/shared-options.js";
import { declareStock } from "./program/stock-command.js";
import { declareWeigh } from "./program/weigh-command.js";
import { argumentWords, optionWords } from "./program/word-option.js";
import { version } from "./version.js";

/**
 * The command line: commands, options, help. Each command's own code is loaded when it is called, so that help and
 * wrong words are answered at once.
 */
export function makeProgram(io: Io, answered: (code: ExitCode) => void): Command {
  const program = new Command("scantling");
  program
    .description("For one custom knife: what it will weigh, the bars to cut, and true-size sheets.")
    .version(version(), "-V, --version", "print the version")
    .helpOption("-h, --help", "print help")
    .helpCommand("help [command]", "print help for a command")
    .addHelpText("after", `${FIRST_STEPS}\n${EXIT_CODES}`);
  output(program, io);

  for (const declare of COMMANDS) declare({ program, io, answered });
  return program;
}

const FIRST_STEPS = `
First steps:
  scantling new shop.yaml             the shop: put your own bars in
  scantling new                       a knife: some questions
  scantling check NAME.knife.yaml     can it be made, is what was asked met?
  scantling plan NAME.knife.yaml      everything into one folder`;

/** In the order in which help lists them. */
const COMMANDS = [
  declareNew,
  declarePlan,
  declareWeigh,
  declareStock,
  declareSetup,
  declareFit,
  declareGate,
  declareRecord,
  declareReorder,
  declareLearn,
  declarePattern,
  declareJobsheet,
  declareCheck,
  declareQuote,
  declareCalibrate,
  declareCompletion,
];

function output(program: Command, io: Io): void {
  program.configureHelp({ optionDescription: optionWords, argumentDescription: argumentWords });
  program.exitOverride().configureOutput({
    writeOut: (text) => io.stdout.write(text),
    writeErr: (text) => io.stderr.write(text),
    // Errors are told by `run`, as text and as JSON.
    outputError: () => undefined,
    getOutHelpWidth: () => Math.min(80, io.stdout.columns ?? 80),
    getErrHelpWidth: () => Math.min(80, io.stderr.columns ?? 80),
    getOutHasColors: () => false,
    getErrHasColors: () => false,
  });
}
