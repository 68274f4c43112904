import type {
  FindingCode,
  KnifeSpec,
  KnifeTypeName,
  MixedStackSpec,
  SheathSizes,
  StationPlace,
} from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import type { z } from "zod";
import { type Ask, type AskName, type AskTest, isAskName } from "./ask-fields.js";
import { knifeJsonSchema, shopJsonSchema } from "./json-schema.js";
import { knifeSchema } from "./knife-schema.js";
import { laterKnifeChecks } from "./later-checks.js";
import { liftTolerances, type Plain, type SpecTolerance } from "./lift.js";
import type { Position } from "./problem.js";
import { positionFinder, readShape } from "./read-shape.js";
import { remember } from "./remember.js";
import type { quoteFields } from "./work-fields.js";

const schemaFor = remember((units: FileUnits) => knifeSchema(units));

/** What was ordered, as sheets and `check` need it. */
export interface Order {
  /** Empty where the file gives none. */
  readonly code: string;
  /** The file's own name where it gives none. */
  readonly title: string;
  /** What kind of knife it is. */
  readonly type?: KnifeTypeName;
  /** In a fixed order: mass and balance first, then sizes. */
  readonly asks: readonly Ask[];
  readonly customer?: string;
  readonly revision?: string;
  /** Days from 1 January 1970: when work begins or began, and the day that it is promised for. */
  readonly started?: number;
  readonly promised?: number;
  /** HRC; told by tables, not computed. */
  readonly hardness?: { readonly test: AskTest; readonly should: boolean };
}

/** What a knife file says of its quote: hours, money, days from 1 January 1970. */
export type GivenQuote = Plain<z.output<ReturnType<typeof quoteFields>>>;

/** A knife file that was read whole. */
export interface KnifeFile {
  readonly fileName: string;
  readonly order: Order;
  /** What bare numbers of the file are in, and what its owner reads. */
  readonly units: FileUnits;
  /** mm, g, rad. An outline from a drawing is empty until {@link withDrawing} gives it its text. */
  readonly spec: KnifeSpec;
  /** Risks that are taken: codes of findings, and why. */
  readonly accept: Readonly<Partial<Record<FindingCode, string>>>;
  /** What the blade is welded from, where it is of two or more steels. */
  readonly stack: MixedStackSpec | undefined;
  /** What it asks of the sheath, mm. */
  readonly sheath: Partial<SheathSizes>;
  readonly quote: GivenQuote;
  /** The file that the outline is drawn in, as the knife file names it. */
  readonly drawing: string | undefined;
  /** Height of the stop that the blade is pressed to at last, mm; left out where none is told. */
  readonly stop?: number;
  /** Tolerances that the file gives, by path into `spec`. */
  readonly tolerances: readonly SpecTolerance[];
  /** Where a value of the spec stands in the file, by its path; undefined for what the file leaves out. */
  positionOf(path: string): Position | undefined;
}

/**
 * Reads a knife file, YAML or JSON.
 *
 * @param text - The file's text; see {@link decodeFile} for bytes.
 * @param fileName - As messages shall name it.
 * @throws {FileError} with every problem found, in the order of the file.
 */
export function readKnifeFile(text: string, fileName: string): KnifeFile {
  const { data, tree, units } = readShape(text, fileName, {
    schemaFor,
    explained: () => ({
      schema: knifeJsonSchema(),
      other: { schema: shopJsonSchema(), called: "the shop file" },
    }),
    otherKind: (keys) =>
      !keys.has("blade") && !keys.has("tang") && (keys.has("rack") || keys.has("losses"))
        ? { code: "is-shop-file", message: "this is a shop file: it has bars or losses, and no blade" }
        : undefined,
    later: (failure) => laterKnifeChecks(failure, schemaFor),
  });
  const {
    scantling: _version,
    units: _units,
    order = {},
    stack,
    accept,
    sheath = {},
    quote = {},
    forging,
    ...rest
  } = data;
  const { stop, ...heats } = forging ?? {};
  const knife = { ...rest, ...(forging === undefined ? {} : { forging: heats }) };
  const { plain: spec, tolerances } = liftTolerances(knife);
  const { outline } = spec.blade;
  const file: KnifeFile = {
    fileName,
    order: {
      code: order.code ?? "",
      title: order.title ?? titleOf(fileName),
      ...(order.type === undefined ? {} : { type: order.type }),
      asks: listAsks(order.asks ?? {}),
      ...given(order, ["customer", "revision", "started", "promised"]),
      ...(order.asks?.hardness === undefined ? {} : { hardness: order.asks.hardness }),
    },
    units,
    spec,
    accept: liftTolerances(accept ?? {}).plain,
    stack,
    sheath: liftTolerances(sheath).plain,
    quote: liftTolerances(quote).plain,
    ...(stop === undefined ? {} : { stop: stop.value }),
    drawing: "drawing" in outline ? outline.drawing : undefined,
    tolerances,
    positionOf: positionFinder(tree),
  };
  return withDrawing(file, "");
}

/** Those of some keys that have a value. */
function given<T extends object, K extends keyof T>(
  group: T,
  keys: readonly K[],
): { [Key in K]?: Exclude<T[Key], undefined> } {
  const entries = keys.map((key) => [key, group[key]] as const).filter(([, value]) => value !== undefined);
  return Object.fromEntries(entries) as { [Key in K]?: Exclude<T[Key], undefined> };
}

/** The same file with the text of its drawing; one without a drawing stays as it is. */
export function withDrawing(file: KnifeFile, svg: string): KnifeFile {
  const { blade } = file.spec;
  if (!("drawing" in blade.outline)) return file;
  return {
    ...file,
    spec: { ...file.spec, blade: { ...blade, outline: { ...blade.outline, drawing: svg } } },
  };
}

interface GivenAsk {
  readonly test: AskTest;
  readonly should: boolean;
  readonly at?: StationPlace;
  readonly up?: number;
}

function listAsks(
  asks: Partial<Record<AskName | "hardness", GivenAsk | readonly GivenAsk[] | undefined>>,
): Ask[] {
  return Object.keys(asks)
    .filter(isAskName)
    .flatMap((name): Ask[] => {
      const given = asks[name];
      if (given === undefined) return [];
      const path = `order.asks.${name}`;
      return "test" in given
        ? [{ name, ...given, path }]
        : given.map((ask, i) => ({ name, ...ask, path: `${path}[${i}]` }));
    });
}

/** `orders/harvest.knife.yaml` → `harvest`. */
function titleOf(fileName: string): string {
  const base = fileName.split(/[\\/]/u).at(-1) ?? fileName;
  return base.replace(/(?:\.knife)?\.(?:ya?ml|json)$/iu, "");
}
