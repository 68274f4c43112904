import type { KnifeSpec, MixedStackSpec, StationPlace } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import { ASK_KINDS, type Ask, type AskName, type AskTest } from "./ask-fields.js";
import { knifeJsonSchema, shopJsonSchema } from "./json-schema.js";
import { knifeSchema } from "./knife-schema.js";
import { laterKnifeChecks } from "./later-checks.js";
import { liftTolerances, type SpecTolerance } from "./lift.js";
import type { Position } from "./problem.js";
import { positionFinder, readShape } from "./read-shape.js";
import { remember } from "./remember.js";

const schemaFor = remember((units: FileUnits) => knifeSchema(units));

/** What was ordered, as sheets and `check` need it. */
export interface Order {
  /** Empty where the file gives none. */
  readonly code: string;
  /** The file's own name where it gives none. */
  readonly title: string;
  /** In a fixed order: mass and balance first, then sizes. */
  readonly asks: readonly Ask[];
}

/** A knife file that was read whole. */
export interface KnifeFile {
  readonly fileName: string;
  readonly order: Order;
  /** What bare numbers of the file are in, and what its owner reads. */
  readonly units: FileUnits;
  /** mm, g, rad. An outline from a drawing is empty until {@link withDrawing} gives it its text. */
  readonly spec: KnifeSpec;
  /** What the blade is welded from, where it is of two or more steels. */
  readonly stack: MixedStackSpec | undefined;
  /** The file that the outline is drawn in, as the knife file names it. */
  readonly drawing: string | undefined;
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
  const { scantling: _version, units: _units, order = {}, stack, ...knife } = data;
  const { plain: spec, tolerances } = liftTolerances(knife);
  const { outline } = spec.blade;
  const file: KnifeFile = {
    fileName,
    order: {
      code: order.code ?? "",
      title: order.title ?? titleOf(fileName),
      asks: listAsks(order.asks ?? {}),
    },
    units,
    spec,
    stack,
    drawing: "drawing" in outline ? outline.drawing : undefined,
    tolerances,
    positionOf: positionFinder(tree),
  };
  return withDrawing(file, "");
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
}

function listAsks(asks: Partial<Record<AskName, GivenAsk | undefined>>): Ask[] {
  const isName = (name: string): name is AskName => Object.hasOwn(ASK_KINDS, name);
  return Object.keys(asks)
    .filter(isName)
    .flatMap((name) => {
      const ask = asks[name];
      return ask === undefined ? [] : [{ name, ...ask, path: `order.asks.${name}` }];
    });
}

/** `orders/harvest.knife.yaml` → `harvest`. */
function titleOf(fileName: string): string {
  const base = fileName.split(/[\\/]/u).at(-1) ?? fileName;
  return base.replace(/(?:\.knife)?\.(?:ya?ml|json)$/iu, "");
}
