import {
  alternateBars,
  type Banded,
  type BarSection,
  type GrooveSpec,
  type MixedStackSpec,
  type NamedMaterial,
  type RestackSpec,
} from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import { z } from "zod";
import { barSize } from "./bar-size.js";
import { count, NOT_NEGATIVE, POSITIVE, quantity, type Reading } from "./fields.js";
import { material } from "./material-fields.js";

/** The stack that a blade of two or more steels is made from: a core with cladding, or layers that are restacked. */
export function stackFields(units: FileUnits) {
  return z
    .union([cladding(units), patternWelded(units)], {
      error:
        "needs core and cladding, or the bars that lie in turn (alternate) and how often it is restacked",
    })
    .meta({ description: "Bars of two or more steels that are welded: a core with cladding, or layers" });
}

function cladding(units: FileUnits) {
  return z
    .strictObject({
      core: bar(units, "Bar of edge steel in the middle"),
      cladding: bar(units, "Bar on each side of the core (jacket)"),
      ...shared(units),
    })
    .transform(({ core, cladding, ...given }): MixedStackSpec => {
      return { kind: "clad", core, cladding, ...plainShared(given) };
    });
}

function patternWelded(units: FileUnits) {
  const alternating = z
    .strictObject(
      { ...barFields(units), count: count("How many of them", 1, 200) },
      { error: "needs steel, thickness and count" },
    )
    .transform(({ steel, thickness, count }) => ({ ...plainBar({ steel, thickness }), count }));
  const grooves = z.union([grooveShare(units), grooveSizes(units)], {
    error: "needs a share such as { share: 8 % }, or { depth: 2, width: 4, pitch: 12 }",
  });
  return z
    .strictObject({
      alternate: z
        .array(alternating, {
          error: "needs a list of bars, such as - { steel: 1084, thickness: 3, count: 7 }",
        })
        .min(2, { error: "needs two kinds of bar or more" })
        .meta({ description: "Kinds of bar that lie in turn; that of which there are most begins" })
        .optional(),
      layers: z
        .array(bar(units, "A bar of the stack"), { error: "needs a list of bars" })
        .min(2, { error: "needs two bars or more" })
        .meta({ description: "Instead of alternate: every bar by itself, from bottom to top" })
        .optional(),
      restacks: z
        .array(restack(units), { error: "needs a list of counts, such as [4, 4]" })
        .meta({
          description: "Into how many pieces the billet is cut each time, to be stacked and welded anew",
        })
        .optional(),
      grooves: grooves
        .meta({ description: "Ground across the last bar before it is forged flat" })
        .optional(),
      ...shared(units),
    })
    .transform(({ alternate, layers, restacks = [], grooves, ...given }, ctx): MixedStackSpec => {
      const complain = (code: string, message: string, path: string[] = []): never => {
        ctx.addIssue({ code: "custom", message, path, params: { code } });
        return z.NEVER;
      };
      if ((alternate === undefined) === (layers === undefined)) {
        return complain("one-of", "needs either alternate or layers");
      }
      const bars = layers ?? alternateBars(alternate ?? []);
      if (bars === undefined) {
        return complain(
          "not-in-turn",
          "cannot lie in turn: the counts may differ by one; write layers, bar by bar",
          ["alternate"],
        );
      }
      return {
        kind: "pattern-welded",
        layers: bars,
        restacks,
        ...(grooves === undefined ? {} : { grooves }),
        ...plainShared(given),
      };
    });
}

const barFields = (units: FileUnits) => ({
  steel: material(units, "Steel of the bar"),
  thickness: plainLength(units, "Thickness as bought"),
});

function bar(units: FileUnits, about: string) {
  return z
    .strictObject(barFields(units), { error: "needs steel and thickness, { steel: 1095, thickness: 2.5 }" })
    .transform(plainBar)
    .meta({ description: about });
}

function plainBar({
  steel,
  thickness,
}: {
  steel: { name: string; density?: Reading | undefined };
  thickness: number;
}) {
  const { name, density } = steel;
  const named: NamedMaterial = { name, ...(density === undefined ? {} : { density: density.value }) };
  return { steel: named, thickness };
}

