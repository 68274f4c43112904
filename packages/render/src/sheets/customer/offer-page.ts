import type { Vec2 } from "@scantling/geometry";
import { type DrawingItem, lettering, strokes } from "../../drawing.js";
import { fitText } from "../../fit-text.js";
import { SMALL } from "../../lettering-size.js";
import type { CustomerModel } from "../../models/customer-model.js";
import { wordLines } from "../bench-card/inline.js";
import { beside, gap, type Placed, stack } from "../bench-card/placed.js";
import { amounts, columns, rule } from "./rows.js";

/** White about the page, mm. */
const MARGIN = 13;
/** Between two sections, and from a heading to what stands under it, mm. */
const AIR = 3.2;
const UNDER_HEADING = 1;
const TITLE = 5;
/** Height of a line to sign on, mm. */
const SIGN = 10;

/** Heights of capitals: the largest in which the offer goes on one page, else the small one. */
const LETTERINGS = [3, 2.75, SMALL] as const;

/** The offer in words and figures: one page where it fits, else as many as it takes. */
export function offerPages(
  model: CustomerModel,
  { width, height }: { readonly width: number; readonly height: number },
): DrawingItem[][] {
  const room = { width: width - 2 * MARGIN, height: height - 2 * MARGIN };
  for (const letters of LETTERINGS) {
    const blocks = offerBlocks(model, room.width, letters);
    if (stack(blocks).height <= room.height) return [place(blocks, height)];
  }
  const pages = parted(offerBlocks(model, room.width, SMALL), room.height);
  return pages.map((blocks, index) => [
    ...place(blocks, height),
    lettering(
      ...pageNumber(model, { page: index + 1, pages: pages.length }, { x: width - MARGIN, y: NUMBER_FOOT }),
    ),
  ]);
}

/** Of the number of a page over the lower edge of the paper, mm. */
const NUMBER_FOOT = 6;
const NUMBER_WIDTH = 120;

/** What tells a page that is found alone where it belongs. */
function pageNumber(
  { code, revision }: CustomerModel,
  { page, pages }: { readonly page: number; readonly pages: number },
  at: Vec2,
): Parameters<typeof lettering> {
  const order = [code, `revision ${revision}`].filter((part) => part !== "").join(", ");
  const text = fitText(`Page ${page} of ${pages}: ${order}`, SMALL, NUMBER_WIDTH, 1).join("");
  return [text, at, { height: SMALL, anchor: "end" }];
}

const place = (blocks: readonly Placed[], height: number): DrawingItem[] =>
  stack(blocks).items({ x: MARGIN, y: height - MARGIN });

/** Blocks over pages, in their order; one that is higher than a page stands alone. */
function parted(blocks: readonly Placed[], most: number): Placed[][] {
  const pages: Placed[][] = [[]];
  for (const block of blocks) {
    const page = pages.at(-1) ?? [];
    const fits = stack([...page, block]).height <= most;
    if (fits || page.length === 0) page.push(block);
    else pages.push([block]);
  }
  return pages;
}

function offerBlocks(model: CustomerModel, width: number, letters: number): Placed[] {
  const words = (text: string, bold = false): Placed => wordLines(text, width, letters, bold);
  const section = (title: string, parts: readonly Placed[]): Placed[] =>
    parts.length === 0
      ? []
      : [stack([gap(AIR), words(title, true), gap(UNDER_HEADING), ...parts.slice(0, 1)]), ...parts.slice(1)];
  return [
    ...head(model, width, letters),
    ...section("What is agreed", figureTable(model, width, letters)),
    ...section(
      "Material and finish",
      columns(
        model.materials.map(({ what, value }) => [{ text: what }, { text: value }]),
        [0.3, 0.7],
        width,
        letters,
      ),
    ),
    ...section(
      "Price",
      model.price.length === 0 ? [words("To be agreed.")] : amounts(model.price, width, letters),
    ),
    ...section("Date", [words(model.ready)]),
    ...section(
      "Terms",
      model.terms.map((text) => words(text)),
    ),
    ...section(
      "Please mind",
      model.cautions.map((text) => words(text)),
    ),
    signature(model, width, letters),
  ];
}

/** Higher than this, mm, the head is parted: nobody's address is so long. */
const MOST_HEAD = 60;

/** The title; who offers to whom at the left, which offer it is at the right. */
function head(model: CustomerModel, width: number, letters: number): Placed[] {
  const half = width / 2 - 4;
  const lines = (texts: readonly string[], bold = false): Placed[] =>
    texts.map((text) => wordLines(text, half, letters, bold));
  const facts = columns(
    [
      ["Offer", model.code],
      ["Revision", model.revision],
      ["Date", model.date],
      ...(model.validUntil === undefined ? [] : [["Holds until", model.validUntil]]),
    ].map(([what = "", value = ""]) => [{ text: what }, { text: value, bold: true }]),
    [0.35, 0.65],
    half,
    letters,
  );
  const { maker, customer } = model;
  const from = [
    ...lines(maker),
    ...(maker.length === 0 || customer.length === 0 ? [] : [gap(AIR / 2)]),
    ...(customer.length === 0 ? [] : [...lines(["For"]), ...lines(customer, true)]),
  ];
  const title = [wordLines(model.title, width, TITLE, true), gap(AIR / 2)];
  const together = beside(stack(from), stack(facts), width - half);
  return together.height > MOST_HEAD
    ? [...title, ...facts, ...from, rule(width)]
    : [stack([...title, together, rule(width)])];
}

function figureTable({ figures }: CustomerModel, width: number, letters: number): Placed[] {
  const asked = figures.some((figure) => figure.asked !== undefined);
  const heads = ["", "as drawn", "within", ...(asked ? ["you asked for"] : [])];
  const shares = asked ? [0.2, 0.29, 0.29, 0.22] : [0.28, 0.36, 0.36];
  const rows = figures.map(({ what, value, within = "", asked: wish = "", differs }) => [
    { text: what },
    { text: value, bold: true },
    { text: within },
    ...(asked ? [{ text: differs === true ? `${wish}: NOT MET` : wish, bold: differs === true }] : []),
  ]);
  return columns([heads.map((text) => ({ text })), ...rows], shares, width, letters);
}

function signature(model: CustomerModel, width: number, letters: number): Placed {
  const half = width / 2 - 4;
  const party = (who: string): Placed =>
    stack([
      wordLines(who, half, letters, false),
      gap(SIGN),
      {
        height: 0,
        items: ({ x, y }) => [
          strokes("thin", [
            [
              { x, y },
              { x: x + half, y },
            ],
          ]),
        ],
      },
      gap(1),
      wordLines("name, date", half, SMALL, false),
    ]);
  return stack([
    gap(AIR),
    wordLines(
      `Agreed: this offer, and the drawing in revision ${model.revision}. A later change is a new revision.`,
      width,
      letters,
      true,
    ),
    gap(UNDER_HEADING),
    beside(party("The customer"), party("The maker"), width - half),
  ]);
}
