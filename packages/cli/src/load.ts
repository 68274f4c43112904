import { basename, dirname, join, resolve } from "node:path";
import {
  checkShop,
  DEFAULT_SHOP,
  DEFAULT_TOLERANCES,
  type KnifeSpec,
  type SheathSizes,
  type ShopSpec,
  type ToleranceDefaults,
} from "@scantling/geometry";
import { drillSizes, type FileUnits, inchesToMm } from "@scantling/geometry/units";
import { EXIT } from "./exit-code.js";
import { CommandFailure } from "./failure.js";
import {
  FileError,
  type KnifeFile,
  markOf,
  placeIssues,
  readKnifeFile,
  readShopFile,
  type ShopFile,
} from "./file/index.js";
import type { Io } from "./io/io.js";
import type { CommonOptions } from "./options.js";
import { readItsDrawing } from "./read-drawing.js";
import { type InputText, readInput, STDIN } from "./read-input.js";

/** Names under which a shop file is found, the first of them that a folder holds. */
const SHOP_NAMES = ["shop.yaml", "shop.yml", "shop.json"] as const;

/** A knife file with the shop that it is made in. */
export interface Job {
  readonly knife: KnifeFile;
  /** The knife with the shop's own allowances where the file gives none. */
  readonly spec: KnifeSpec;
  /** Names output files: `harvest` for `harvest.knife.yaml`. */
  readonly name: string;
  /** Whether the knife was read from standard input, so that no shop file can lie beside it. */
  readonly fromStdin: boolean;
  /** Units to show. */
  readonly units: FileUnits;
  /** Undefined where there is no shop file: the defaults stand in, the rack is empty. */
  readonly shopPlaces: ShopFile | undefined;
  readonly shop: ShopSpec;
  /** What an input is uncertain by where the knife file does not say. */
  readonly tolerances: ToleranceDefaults;
  /** The texts that all this was read from; the drawing's stands in the outline of `spec`. */
  readonly texts: { readonly knife: string; readonly shop?: string };
  /** What stood before the text of the knife file without being part of it; left out: nothing. */
  readonly mark?: string;
  /** Sizes that the knife file or the shop file asks of the sheath, mm. */
  readonly sheath: Partial<SheathSizes>;
}

/**
 * Reads the knife file and its shop: the one named by `--shop`, or the nearest `shop.yaml` beside the knife file or
 * above it; a knife from standard input is looked for from the current folder.
 *
 * @throws {FileError} with all problems of the file that has them.
 * @throws {CommandFailure} where a file cannot be read.
 */
export async function loadJob(io: Io, given: string, options: CommonOptions): Promise<Job> {
  if (given === STDIN && options.shop === STDIN) {
    throw new CommandFailure(
      EXIT.usage,
      "one-standard-input",
      "knife and shop cannot both come from standard input",
      "Give one of them as a file.",
    );
  }
  const input = await readInput(io, given, "knife");
  const folder = input.path === undefined ? io.cwd : dirname(input.path);
  const knife = await readItsDrawing(io, readKnifeFile(input.text, input.shown), folder);
  const shop = await shopInput(io, folder, options);
  return makeJob({
    knife,
    shopFile: shop && readShopFile(shop.text, shop.shown),
    name: input.path === undefined ? nameOfCode(knife.order.code) : nameOfFile(input.path),
    fromStdin: input.path === undefined,
    units: options.units ?? knife.units,
    texts: { knife: input.text, ...(shop === undefined ? {} : { shop: shop.text }) },
    mark: markOf(input.bytes),
  });
}

/** The files of a job, read. */
export interface JobFiles extends Pick<Job, "knife" | "name" | "fromStdin" | "units" | "texts" | "mark"> {
  readonly shopFile: ShopFile | undefined;
}

/**
 * The knife in its shop, with all that the files leave out.
 *
 * @throws {FileError} where the shop breaks rules.
 */
export function makeJob({ shopFile, ...files }: JobFiles): Job {
  const { spec } = files.knife;
  return {
    ...files,
    spec: { ...spec, allowances: { ...shopFile?.allowances, ...spec.allowances } },
    shopPlaces: shopFile,
    shop: shopFile === undefined ? BARE_SHOP : fillShop(shopFile),
    tolerances: fillTolerances(shopFile),
    sheath: { ...shopFile?.sheath, ...files.knife.sheath },
  };
}

/** The text of the shop file that `--shop` names, or of the nearest one in a folder or above it; undefined where there is none. */
export async function shopInput(
  io: Io,
  from: string,
  options: Pick<CommonOptions, "shop">,
): Promise<InputText | undefined> {
  const given = options.shop ?? (await findShop(io, from));
  return given === undefined ? undefined : readInput(io, given, "shop");
}

async function findShop(io: Io, from: string): Promise<string | undefined> {
  for (let folder = resolve(from); ; folder = dirname(folder)) {
    for (const name of SHOP_NAMES) {
      const path = join(folder, name);
      // A folder that may not be looked into holds no shop of this knife.
      if ((await io.disk.entry(path).catch(() => "nothing")) === "file") return path;
    }
    if (folder === dirname(folder)) return undefined;
  }
}

/** Of a shop that says nothing: the usual sets of drills are taken to be there. */
const BARE_SHOP: ShopSpec = {
  ...DEFAULT_SHOP,
  drills: drillSizes().map(({ name, diameter }) => ({ name, diameter })),
};

/** Fills what the shop file leaves out with the published defaults, and holds the whole against the shop's rules. */
export function fillShop(file: ShopFile): ShopSpec {
  const { losses, limits, press, ...given } = file.shop;
  const shop: ShopSpec = {
    ...BARE_SHOP,
    ...sawOf(file.units),
    ...given,
    losses: { ...DEFAULT_SHOP.losses, ...losses },
    press: { ...DEFAULT_SHOP.press, ...press },
    limits: {
      ...DEFAULT_SHOP.limits,
      ...limits,
      reach: { ...DEFAULT_SHOP.limits.reach, ...limits?.reach },
    },
  };
  const issues = checkShop(shop);
  if (issues.length > 0) throw new FileError(file.fileName, placeIssues(issues, file, file.units));
  return shop;
}

/** Saw of a shop that measures in inches, mm. Basis like that of the metric one: common practice, no source. */
const INCH_SAW = { cutStep: inchesToMm(1 / 4), kerf: inchesToMm(1 / 16) } as const;

/** Saw of a shop that says nothing of it, mm. */
export function sawOf(units: FileUnits): Pick<ShopSpec, "cutStep" | "kerf"> {
  return units === "in" ? INCH_SAW : { cutStep: DEFAULT_SHOP.cutStep, kerf: DEFAULT_SHOP.kerf };
}

function fillTolerances(file: ShopFile | undefined): ToleranceDefaults {
  const { density, ...given } = file?.tolerances ?? {};
  return { ...DEFAULT_TOLERANCES, ...given, ...(density === undefined ? {} : { steelDensity: density }) };
}

function nameOfFile(path: string): string {
  return basename(path).replace(/(?:\.knife)?\.(?:ya?ml|json)$/iu, "") || "knife";
}

/** An order's code as a file name that every system takes. */
function nameOfCode(code: string): string {
  return code.replace(/[^\p{L}\p{N}._-]+/gu, "-").replace(/^[.-]+|[.-]+$/gu, "") || "knife";
}
