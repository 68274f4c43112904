import type { FileUnits } from "@scantling/geometry/units";
import { z } from "zod";
import { NOT_NEGATIVE, quantity } from "./fields.js";

/** The version of the keys that this program reads, in knife files and shop files alike. */
export const FILE_VERSION = 1;

/** What an entry that holds keys needs, where no example says it better. */
export const GROUP = "needs a group of keys";

export function versionField() {
  return z
    .literal(FILE_VERSION, { error: `needs ${FILE_VERSION}, the version of the file` })
    .meta({ description: "Version of this file's keys" });
}

export function unitsField() {
  return z
    .enum(["mm", "in"], { error: "needs mm or in, for the numbers without a unit" })
    .meta({ description: "What bare numbers are in" });
}

export function betweenField() {
  return z.enum(["straight", "smooth"]).meta({ description: "How the size runs between stations" });
}

/** What is still on the steel at earlier stages; the same keys in a knife file and a shop file. */
export function allowances(units: FileUnits) {
  const length = (about: string) => quantity("length", units, { ...NOT_NEGATIVE, about }).optional();
  return z
    .strictObject(
      {
        face: length("Steel per side over the ready-to-harden body on ground faces"),
        outline: length("Steel outside the outline along edge and spine"),
        tip: length("Length added at the tip"),
        butt: length("Length added at the butt"),
        forgedEdge: length("Edge thickness as hammered"),
        forgedBevel: z
          .enum(["line", "full", "none"])
          .meta({ description: "Bevels hammered to the bevel line, to the spine, or not at all" })
          .optional(),
        afterHardening: length("Steel per ground face left for grinding after hardening"),
        minEdge: length("Least edge thickness for hardening"),
        tang: z
          .enum(["tapered", "parallel"])
          .meta({ description: "Whether the tang's taper is hammered in or ground" })
          .optional(),
      },
      { error: GROUP },
    )
    .meta({ description: "What is still on the steel before it is finished" });
}
