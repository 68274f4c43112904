import { dirname, isAbsolute, join, relative, resolve, sep } from "node:path";
import { type FamilyName, findMaterial } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import { writeOutput } from "../deliver.js";
import { EXIT, type ExitCode } from "../exit-code.js";
import { CommandFailure } from "../failure.js";
import { FileError, readKnifeFile, readShopFile } from "../file/index.js";
import { refuseIdle } from "../idle-options.js";
import type { Io } from "../io/io.js";
import { shopInput } from "../load.js";
import type { NewOptions } from "../options.js";
import { readInput, STDIN, showPath } from "../read-input.js";
import { jsonText } from "../report/documents.js";
import { wrap } from "../report/layout.js";
import { commandLine, commandLines } from "../shell-words.js";
import { askFor, say, type Taken, type Talk } from "../starter/ask.js";
import { askKnife, type KnifeAnswers } from "../starter/ask-knife.js";
import { copyKnife } from "../starter/copy-knife.js";
import { FAMILY_WORDS, USUAL_FAMILY } from "../starter/family-words.js";
import {
  knifeStarter,
  STARTER_HANDLE,
  STARTER_STEEL,
  type StarterMaterial,
} from "../starter/knife-starter.js";
import { FAMILY_STARTERS } from "../starter/knife-types.js";
import { codeOf, kindOfName, newName, stemOf, titleOf } from "../starter/new-name.js";
import { shopStarter } from "../starter/shop-starter.js";

/** A new file before it is written. */
interface NewText {
  readonly kind: "knife" | "shop" | "copy";
  /** As it is written, from the output folder; `-` for standard output. */
  readonly name: string;
  readonly content: string;
  readonly family?: FamilyName;
  /** Whether there is a shop that bars can be planned from. */
  readonly hasShop?: boolean;
}

/**
 * `scantling new [FILE]`: a knife file to begin with. On a terminal it asks; elsewhere, and with `--family`, it writes a starter
 * of that family. `--from` begins with a copy of another knife file, `--shop-file` is for a shop.
 */
export async function newFile(io: Io, given: string | undefined, options: NewOptions): Promise<ExitCode> {
  const kind = options.shopFile ? "shop" : kindOfName(given);
  refuseIdleHere(kind, options);
  const name = given === undefined ? undefined : newName(given, kind);
  if (name !== undefined && isAbsolute(name)) {
    refuseIdle({
      given: { "--out": options.out },
      says: (option) => `${option} changes nothing: ${name} says where the file goes`,
      todo: "Leave one of the two folders out.",
    });
  }
  if (name !== undefined) await refuseTaken(io, name, options);
  // Before anything is asked, with a usual knife around them.
  const { code, title } = options;
  if (kind === "knife" && (code !== undefined || title !== undefined)) {
    const usual = { ...USUAL_ANSWERS, units: "mm", steel: STARTER_STEEL } as const;
    refuseUnreadable(starter(usual, name, options).content);
  }
  const made =
    options.from !== undefined
      ? await copied(io, options.from, name, options)
      : kind === "shop"
        ? await shopFile(io, name ?? "shop.yaml", options)
        : await knifeFile(io, name, options);
  if (made.kind !== "shop") refuseUnreadable(made.content);
  return deliver(io, made, options);
}

/** A usual knife, but for its units and its steel. */
const USUAL_ANSWERS = {
  family: USUAL_FAMILY,
  tang: FAMILY_STARTERS[USUAL_FAMILY].tang,
  handle: STARTER_HANDLE,
} as const;

/** Nothing is written that could not be read again. */
function refuseUnreadable(content: string): void {
  try {
    readKnifeFile(content, "the new file");
  } catch (error) {
    if (!(error instanceof FileError)) throw error;
    const [{ path, message } = { path: "", message: "it cannot be read" }] = error.problems;
    const option = { "order.code": "--code", "order.title": "--title" }[path];
    throw new CommandFailure(
      EXIT.usage,
      "unreadable",
      option === undefined
        ? `nothing was written, for it could not be read again: ${message}`
        : `${option}${message.slice(message.startsWith(path) ? path.length : 0)}`,
      option === undefined
        ? "Give other answers, or another file."
        : `Give another ${option}, or leave it out.`,
    );
  }
}

