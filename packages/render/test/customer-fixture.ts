import fc from "fast-check";
import type { CustomerModel } from "../src/models/customer-model.js";
import type { PatternModel } from "../src/models/pattern-model.js";
import { randomModel } from "./random-model.js";

/** A customer's sheet of a knife, with every part that it can have. */
export const customerOf = (pattern: PatternModel, more: Partial<CustomerModel> = {}): CustomerModel => ({
  code: pattern.code,
  title: pattern.title,
  revision: "A",
  maker: ["The forge of this example", "1 Anvil Lane"],
  customer: ["The customer of this example"],
  date: "28 Nov 2026",
  validUntil: "28 Dec 2026",
  figures: [
    {
      what: "Overall length",
      value: '363 mm (14 19/64")',
      within: "361 mm to 365 mm",
      asked: "below 370 mm",
    },
    { what: "Balance", value: "58 mm ahead of the heel", asked: "45 mm to 50 mm", differs: true },
  ],
  materials: [{ what: "Steel", value: pattern.steel }],
  price: [
    { what: "Knife", amount: "1000.00 EUR" },
    { what: "Total", amount: "1190.00 EUR", strong: true },
  ],
  ready: "Ready to be posted on Sun 20 Dec 2026.",
  terms: ["The offer holds until 28 Dec 2026."],
  cautions: ["The knife is sharp."],
  view: { pattern, seen: [pattern.outline.segments], inside: [], handle: [] },
  sections: [],
  ...more,
});

/** Texts that a file could carry, hostile ones among them. */
const texts = fc.array(
  fc.oneof(
    fc.string({ unit: "grapheme", maxLength: 200 }),
    fc.constantFrom('<script>alert("1")</script>', "W".repeat(300), "a & b", "\u202egnp.exe", "]]>"),
  ),
  { maxLength: 5 },
);

/** Customers' sheets of all kinds of knives. */
export const randomCustomer: fc.Arbitrary<CustomerModel> = fc
  .record({ pattern: randomModel, words: texts, revision: fc.constantFrom("A", "B", "12") })
  .map(({ pattern: { further: _, mirror: __, ...pattern }, words, revision }) =>
    customerOf(pattern, {
      revision,
      maker: words,
      customer: words,
      terms: words,
      materials: words.map((value) => ({ what: value, value })),
      price: words.map((what) => ({ what, amount: "12.00 EUR" })),
      figures: words.map((what) => ({ what, value: what, within: what, asked: what })),
    }),
  );
