import type { FileUnits } from "@scantling/geometry/units";
import { z } from "zod";
import { name, POSITIVE, quantity } from "./fields.js";
import { showText } from "./problem.js";

/**
 * An outline by its runs: as path data, or with a drawing as ids of its elements. They are one form to whoever reads the
 * file, so that a mistake in one is not explained by the rules of the other.
 */
export function runsOutline(units: FileUnits) {
  const run = (about: string) =>
    z
      .union([z.string().min(1), z.number()], { error: RUN })
      .meta({ description: `${about}: SVG path data, mm, y up; with a drawing, the id of its element` });
  return z
    .strictObject({
      runs: z.strictObject(
        {
          edge: run("Heel to tip"),
          front: run("Tip to spine, of a square front").optional(),
          spine: run("Front or tip to handle front").optional(),
          tangTop: run("Handle front to butt").optional(),
          butt: run("Around the butt").optional(),
          tangBottom: run("Butt to handle front").optional(),
          heelFace: run("Back to the heel").optional(),
        },
        { error: "needs a group of keys: edge, spine, …" },
      ),
      drawing: drawingFile().optional(),
      path: closedPath(),
      corners: corners().optional(),
      scale: scale(units),
    })
    .transform(({ runs, drawing, ...rest }, ctx) => {
      const text = Object.fromEntries(
        Object.entries(runs).map(([key, value]) => [key, value === undefined ? undefined : String(value)]),
      ) as { edge: string } & Partial<Record<Exclude<keyof typeof runs, "edge">, string>>;
      if (drawing !== undefined) return { drawing, runs: text, ...rest };
      const complain = (path: string[], message: string, code: string): void => {
        ctx.addIssue({ code: "custom", path, message, params: { code } });
      };
      for (const [key, value] of Object.entries(runs)) {
        if (typeof value === "number") complain(["runs", key], RUN, "wrong-type");
      }
      for (const [key, value] of Object.entries(rest)) {
        if (value !== undefined)
          complain([key], "goes with a drawing only: drawing: sketch.svg", "drawing-missing");
      }
      return { runs: text };
    });
}

const RUN = 'needs SVG path data in quotes, such as "M0 0 L200 0"';

/** An outline that is one closed path of a drawing, cut at its corners. */
export function cornersOutline(units: FileUnits) {
  return z.strictObject({
    drawing: drawingFile(),
    path: closedPath(),
    corners: corners(),
    scale: scale(units),
  });
}

function closedPath() {
  return name("Id of the closed path that is cut at corners; needed where there are several").optional();
}

function corners() {
  return z
    .strictObject(
      {
        heel: drawingPoint("Rear end of the edge"),
        tip: drawingPoint("Front end of the edge"),
        spineStart: drawingPoint("Where a square front meets the spine").optional(),
        handleTop: drawingPoint("Where the spine ends and the tang begins"),
        buttTop: drawingPoint("Where the tang's top ends"),
        buttBottom: drawingPoint("Where the tang's bottom begins"),
        handleBottom: drawingPoint("Where the tang's bottom ends"),
      },
      {
        error:
          "needs a group of points: heel, tip, handleTop, buttTop, buttBottom, handleBottom, each [x, y]",
      },
    )
    .meta({ description: "Points of a drawing at which its path is cut into runs" });
}

function scale(units: FileUnits) {
  return z
    .strictObject(
      {
        from: drawingPoint("One point"),
        to: drawingPoint("Another point"),
        is: quantity("length", units, { ...POSITIVE, about: "Their distance on the knife" }),
      },
      { error: "needs two points and their distance: { from: [x, y], to: [x, y], is: 200 mm }" },
    )
    .meta({ description: "Two points of a drawing and their distance, where it has no real size" })
    .optional();
}

function drawingFile() {
  return name("SVG file, from the folder of this file").transform((text, ctx) => {
    if (/^[a-z][a-z\d+.-]+:\/\//iu.test(text)) {
      ctx.addIssue({
        code: "custom",
        message: `"${showText(text)}" is an address; save the drawing beside this file and write its name`,
        params: { code: "drawing-address" },
      });
    }
    return text;
  });
}

/** `[x, y]` in the drawing's own coordinates. */
function drawingPoint(about: string) {
  return z
    .tuple([coordinate("x, to the right"), coordinate("y, down the page")], {
      error: "needs two numbers of the drawing, [x, y], as the editor shows them",
    })
    .transform(([x, y]) => ({ x, y }))
    .meta({ description: `${about}, in the drawing's own coordinates` });
}

function coordinate(about: string) {
  return z
    .union([z.number(), z.string()], { error: "needs a plain number" })
    .transform((raw, ctx) => {
      const plain = typeof raw === "number" || /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)$/u.test(raw.trim());
      const value = plain ? Number(raw) : Number.NaN;
      if (!Number.isFinite(value)) {
        ctx.addIssue({
          code: "custom",
          message: `"${showText(String(raw))}" is not a plain number; coordinates of a drawing have no unit`,
          params: { code: "not-a-number" },
        });
      }
      return value;
    })
    .meta({ description: about });
}