/** Options that mean nothing to what is begun: they would be taken for done. */
function refuseIdleHere(kind: "knife" | "shop", options: NewOptions): void {
  const { from, family, tang, units, code, title } = options;
  if (kind === "shop") {
    refuseIdle({
      given: { "--from": from, "--family": family, "--tang": tang, "--code": code, "--title": title },
      says: (option) => `${option} is for knife files, and this is a shop file`,
      todo: "Leave it out, or give a name that ends in .knife.yaml.",
    });
  } else if (from !== undefined) {
    refuseIdle({
      given: { "--family": family, "--tang": tang, "--units": units },
      says: (option) => `--from and ${option} do not go together: the copy has what the file has`,
      todo: "Leave one of them out.",
    });
  }
}

/** Before anything is asked: nobody wants to answer for nothing. */
async function refuseTaken(io: Io, name: string, options: NewOptions): Promise<void> {
  if (name === STDIN) return;
  const path = resolve(io.cwd, options.out ?? ".", name);
  const shown = showPath(io, path);
  const entry = await io.disk.entry(path).catch(() => "nothing" as const);
  if (entry === "nothing" || (entry === "file" && options.force)) return;
  throw new CommandFailure(
    EXIT.write,
    "would-overwrite",
    entry === "folder" ? `${shown} is a folder` : `${shown} exists; nothing was written`,
    entry === "folder"
      ? `Give a file name, such as ${join(shown, "hunter.knife.yaml")}.`
      : "Give another name, or add --force to replace it.",
    { file: shown },
  );
}

async function knifeFile(io: Io, name: string | undefined, options: NewOptions): Promise<NewText> {
  const shop = await shopWords(io, name, options);
  const units = options.units ?? shop.units ?? "mm";
  const isSaid = options.family !== undefined || options.tang !== undefined;
  const asks = io.stdinIsTTY && io.stderr.isTTY && !options.json && !isSaid;
  if (!asks) {
    const family = options.family ?? USUAL_FAMILY;
    const tang = options.tang ?? FAMILY_STARTERS[family].tang;
    const usual = { family, units, tang, steel: shop.steel, handle: STARTER_HANDLE };
    return { ...starter(usual, name, options), hasShop: shop.isThere };
  }
  const lines = io.openLines();
  const talk: Talk = { lines, out: io.stderr };
  try {
    const answers = await askKnife(talk, { units, steel: shop.steel });
    const chosen = name ?? (await askName(io, talk, answers.family, options));
    return { ...starter(answers, chosen, options), hasShop: shop.isThere };
  } finally {
    lines.close();
  }
}

/** What the file is called, by a name that is free. */
async function askName(io: Io, talk: Talk, family: FamilyName, options: NewOptions): Promise<string> {
  for (;;) {
    const name = await askFor(talk, {
      ask: "Name of the file",
      usual: `${family}.knife.yaml`,
      help: ["It ends in .knife.yaml; without an ending it gets that one."],
      take: (typed): Taken<string> => attempt(() => newName(typed, "knife")),
    });
    try {
      await refuseTaken(io, name, options);
      return name;
    } catch (error) {
      if (!(error instanceof CommandFailure)) throw error;
      say(talk, `${error.message}. ${error.todo}`);
    }
  }
}

function attempt(make: () => string): Taken<string> {
  try {
    return { ok: true, value: make() };
  } catch (error) {
    if (!(error instanceof CommandFailure)) throw error;
    return { ok: false, why: `${error.message}. ${error.todo}` };
  }
}

function starter(answers: KnifeAnswers, name: string | undefined, options: NewOptions): NewText {
  const { family } = answers;
  const file = name ?? `${family}.knife.yaml`;
  const stem = stemOf(file);
  const isOwn = file !== STDIN && stem !== family;
  const code = options.code ?? codeOf(isOwn ? stem : family);
  const title = options.title ?? (isOwn ? titleOf(stem) : FAMILY_WORDS[family]);
  return { kind: "knife", name: file, family, content: knifeStarter({ ...answers, code, title }) };
}

