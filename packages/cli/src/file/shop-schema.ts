import type { FileUnits } from "@scantling/geometry/units";
import { z } from "zod";
import { barSize, makeBar } from "./bar-size.js";
import { benchFields } from "./drill-fields.js";
import { count, NOT_NEGATIVE, name, POSITIVE, plainNumber, quantity, type Reading } from "./fields.js";
import { findingLimitFields, typeRangeFields } from "./finding-limit-fields.js";
import { forgeLimitFields, forgeShopFields } from "./forge-fields.js";
import { gateFields } from "./gate-fields.js";
import { learnedFields } from "./learned-fields.js";
import { lossFields } from "./loss-fields.js";
import { mixedLimitFields } from "./mixed-limit-fields.js";
import { pressFields } from "./press-fields.js";
import { printerFields } from "./printer-fields.js";
import { recipeFields } from "./recipe-fields.js";
import { allowances, GROUP, unitsField, versionField } from "./shared-fields.js";
import { sheathFields } from "./sheath-fields.js";
import { sheetFields } from "./sheet-fields.js";
import { workFields } from "./work-fields.js";

/**
 * The shop file, declared once like the knife file; the source of `schemas/shop.schema.json`. Every key may be
 * left out: the program's published defaults stand in.
 *
 * @param units - What bare numbers of the file are in.
 */
export function shopSchema(units: FileUnits) {
  const length = (about: string) => quantity("length", units, { ...POSITIVE, tolerance: false, about });
  const share = (about: string) => quantity("share", units, { from: 0, to: 1, tolerance: false, about });
  const ratio = (about: string) => plainNumber(about, 0);
  return z
    .strictObject(
      {
        scantling: versionField().optional(),
        units: unitsField().optional(),
        currency: name("Currency of the prices").optional(),
        cutStep: length("Lengths to cut are rounded up to this").optional(),
        kerf: quantity("length", units, {
          ...NOT_NEGATIVE,
          tolerance: false,
          about: "Width of the saw's cut",
        }).optional(),
        minKeep: length("Shortest leftover that goes back on the rack").optional(),
        rack: z.array(rackBar(), { error: "needs a list of bars, such as - 1/4 x 1 1/2 in" }).optional(),
        losses: lossFields(units).optional(),
        press: pressFields(units).optional(),
        ...forgeShopFields(units),
        ...benchFields(units),
        ...recipeFields(units),
        limits: limits().optional(),
        gates: gateFields(units).optional(),
        allowances: allowances(units).optional(),
        tolerances: tolerances().optional(),
        ...printerFields(units),
        sheets: sheetFields().optional(),
        ...learnedFields(units),
        sheath: sheathFields(units).optional(),
        work: workFields(units).optional(),
      },
      { error: "needs to be a group of keys, such as units, rack, losses" },
    )
    .meta({ title: "Scantling shop file, version 1" });

  function rackBar() {
    const full = z
      .strictObject({
        name: name("What the bar is called; its size by default").optional(),
        size: barSize(units).optional(),
        width: length("Width").optional(),
        thickness: length("Thickness").optional(),
        length: length("Length in hand; left out: as long as needed").optional(),
        count: count("How many of that length", 1, 10_000).optional(),
        steel: name("Steel").optional(),
        price: plainNumber("Price of a kilogram", 0).optional(),
      })
      .transform((given, ctx) => {
        const bar = makeBar(given, units);
        if (typeof bar !== "string") return bar;
        ctx.addIssue({ code: "custom", message: bar, params: { code: "bar-size" } });
        return z.NEVER;
      });
    const short = barSize(units).transform((size) => ({
      name: size.name,
      width: size.width,
      thickness: size.thickness,
    }));
    return z.union([short, full], {
      error: "needs a bar, such as 1/4 x 1 1/2 in, or { size: 6 x 40 mm, length: 1000 }",
    });
  }

  function limits() {
    return z.strictObject(
      {
        maxBars: count("Most bars in a stack", 1, 100).optional(),
        minWeldReduction: share("Least share of its height that a stack loses at welding heat").optional(),
        weldSpreadShare: share("Share of the thinning at welding that goes into width").optional(),
        minBilletLength: length("Shortest billet that can be held").optional(),
        maxSlenderness: ratio("Height over thickness at which a piece on edge buckles").optional(),
        mostNarrowing: share(
          "Most of its height by which a bar that buckles on edge is drawn narrower there",
        ).optional(),
        reach: z
          .strictObject(
            {
              easy: share("Share of the thinning into height that is easy").optional(),
              flatDies: share("The most for flat dies").optional(),
              fullers: share("The most for fullers laid along the bar").optional(),
            },
            { error: GROUP },
          )
          .refine(({ easy, flatDies, fullers }) => rises([easy, flatDies, fullers]), {
            error: "must rise from easy to flatDies to fullers",
            params: { code: "limits-swapped" },
          })
          .optional(),
        forge: forgeLimitFields(units).optional(),
        mixed: mixedLimitFields(units).optional(),
        findings: findingLimitFields(units).optional(),
        types: typeRangeFields(units).optional(),
      },
      { error: GROUP },
    );
  }

  function tolerances() {
    const within = (kind: "length" | "share", about: string) =>
      quantity(kind, units, { ...NOT_NEGATIVE, tolerance: false, about }).optional();
    return z
      .strictObject(
        {
          forgedThickness: within("length", "Thickness left from the hammer, either way"),
          groundThickness: within("length", "Ground thickness, either way"),
          outline: within("length", "Sizes of the outline, either way"),
          density: within("share", "Density of the steel, either way"),
        },
        { error: GROUP },
      )
      .meta({ description: "Tolerances of knife files that give none" });
  }
}

function rises(readings: readonly (Reading | undefined)[]): boolean {
  const given = readings.flatMap((reading) => (reading === undefined ? [] : [reading.value]));
  return given.every((value, index) => index === 0 || value >= (given[index - 1] ?? value));
}
