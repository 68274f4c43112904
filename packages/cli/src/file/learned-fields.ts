import { type Banded, FIGURE_PATHS, type FigurePath, figureOf } from "@scantling/geometry";
import { type FileUnits, parseQuantity } from "@scantling/geometry/units";
import { z } from "zod";
import { count } from "./fields.js";
import { showText } from "./problem.js";

/** What stood in the shop file before `learn` changed it, so that records are counted once however often it is run. */
export interface LearnedEntry {
  /** Left out where the shop had no such figure. */
  readonly was?: Banded;
  readonly is: Banded;
  /** Records that are in it. */
  readonly jobs: number;
}

/** The key `learned` of the shop file: by the path of the figure that was changed. */
export function learnedFields(units: FileUnits) {
  const written = (about: string) =>
    z
      .union([z.string(), z.number()], { error: "needs the figure as it is written in its place" })
      .meta({ description: about });
  const entry = z.strictObject(
    {
      was: written("As it stood before anything was learnt; left out where nothing did").optional(),
      is: written("As it was written"),
      jobs: count("Records that it was learnt from", 1, 1_000_000),
    },
    { error: "needs a group of keys: { was: …, is: …, jobs: … }" },
  );
  return {
    learned: z
      .partialRecord(z.enum(FIGURE_PATHS), entry, {
        error: "needs figures by their path, such as losses.scalePerHeat: { was: … }",
      })
      .transform((given, ctx) => {
        const read = Object.entries(given).map(([path, { was, is, jobs }]) => {
          const figure = (key: "was" | "is", raw: string | number): Banded => {
            const found = readFigure(raw, path as FigurePath, units);
            if (found !== undefined) return found;
            const message = `"${showText(String(raw))}" cannot be read as a figure of ${path}`;
            ctx.addIssue({
              code: "custom",
              message,
              path: [path, key],
              params: { code: "figure-unreadable" },
            });
            return z.NEVER;
          };
          const before = was === undefined ? {} : { was: figure("was", was) };
          return [path, { ...before, is: figure("is", is), jobs }] as const;
        });
        return Object.fromEntries(read) as Partial<Record<FigurePath, LearnedEntry>>;
      })
      .meta({ description: "Written by scantling learn: what stood in the file before, and what it became" })
      .optional(),
  };
}

/** `3.5 h +1/-0.5 h`, the forms that are written. */
const HOURS = /^([\d.]+)\s*h(?:\s*±\s*([\d.]+)\s*h|\s*\+([\d.]+)\/-([\d.]+)\s*h)?$/u;

function readFigure(raw: string | number, path: FigurePath, units: FileUnits): Banded | undefined {
  const { quantity } = figureOf(path);
  if (quantity === "hours") {
    const [, value, both, plus, minus] = HOURS.exec(String(raw)) ?? [];
    return value === undefined
      ? undefined
      : banded(Number(value), Number(plus ?? both ?? 0), Number(minus ?? both ?? 0));
  }
  const parsed = parseQuantity(raw, quantity === "share" ? "share" : "length", units);
  if (!parsed.ok) return undefined;
  const { value, plus, minus } = parsed.quantity;
  return banded(value, plus, minus);
}

const banded = (value: number, plus: number, minus: number): Banded => ({
  value,
  low: value - minus,
  high: value + plus,
});
