import {
  DRILL_SETS,
  type DrillSetName,
  drillSizes,
  type FileUnits,
  findDrill,
} from "@scantling/geometry/units";
import { z } from "zod";
import { count, name, POSITIVE, quantity, Reading, readQuantity } from "./fields.js";
import { showText } from "./problem.js";

/** The largest drill that a knife is drilled with, mm. */
const LARGEST = 50;

/** What a drill is called and its diameter, mm. */
export interface GivenDrill {
  readonly name: string;
  readonly diameter: number;
}

const isSet = (text: string): text is DrillSetName => DRILL_SETS.some((set) => set === text);

/** Tools of the bench: drills, wheels, wedges, the lever of the bevel jig. */
export function benchFields(units: FileUnits) {
  const length = (about: string) => quantity("length", units, { ...POSITIVE, tolerance: false, about });
  return {
    drills: drills(units).optional(),
    wheels: z
      .array(length("Diameter"), { error: "needs a list of diameters, such as [200, 250]" })
      .meta({ description: "Diameters of the wheels that hollow faces are ground on" })
      .optional(),
    wedges: z
      .array(
        quantity("angle", units, {
          above: 0,
          below: Math.PI / 2,
          tolerance: false,
          usual: "11 deg",
          about: "Angle of a wedge",
        }),
        { error: "needs a list of angles, such as [11 deg, 20 deg]" },
      )
      .meta({ description: "Angle wedges; any of them together, adding or subtracting" })
      .optional(),
    jigLever: length("From the edge to where a shim lifts the bevel jig").optional(),
    handleStock: z
      .array(
        z.strictObject(
          {
            material: name("What it is of"),
            length: length("Along the handle"),
            height: length("Height, or width of a block"),
            thickness: length("Thickness of a slab, or of a block"),
            count: count("How many alike", 1, 1000).optional(),
          },
          { error: "needs a group of keys: material, length, height, thickness" },
        ),
        {
          error:
            "needs a list of pieces, such as - { material: walnut, length: 130, height: 40, thickness: 10, count: 2 }",
        },
      )
      .meta({ description: "Pieces for handles on the shelf" })
      .optional(),
  };
}

/** Sets by name, single drills by name or size. */
function drills(units: FileUnits) {
  const one = z
    .union([z.number(), z.string()], {
      error:
        'needs a set (number, letter, fraction, metric), a drill such as "#30" or F, or a size such as 1/8 in',
    })
    .transform((raw, ctx): GivenDrill[] => {
      const text = String(raw).trim();
      const word = text.toLowerCase();
      if (isSet(word)) return drillSizes([word]).map(({ name, diameter }) => ({ name, diameter }));
      const known = typeof raw === "string" ? findDrill(text) : undefined;
      if (known !== undefined) return [{ name: known.name, diameter: known.diameter }];
      if (typeof raw === "string" && /^[a-z#]/iu.test(text)) {
        ctx.addIssue({
          code: "custom",
          message: `"${showText(text)}" is no set and no drill; write number, letter, fraction or metric, a drill such as "#30" or F, or a size such as 1/8 in`,
          params: { code: "unknown-drill" },
        });
        return z.NEVER;
      }
      const rule = { above: 0, to: LARGEST, tolerance: false, usual: "1/8 in", about: "Diameter of a drill" };
      const size = readQuantity(raw, "length", units, rule, (code, message) =>
        ctx.addIssue({ code: "custom", message, params: { code } }),
      );
      if (!(size instanceof Reading)) return z.NEVER;
      return [{ name: /[a-z"″]/iu.test(text) ? text : `${text} ${units}`, diameter: size.value }];
    })
    .meta({ description: 'A set (number, letter, fraction, metric), a drill ("#30", F), or a size' });
  return z
    .array(one, { error: "needs a list, such as [number, fraction]" })
    .transform((entries) => withoutDoubles(entries.flat()))
    .meta({ description: "Drills in hand; left out: number, letter, fraction and metric sets" });
}

function withoutDoubles(all: readonly GivenDrill[]): GivenDrill[] {
  return all
    .filter(({ name }, i) => all.findIndex((other) => other.name === name) === i)
    .sort((a, b) => a.diameter - b.diameter);
}