function plainLength(units: FileUnits, about: string) {
  const description = `${about} (length)`;
  return quantity("length", units, { ...POSITIVE, tolerance: false, about })
    .transform(({ value }) => value)
    .meta({ description });
}

/** Keys that both forms have. */
function shared(units: FileUnits) {
  const share = quantity("share", units, {
    above: 0,
    to: 1,
    usual: "85 %",
    about: "Steel that is left after a weld",
  }).transform(({ value, plus, minus }): Banded => {
    // The cautious side of a yield is the lower one.
    return { value, low: Math.min(1, value + plus), high: value - minus };
  });
  return {
    width: plainLength(units, "Width of the bars"),
    yield: z
      .union([share.transform((one) => [one]), z.array(share).min(1)], {
        error: "needs a share such as 85 %, or a list with one for each weld",
      })
      .meta({
        description: "What a weld leaves of the steel, all its losses together; else the shop's losses",
      })
      .optional(),
    cleaning: quantity("length", units, {
      ...NOT_NEGATIVE,
      about: "Depth ground off each face of a joint; else the shop's",
    })
      .transform(({ value, plus, minus }): Banded => ({ value, low: value - minus, high: value + plus }))
      .optional(),
    lastBar: section(units)
      .meta({ description: "Section of the bar that is forged to the blade" })
      .optional(),
  };
}

interface GivenShared {
  readonly width: number;
  readonly yield?: readonly Banded[] | undefined;
  readonly cleaning?: Banded | undefined;
  readonly lastBar?: BarSection | undefined;
}

function plainShared({ width, yield: yields, cleaning, lastBar }: GivenShared) {
  return {
    width,
    ...(yields === undefined ? {} : { yields }),
    ...(cleaning === undefined ? {} : { cleaning }),
    ...(lastBar === undefined ? {} : { lastBar }),
  };
}

function section(units: FileUnits) {
  return barSize(units).transform(({ width, thickness }): BarSection => ({ width, thickness }));
}

function restack(units: FileUnits) {
  const pieces = count("Pieces", 2, 100);
  const full = z
    .strictObject({
      pieces,
      bar: section(units)
        .meta({ description: "Section that the billet is drawn to before it is cut" })
        .optional(),
    })
    .transform(({ pieces, bar }): RestackSpec => ({ pieces, ...(bar === undefined ? {} : { bar }) }));
  return z.union([pieces.transform((one): RestackSpec => ({ pieces: one })), full], {
    error: "needs a number of pieces, such as 4, or { pieces: 4, bar: 7 x 45 mm }",
  });
}

function grooveShare(units: FileUnits) {
  return z
    .strictObject({
      share: quantity("share", units, {
        ...NOT_NEGATIVE,
        below: 1,
        tolerance: false,
        about: "Share of the bar that the grooves take",
      }),
    })
    .transform(({ share }): GrooveSpec => ({ share: share.value }));
}

function grooveSizes(units: FileUnits) {
  return z
    .strictObject({
      form: z
        .enum(["round", "vee", "square"])
        .meta({ description: "Form of a groove; round unless given" })
        .optional(),
      depth: plainLength(units, "Depth of a groove"),
      width: plainLength(units, "Width of a groove at the face"),
      pitch: plainLength(units, "From one groove to the next on the same face").optional(),
      faces: count("Faces that are grooved", 1, 2).optional(),
      count: count("Number of grooves on both faces together, instead of pitch", 1, 1000).optional(),
    })
    .transform(({ form = "round", depth, width, pitch, faces = 2, count }, ctx): GrooveSpec => {
      if (pitch !== undefined && count === undefined) {
        return { form, depth, width, pitch, faces: faces === 1 ? 1 : 2 };
      }
      if (count !== undefined && pitch === undefined) return { form, depth, width, count };
      ctx.addIssue({
        code: "custom",
        message: "needs either pitch or count",
        params: { code: "one-of" },
      });
      return z.NEVER;
    });
}