async function shopFile(io: Io, name: string, options: NewOptions): Promise<NewText> {
  const { units } = await shopWords(io, name, options);
  return { kind: "shop", name, content: shopStarter(options.units ?? units ?? "mm") };
}

/**
 * Units and first steel of the shop that the new file will find: the one beside it or above it. A shop that cannot be read is
 * told, and does without.
 */
async function shopWords(
  io: Io,
  name: string | undefined,
  options: NewOptions,
): Promise<{ readonly units?: FileUnits; readonly steel: StarterMaterial; readonly isThere: boolean }> {
  try {
    const input = await shopInput(io, newFolder(io, name, options), options);
    if (input === undefined) return { steel: STARTER_STEEL, isThere: false };
    const { units, shop } = readShopFile(input.text, input.shown);
    // One that no density is known of would make a file with an error in it.
    const steel = shop.rack?.find((bar) => findMaterial(bar.steel ?? "")?.kind === "steel")?.steel;
    return { units, steel: steel === undefined ? STARTER_STEEL : { name: steel }, isThere: true };
  } catch (error) {
    if (!(error instanceof FileError) || options.shop !== undefined) throw error;
    io.stderr.write(`${error.fileName} has errors and is not used here; check lists them.\n`);
    return { steel: STARTER_STEEL, isThere: true };
  }
}

/** A copy of another knife file; its name names the order. */
async function copied(io: Io, from: string, name: string | undefined, options: NewOptions): Promise<NewText> {
  if (name === undefined) {
    throw new CommandFailure(
      EXIT.usage,
      "no-name",
      "--from needs the name of the new file",
      `Give it: ${commandLine(["scantling", "new", "NAME.knife.yaml", "--from", from])}`,
    );
  }
  const input = await readInput(io, from, "knife");
  // Read for its errors: a copy of a broken file would be two broken files.
  readKnifeFile(input.text, input.shown);
  const stem = stemOf(name);
  const content = copyKnife(input.text, {
    code: options.code ?? codeOf(stem),
    title: options.title ?? titleOf(stem),
    movedPath: pathFrom(
      input.path === undefined ? io.cwd : dirname(input.path),
      newFolder(io, name, options),
    ),
  });
  if (content !== undefined) return { kind: "copy", name, content, hasShop: true };
  throw new CommandFailure(
    EXIT.file,
    "cannot-copy",
    `${input.shown} is laid out in a way that its order cannot be changed in`,
    "Copy the file yourself, and change order in it.",
    { file: input.shown },
  );
}

/** Where the new file will lie; one without a name yet goes into the output folder. */
const newFolder = (io: Io, name: string | undefined, options: NewOptions): string =>
  name === STDIN ? io.cwd : dirname(resolve(io.cwd, options.out ?? ".", name ?? "new.knife.yaml"));

/** How a path that a file gives has to be given from another folder. */
function pathFrom(old: string, now: string): (path: string) => string {
  return (path) => {
    if (old === now || isAbsolute(path)) return path;
    return relative(now, resolve(old, path)).split(sep).join("/");
  };
}

async function deliver(io: Io, made: NewText, options: NewOptions): Promise<ExitCode> {
  const { kind, name, content, family } = made;
  const [file] =
    name === STDIN ? [] : await writeOutput(io, options.out ?? ".", [{ name, content }], options);
  if (options.json) {
    io.stdout.write(
      jsonText({ schema: "scantling/new/1", kind, file: file ?? null, family: family ?? null, content }),
    );
  } else {
    io.stdout.write(file === undefined ? content : `${file}\n`);
  }
  if (file !== undefined) {
    const check = kind === "shop" ? [] : commandLines(["scantling", "check", file]);
    const shop = kind === "shop" || made.hasShop ? [] : wrap(NO_SHOP);
    io.stderr.write(`${[...wrap(NEXT[kind]), ...check, ...shop].join("\n")}\n`);
  }
  return EXIT.done;
}

const NEXT: Readonly<Record<NewText["kind"], string>> = {
  knife: "Written. Put your own figures in, then:",
  copy: "Written; what the old order asked for is left out. Next:",
  shop: "Written, with bars as examples. Put your own in; knife files beside it and below find it.",
};

const NO_SHOP = "No shop file is near yet: scantling new shop.yaml begins one.";
