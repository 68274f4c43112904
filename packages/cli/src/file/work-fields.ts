import {
  BLADE_TASKS,
  CALENDAR_DEFAULTS,
  clockText,
  HANDLE_TASKS,
  MINUTES_PER_DAY,
  MINUTES_PER_HOUR,
  type RiskyTask,
  WAIT_WORDS,
  type WaitName,
  WEEKDAYS,
} from "@scantling/geometry";
import { type FileUnits, formatTime } from "@scantling/geometry/units";
import { z } from "zod";
import { date, daysOff, timeOfDay } from "./date-fields.js";
import { count, name, plainNumber, quantity, text } from "./fields.js";
import { GROUP } from "./shared-fields.js";
import { bandedHours, hours, taskHours, wholeDays } from "./time-fields.js";

/** Keys of the shop file for time and money. */
export function workFields(units: FileUnits) {
  const share = (about: string, to = 1) =>
    quantity("share", units, { from: 0, to, tolerance: false, about }).optional();
  return z
    .strictObject(
      {
        maker: text("Who makes the offer: name and address, for the head of the customer's sheet").optional(),
        rate: plainNumber("Price of an hour at the bench", 0).optional(),
        overhead: plainNumber("Rent, power, machines and the like, for an hour at the bench", 0).optional(),
        profit: share("On all of the cost", 10),
        waste: share("Of materials, as a share of what they cost"),
        consumables: plainNumber("Belts, gas, glue and oil for one knife", 0).optional(),
        hours: taskHours(units, "Bench hours by task; weld: each weld, oil: each coat").optional(),
        waits: waits(units).optional(),
        coats: count("Coats of oil on a wooden handle", 0, 60).optional(),
        days: z
          .array(z.enum(WEEKDAYS), {
            error: `needs a list of days, such as [${WEEKDAYS.slice(0, 5).join(", ")}]`,
          })
          .min(1, { error: "needs a day to work on" })
          .meta({ description: "Working days" })
          .optional(),
        from: timeOfDay("When a day's work begins").optional(),
        hoursPerDay: hours(units, "Bench time of a day", { from: LEAST_DAY }).optional(),
        daysOff: daysOff("Days off beside the weekly ones").optional(),
        scrap: scrap(units).optional(),
        prices: prices().optional(),
        tax: z
          .strictObject(
            {
              name: name("What the tax is called"),
              rate: quantity("share", units, { from: 0, to: 1, tolerance: false, about: "Its rate" }),
            },
            { error: "needs a group of keys, such as { name: VAT, rate: 19 % }" },
          )
          .meta({ description: "Tax on the price" })
          .optional(),
        deposit: share("Of the price, to be paid when the order is given"),
        validFor: wholeDays(units, "How long an offer holds").optional(),
        terms: text("Terms of the offer, for the customer's sheet").optional(),
        promise: promise(units).optional(),
      },
      { error: GROUP },
    )
    .superRefine(endsByMidnight)
    .meta({ description: "Time and money: what a quote reckons with" });
}

/** A shorter working day is a slip of the pen, s. */
const LEAST_DAY = 900;

/** A day's work is over by midnight, its beginning or its length from the file or as published. */
function endsByMidnight(
  { from, hoursPerDay }: { readonly from?: number | undefined; readonly hoursPerDay?: number | undefined },
  ctx: z.core.$RefinementCtx,
): void {
  const begin = from ?? CALENDAR_DEFAULTS.fromMinute;
  const minutes =
    hoursPerDay === undefined ? CALENDAR_DEFAULTS.minutesPerDay : hoursPerDay * MINUTES_PER_HOUR;
  if (begin + minutes <= MINUTES_PER_DAY) return;
  const message = `is too long: begun at ${clockText(begin)}, ${formatTime(minutes * 60)} of work do not end by midnight`;
  ctx.addIssue({
    code: "custom",
    path: [hoursPerDay === undefined ? "from" : "hoursPerDay"],
    message: hoursPerDay === undefined ? message.replace("too long", "too late") : message,
    params: { code: "working-day-too-long" },
  });
}

/** How long is waited, for each thing that is waited for. */
function waits(units: FileUnits) {
  const each = Object.fromEntries(
    Object.entries(WAIT_WORDS).map(([key, words]) => [
      key,
      bandedHours(
        units,
        `How long to wait for ${words}; its lower limit is the least that will do`,
      ).optional(),
    ]),
  ) as Record<WaitName, z.ZodOptional<ReturnType<typeof bandedHours>>>;
  return z
    .strictObject(each, { error: GROUP })
    .meta({ description: "Waits between tasks, nights and days off counted" });
}

function scrap(units: FileUnits) {
  const chance = () =>
    quantity("share", units, {
      from: 0,
      below: 1,
      usual: "5 %",
      tolerance: false,
      about: "Chance that it fails, each time that it is done",
    }).optional();
  const each = Object.fromEntries(
    [...BLADE_TASKS, ...HANDLE_TASKS].map((task) => [task, chance()]),
  ) as Record<RiskyTask, ReturnType<typeof chance>>;
  return z
    .strictObject(each, { error: GROUP })
    .meta({ description: "Chance that a task fails, so that blade or handle is made anew" });
}

/** What materials cost to buy again. */
function prices() {
  return z
    .array(
      z
        .strictObject(
          {
            of: name("Material, or part as the knife file names it"),
            each: plainNumber("Price of a pair of slabs, a block, or a part", 0).optional(),
            perMetre: plainNumber("Price of a metre of rod for pins", 0).optional(),
          },
          { error: "needs a group of keys, such as { of: European ash, each: 8 }" },
        )
        .refine(({ each, perMetre }) => (each === undefined) !== (perMetre === undefined), {
          error: "needs a price: each, for a pair of slabs or a part, or perMetre, for rod",
          params: { code: "one-price" },
        }),
      { error: "needs a list of prices, such as - { of: European ash, each: 8 }" },
    )
    .meta({ description: "What handle materials and parts cost to buy again" });
}

/** How far off the finished knife may be. */
function promise(units: FileUnits) {
  const within = (kind: "length" | "share", about: string) =>
    quantity(kind, units, { from: 0, tolerance: false, about }).optional();
  return z
    .strictObject(
      {
        length: within("length", "Lengths, either way"),
        height: within("length", "Heights, either way"),
        thickness: within("length", "Thicknesses, either way"),
        mass: within("share", "Mass, either way"),
        balance: within("length", "Balance point, either way"),
      },
      { error: GROUP },
    )
    .meta({ description: "Tolerances on the customer's sheet, where what is reckoned is no wider" });
}

/** Keys of the knife file for its quote. */
export function quoteFields(units: FileUnits) {
  return z
    .strictObject(
      {
        coats: count("Coats of oil on the handle", 0, 60).optional(),
        hours: taskHours(units, "Bench hours of this knife, where they differ from the shop's").optional(),
        sheath: plainNumber("Price of a sheath, its hours with it", 0).optional(),
        post: plainNumber("Packing and post", 0).optional(),
        outsideWork: plainNumber("Work that others do on the blade", 0).optional(),
        price: plainNumber("What you want to ask for all of it, tax with it", 0).optional(),
        checked: date("When rules on materials, sale and post were looked up for this order").optional(),
      },
      { error: GROUP },
    )
    .meta({ description: "What the quote of this knife has beside the shop's own terms" });
}
