import { type AskedPrice, handleStock } from "@scantling/geometry";
import { formatNumber } from "@scantling/geometry/units";
import type { CustomerAmount, CustomerLine, CustomerModel, SectionStation } from "@scantling/render";
import { inFileTerms, type Measured } from "../measure.js";
import type { Quote } from "../quote/quote.js";
import { money } from "../quote/quote-findings.js";
import { dateWords, plainDate } from "../report/dates.js";
import { customerFigures } from "./customer/figures.js";
import { customerView } from "./customer/view.js";
import { sectionPlaces } from "./section-places.js";
import { sectionStations } from "./sections-model.js";

/** The first revision of a drawing that says none. */
const FIRST_REVISION = "A";

/** Where a customer is told to take care. */
const CAUTIONS: readonly string[] = [
  "The knife is sharp. Cut away from yourself, cover the edge when it is not in use, keep it from children.",
  "Wash it by hand, dry it at once, never in a dishwasher. Steel that is not stainless rusts and colours: keep it oiled.",
  "For food: go by what the data sheets of steel, handle, glue and oil say, and by the rules where you live.",
  "Rules on buying, carrying and posting knives differ, and proof of age may be asked for: check those where you live.",
];

/** What the customer gets: all that is agreed, and nothing of how the knife is made or what that costs. */
export function makeCustomerModel(quote: Quote): CustomerModel {
  const { measured, madeDay, validDay, terms } = quote;
  const { job, knife } = measured;
  const { order } = job.knife;
  const work = job.shopPlaces?.work ?? {};
  const stock = inFileTerms(job, () => handleStock(knife, job.shop.kerf));
  return {
    code: order.code,
    title: order.title,
    revision: order.revision ?? FIRST_REVISION,
    maker: linesOf(work.maker),
    customer: linesOf(order.customer),
    date: plainDate(madeDay),
    ...(validDay === undefined ? {} : { validUntil: plainDate(validDay) }),
    figures: customerFigures(quote),
    materials: materialsOf(quote),
    price: quote.offered === undefined ? [] : priceRows(quote.offered, quote),
    ready: readyWords(quote),
    terms: [
      ...(validDay === undefined ? [] : [`The offer holds until ${plainDate(validDay)}.`]),
      ...(quote.depositMinor === undefined
        ? []
        : [`With the order: ${money(quote.depositMinor, terms)}; the rest before the knife is posted.`]),
      ...linesOf(work.terms),
    ],
    cautions: CAUTIONS,
    view: customerView(measured, stock),
    sections: sectionsOf(measured),
  };
}

const linesOf = (text: string | undefined): string[] =>
  (text ?? "")
    .split(/\r?\n/u)
    .map((line) => line.trim())
    .filter((line) => line !== "");

function priceRows(
  { knifeMinor, sheathMinor, postMinor, taxMinor, totalMinor }: AskedPrice,
  { terms }: Quote,
): CustomerAmount[] {
  const row = (what: string, minor: number): CustomerAmount => ({ what, amount: money(minor, terms) });
  const some = (what: string, minor: number): CustomerAmount[] => (minor === 0 ? [] : [row(what, minor)]);
  const rate = formatNumber(terms.taxRate * 100, 0.01);
  return [
    row("Knife", knifeMinor),
    ...some("Sheath", sheathMinor),
    ...some("Packing and post", postMinor),
    ...(terms.taxName === undefined ? [] : [row(`${terms.taxName}, ${rate} %`, taxMinor)]),
    { ...row("Total", totalMinor), strong: true },
  ];
}

/** A date that cannot be kept is not offered. */
function readyWords({ promise, latestDay, beginDay }: Quote): string {
  if (promise !== undefined && promise.daysLate > 0) return "To be agreed.";
  if (promise !== undefined) return `Ready to be posted on ${dateWords(promise.promisedDay)}.`;
  return `Ready to be posted about ${dateWords(latestDay)}, if work can begin on ${dateWords(beginDay)}.`;
}

function materialsOf({ measured, facts }: Quote): CustomerLine[] {
  const { job } = measured;
  const { handle, finish } = job.spec;
  const { slabs, liners, pins, block, bolsters = [], guard, pommel, parts = [] } = handle ?? {};
  const some = (what: string, value: string | undefined): CustomerLine[] =>
    value === undefined || value === "" ? [] : [{ what, value }];
  const oiled = facts.coats > 0 ? ", oiled" : "";
  return [
    { what: "Steel", value: steelWords(measured) },
    {
      what: "Faces",
      value: `flats ${surface(finish?.flats ?? measured.knife.finish.flats)}, bevels ${surface(finish?.bevels ?? measured.knife.finish.bevels)}`,
    },
    ...some("Handle", slabs && `${slabs.material.name}, two slabs${oiled}`),
    ...some("Handle", block && `${block.material.name}, ${block.section}${oiled}`),
    ...some("Liners", liners?.material.name),
    ...some("Pins", pins?.material.name),
    ...some("Bolsters", bolsters.map(({ material }) => material.name).join(", ")),
    ...some("Guard", guard?.material.name),
    ...some("Pommel", pommel?.material.name),
    ...some("Fitted", parts.map(({ name }) => name).join(", ")),
    ...(facts.sheath ? [{ what: "Sheath", value: "made for this knife" }] : []),
  ];
}

const surface = (finish: "forged" | "ground"): string =>
  finish === "forged" ? "left from the hammer" : "ground";

function steelWords({ job }: Measured): string {
  const { stack } = job.knife;
  if (stack === undefined) return job.spec.steel.name;
  if (stack.kind === "clad") return `core of ${stack.core.steel.name}, outside ${stack.cladding.steel.name}`;
  const names = [...new Set(stack.layers.map(({ steel }) => steel.name))];
  return `pattern-welded, ${names.join(" and ")}`;
}

/** Where the bevels begin, and half way: as the knife will be, without what comes off on the way. */
function sectionsOf({ knife, job }: Measured): SectionStation[] {
  return inFileTerms(job, () => {
    const places = sectionPlaces(knife, job.units, undefined, job.shopPlaces?.sheets?.inches).filter(
      ({ x, drawn }) => drawn && x >= 0,
    );
    return sectionStations(knife, places.slice(0, 2)).map(
      ({ ready: _ready, forged: _forged, ...station }) => station,
    );
  });
}
