import { type Command, CommanderError } from "commander";
import { EXIT, type ExitCode } from "./exit-code.js";
import { CommandFailure } from "./failure.js";
import { FileError } from "./file/problem.js";
import type { Io } from "./io/io.js";
import { describeSystemError } from "./io/system-code.js";
import { optionFailures } from "./option-checks.js";
import { makeProgram } from "./program.js";
import { withColours } from "./report/colour.js";
import { jsonText } from "./report/documents.js";
import { failureJson, failureText } from "./report/failure-report.js";
import { refuseUnknownHelp, wrongUse } from "./wrong-use.js";

/**
 * Runs one command line and answers with its exit code; never throws, and touches the world through `io` alone.
 *
 * @param argv - The words after the program's name.
 *
 * @example
 * await run(["weigh", "harvest.knife.yaml", "--json"], io); // 0
 */
export async function run(argv: readonly string[], io: Io): Promise<ExitCode> {
  // What programs read has no colours, not even on a terminal.
  const code = await answer(argv, argv.includes("--json") ? io : withColours(io));
  try {
    await io.stdout.flush();
    return code;
  } catch (error) {
    io.stderr.write(`scantling: cannot write standard output: ${describeSystemError(error)}\n`);
    return EXIT.write;
  }
}

async function answer(argv: readonly string[], io: Io): Promise<ExitCode> {
  let code: ExitCode = EXIT.done;
  const program = makeProgram(io, (result) => {
    code = result;
  });
  try {
    refuseUnknownHelp(argv, program);
    await program.parseAsync(argv, { from: "user" });
    return code;
  } catch (error) {
    if (error instanceof CommanderError && error.exitCode === 0) return EXIT.done;
    // No command at all: the library has shown the help, on standard error.
    if (error instanceof CommanderError && error.code === "commander.help") return EXIT.usage;
    const failure = asFailure(error, argv, program);
    const also = failuresBeside(failure, error, program);
    io.stderr.write([failure, ...also].map(failureText).join(""));
    const { SCANTLING_DEBUG: debug } = io.env;
    if (failure.exitCode === EXIT.bug && debug && error instanceof Error) {
      io.stderr.write(`${error.stack ?? error.message}\n`);
    }
    if (argv.includes("--json")) io.stdout.write(jsonText(failureJson(failure, also)));
    return failure.exitCode;
  }
}

/** What is wrong with other options than the one that the failure is about, where it is about files or options. */
function failuresBeside(failure: CommandFailure, error: unknown, program: Command): CommandFailure[] {
  // The command-line library stops at what it finds itself, before the options are read.
  const isOurs = failure.exitCode === EXIT.file || failure.exitCode === EXIT.usage;
  if (!isOurs || error instanceof CommanderError) return [];
  // Its first operand is the command: a folder after --out may have the name of another.
  const [called] = program.args;
  const command = program.commands.find((one) => one.name() === called);
  const told = optionOf(failure);
  return optionFailures(command?.name() ?? "", command?.opts() ?? {}).filter(
    (other) => told === undefined || optionOf(other) !== told,
  );
}

/** The option that a failure begins with: `--paper`. */
const optionOf = ({ message }: CommandFailure): string | undefined => /^--[a-z]+/u.exec(message)?.[0];

function asFailure(error: unknown, argv: readonly string[], program: Command): CommandFailure {
  if (error instanceof CommandFailure) return error;
  if (error instanceof FileError) return brokenFile(error);
  if (error instanceof CommanderError) return wrongUse(error, argv, program);
  const message = error instanceof Error ? error.message : String(error);
  return new CommandFailure(
    EXIT.bug,
    "internal",
    `this is our bug, not a fault in your file: ${message}`,
    "Please report it to the project's issue tracker with the knife file and the command line. SCANTLING_DEBUG=1 in the environment shows where it happened.",
  );
}

function brokenFile({ fileName, problems, notReached }: FileError): CommandFailure {
  const many = problems.length === 1 ? "an error" : `${problems.length} errors`;
  const mend = problems.length === 1 ? "Mend it and try again" : "Mend them and try again";
  return new CommandFailure(
    EXIT.file,
    "file-errors",
    `${fileName} has ${many}; nothing was written`,
    NEXT_STEPS[problems[0]?.code ?? ""] ??
      (notReached === undefined
        ? `${mend}${problems.length === 1 ? "" : "; all that could be found are listed"}.`
        : `${mend}. More may come then: later checks (${notReached}) were not reached.`),
    { file: fileName, problems },
  );
}

/** What to do about a file in which there is nothing to mend. */
const NEXT_STEPS: Readonly<Record<string, string>> = {
  "file-empty": "To begin one: scantling new NAME.knife.yaml, or scantling new shop.yaml.",
  "is-shop-file":
    "Give the knife file, NAME.knife.yaml. The shop is found beside it or above it, or named with --shop FILE.",
  "is-knife-file": "Give a shop file. To begin one: scantling new shop.yaml.",
};
