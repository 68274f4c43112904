import { boxOfItems } from "../box.js";
import { cleanText } from "../clean-text.js";
import type { Drawing, DrawingItem } from "../drawing.js";
import { moveItem } from "../drawing.js";
import type { CustomerModel } from "../models/customer-model.js";
import { bothWays, type PaperSize } from "../paper.js";
import { drawingPage } from "./customer/drawing-page.js";
import { offerPages } from "./customer/offer-page.js";
import { CUSTOMER_RATIOS } from "./customer/ratios.js";
import { sectionSketches } from "./customer/section-sketch.js";
import { sideView } from "./customer/side-view.js";

/**
 * What a customer gets: the offer on standing paper, to be signed, and the drawing on lying paper, true size where it fits, else at
 * 1 : 2 or smaller.
 *
 * @param paper - The printer's paper.
 * @throws {GeometryError} `sheet-too-large` where the drawing does not fit at any ratio.
 *
 * @example
 * customerSheet(model, paperNamed("A4")).length; // 2
 */
export function customerSheet(model: CustomerModel, paper: PaperSize): Drawing[] {
  const [lying = paper, standing = paper] = bothWays(paper);
  const offers = offerPages(model, standing).map((items, index) => ({
    size: standing,
    title: index === 0 ? "offer" : `offer, page ${index + 1}`,
    description: "The offer: sizes with their tolerances, materials, price, date, terms, lines to sign on.",
    items,
  }));
  const { items, ratio } = drawingPage(model, lying);
  const drawing = {
    size: lying,
    title: "drawing",
    description: `The knife from its right side, drawn 1 : ${ratio}, with its sizes, and sections.`,
    items,
  };
  return [...offers, drawing].map(({ size, title, description, items: all }) => ({
    width: size.width,
    height: size.height,
    ...(size.name === undefined ? {} : { paper: size.name }),
    ...(size.correction === undefined ? {} : { correction: size.correction }),
    origin: { x: 0, y: 0 },
    title: `${nameOf(model)}: ${title}`,
    description,
    items: all,
  }));
}

const nameOf = ({ code, title }: CustomerModel): string => cleanText(`${code} ${title}`) || "Knife";

/** White about the picture, mm. */
const WHITE = 2;
/** Between the side view and the sections under it, mm. */
const BETWEEN = 8;

/**
 * The side view with the sections under it as one picture, for a page that is read on a screen.
 *
 * @param most - Width that it may have, mm.
 *
 * @example
 * customerPicture(model, 180).ratio; // 2
 */
export function customerPicture(
  model: CustomerModel,
  most: number,
): { readonly drawing: Drawing; readonly ratio: number } {
  const made = CUSTOMER_RATIOS.map((ratio) => ({ ratio, items: picture(model, ratio) }));
  const widthOf = (items: readonly DrawingItem[]): number => {
    const box = boxOfItems(items);
    return box === undefined ? 0 : box.maxX - box.minX + 2 * WHITE;
  };
  const { ratio, items } = made.find((one) => widthOf(one.items) <= most) ??
    made.at(-1) ?? { ratio: 1, items: [] };
  const box = boxOfItems(items) ?? { minX: 0, minY: 0, maxX: 0, maxY: 0 };
  const drawing = {
    width: Math.ceil(box.maxX - box.minX + 2 * WHITE),
    height: Math.ceil(box.maxY - box.minY + 2 * WHITE),
    origin: { x: WHITE - box.minX, y: WHITE - box.minY },
    title: `${nameOf(model)}: drawing`,
    description: `The knife from its right side, drawn 1 : ${ratio}, with its sizes, and sections.`,
    items,
  };
  return { drawing, ratio };
}

function picture(model: CustomerModel, ratio: number): DrawingItem[] {
  const view = sideView(model.view, ratio);
  const sketches = sectionSketches(model.sections, model.view.pattern.units);
  const [over, under] = [boxOfItems(view), boxOfItems(sketches)];
  if (over === undefined || under === undefined) return view;
  const dx = over.minX - under.minX;
  const dy = over.minY - BETWEEN - under.maxY;
  return [...view, ...sketches.map((item) => moveItem(item, dx, dy))];
}
