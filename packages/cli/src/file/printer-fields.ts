import type { FileUnits } from "@scantling/geometry/units";
import { z } from "zod";
import { PAPER_EXAMPLES, type PaperGiven, readPaper } from "./paper-words.js";
import { showText } from "./problem.js";

/** By how much more than true size pages are written for a printer, on one paper, along either side of it. */
export interface PrinterEntry {
  readonly paper: PaperGiven;
  readonly shortSide: number;
  readonly longSide: number;
}

/** The factors that are taken: a printer that is farther off was told to scale the page. */
export const PRINTER_FACTOR = { from: 0.9, to: 1.1 } as const;

const COMMAND = "scantling calibrate";

/** Keys of the shop file for what sheets are printed on and with. */
export function printerFields(units: FileUnits) {
  const entry = z.strictObject(
    {
      paper: paper("Paper that was measured"),
      shortSide: factor("What a bar along the short side of the paper should measure, over what it does"),
      longSide: factor("The same along the long side"),
    },
    {
      error:
        "needs paper, shortSide and longSide, such as { paper: a4, shortSide: 1.0022, longSide: 0.9988 }",
    },
  );
  return {
    paper: paper("What sheets are printed on; A4, or Letter in a shop that measures in inches").optional(),
    printer: z
      .array(entry, { error: "needs a list, such as - { paper: a4, shortSide: 1.0022, longSide: 0.9988 }" })
      .superRefine(onceEach)
      .meta({ description: `How the printer is set right, paper by paper; written by ${COMMAND}` })
      .optional(),
  };

  function paper(about: string) {
    return z
      .string({ error: `needs a paper, such as ${PAPER_EXAMPLES}` })
      .transform((text, ctx) => {
        const complain = (code: string, message: string): void => {
          ctx.addIssue({ code: "custom", message, params: { code } });
        };
        return readPaper(text, units, complain) ?? z.NEVER;
      })
      .meta({ description: `${about} (${PAPER_EXAMPLES})` });
  }
}

function factor(about: string) {
  const { from, to } = PRINTER_FACTOR;
  return z
    .union([z.number(), z.string()], { error: "needs a number, such as 1.0022" })
    .transform((raw, ctx) => {
      const value = typeof raw === "number" ? raw : Number(/^[\d.]+$/u.test(raw.trim()) ? raw : Number.NaN);
      const complain = (code: string, message: string): void => {
        ctx.addIssue({ code: "custom", message: `"${showText(String(raw))}" ${message}`, params: { code } });
      };
      if (!Number.isFinite(value)) complain("not-a-number", "is not a number");
      else if (value < from || value > to)
        complain("out-of-range", `must be from ${from} to ${to}; measure again with ${COMMAND}`);
      return value;
    })
    .meta({ description: `${about} (${from} to ${to})` });
}

/** Of two entries for one paper nobody could tell which holds. */
function onceEach(entries: readonly PrinterEntry[], ctx: z.core.$RefinementCtx<PrinterEntry[]>): void {
  for (const [index, { paper }] of entries.entries()) {
    const first = entries.findIndex((entry) => keyOf(entry.paper) === keyOf(paper));
    if (first === index) continue;
    ctx.addIssue({
      code: "custom",
      path: [index, "paper"],
      message: "is in the list twice; keep the entry that was measured last",
      params: { code: "paper-twice" },
    });
  }
}

const keyOf = (paper: PaperGiven): string =>
  "name" in paper ? paper.name : [paper.width, paper.height].sort((a, b) => a - b).join("x");
