import { cleanText } from "../clean-text.js";
import type { CustomerModel } from "../models/customer-model.js";
import { customerPicture } from "../sheets/customer-sheet.js";
import { toSvg } from "../svg/to-svg.js";

/** Width of the picture where the page is printed, mm: A4 and Letter with margins of 15 mm. */
const PICTURE_WIDTH = 180;

/**
 * The customer's sheet as one HTML file, with everything in it and no script: it is read on a telephone, and prints on A4 and
 * Letter. All texts are escaped.
 *
 * @example
 * (await customerPage(model)).startsWith("<!doctype html>"); // true
 */
export async function customerPage(model: CustomerModel): Promise<string> {
  const { drawing, ratio } = customerPicture(model, PICTURE_WIDTH);
  const svg = (await toSvg(drawing)).replace(/^<\?xml[^>]*\?>\s*/u, "");
  const title = cleanText(`${model.code} ${model.title}`) || "Knife";
  const parts = [
    head(model, title),
    figure(svg, ratio, model.view.note),
    section("What is agreed", figureTable(model)),
    section("Material and finish", definitions(model.materials)),
    section("Price", priceTable(model)),
    section("Date", `<p>${escaped(model.ready)}</p>`),
    section("Terms", paragraphs(model.terms)),
    section("Please mind", list(model.cautions)),
    signature(model),
  ];
  return [
    "<!doctype html>",
    '<html lang="en">',
    "<head>",
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<title>${escaped(title)}: offer</title>`,
    `<style>${STYLE}</style>`,
    "</head>",
    "<body>",
    "<main>",
    ...parts.filter((part) => part !== ""),
    "</main>",
    "</body>",
    "</html>",
    "",
  ].join("\n");
}

const STYLE = `
:root { color: #000; background: #fff; font: 16px/1.45 Arial, Helvetica, "Liberation Sans", sans-serif; }
body { margin: 0; }
main { max-width: 46rem; margin: 0 auto; padding: 1rem; }
h1 { font-size: 1.4rem; line-height: 1.2; margin: 0 0 .6rem; }
h2 { font-size: 1.05rem; margin: 1.4rem 0 .4rem; border-bottom: 2px solid #000; }
header { display: flex; flex-wrap: wrap; gap: .8rem 3rem; }
p, ul, dl { margin: .3rem 0; }
ul { padding-left: 1.2rem; }
.lines { white-space: pre-line; }
.drawing { overflow-x: auto; margin: 1rem 0 0; }
.drawing svg { display: block; max-width: 100%; min-width: 34rem; height: auto; }
figcaption { font-size: .85rem; }
table { border-collapse: collapse; width: 100%; }
th, td { text-align: left; vertical-align: top; padding: .2rem .8rem .2rem 0; border-bottom: 1px solid #999; font-weight: normal; }
td.value, .sum td { font-weight: bold; }
td.amount { text-align: right; padding-right: 0; white-space: nowrap; }
dl { display: grid; grid-template-columns: minmax(6rem, auto) 1fr; gap: .15rem 1rem; }
dd { margin: 0; }
.sign { display: flex; flex-wrap: wrap; gap: 1rem 3rem; }
.sign div { flex: 1 1 14rem; padding-top: 3rem; border-bottom: 1px solid #000; }
figure, tr, dl, li, .sign { break-inside: avoid; }
h2 { break-after: avoid; }
@media screen and (max-width: 34rem) {
  .figures, .figures tbody, .figures tr, .figures td { display: block; }
  .figures tr:first-child { display: none; }
  .figures tr { padding: .3rem 0; border-bottom: 1px solid #999; }
  .figures td { padding: 0; border: 0; }
  .figures td:empty { display: none; }
  .figures td[data-label]::before { content: attr(data-label) ": "; font-weight: normal; }
}
@page { margin: 15mm; }
@media print {
  :root { font-size: 9.5pt; line-height: 1.3; }
  h2 { margin: .8rem 0 .3rem; }
  main { max-width: none; padding: 0; }
  .drawing { overflow: visible; }
  .drawing svg { min-width: 0; }
}
`;

function head(model: CustomerModel, title: string): string {
  const facts = [
    { what: "Offer", value: model.code },
    { what: "Revision", value: model.revision },
    { what: "Date", value: model.date },
    ...(model.validUntil === undefined ? [] : [{ what: "Holds until", value: model.validUntil }]),
  ].filter(({ value }) => value !== "");
  const lines = (texts: readonly string[]): string =>
    texts.length === 0 ? "" : `<p class="lines">${texts.map(escaped).join("\n")}</p>`;
  const customer = model.customer.length === 0 ? "" : `<div><p>For</p>${lines(model.customer)}</div>`;
  return `<h1>${escaped(model.title) || escaped(title)}</h1>\n<header><div>${lines(model.maker)}</div>${customer}${definitions(facts)}</header>`;
}

const figure = (svg: string, ratio: number, note: string | undefined): string =>
  `<figure class="drawing">\n${svg}<figcaption>Printed at 100 % on A4 or Letter the side view is drawn 1 : ${ratio}. Figures hold, not the picture.${note === undefined ? "" : ` ${escaped(note)}`}</figcaption>\n</figure>`;

const section = (title: string, body: string): string =>
  body === "" ? "" : `<section>\n<h2>${escaped(title)}</h2>\n${body}\n</section>`;

function figureTable({ figures }: CustomerModel): string {
  const asked = figures.some((one) => one.asked !== undefined);
  const heads = ["", "as drawn", "within", ...(asked ? ["you asked for"] : [])];
  const rows = figures.map(({ what, value, within = "", asked: wish = "", differs }) => {
    const missed = differs === true ? ": <strong>NOT MET</strong>" : "";
    const cells = [
      `<td>${escaped(what)}</td>`,
      `<td class="value" data-label="as drawn">${escaped(value)}</td>`,
      `<td data-label="within">${escaped(within)}</td>`,
      ...(asked ? [`<td data-label="you asked for">${escaped(wish)}${missed}</td>`] : []),
    ];
    return `<tr>${cells.join("")}</tr>`;
  });
  const headRow = `<tr>${heads.map((text) => `<th>${escaped(text)}</th>`).join("")}</tr>`;
  return `<table class="figures">\n${[headRow, ...rows].join("\n")}\n</table>`;
}

function priceTable({ price }: CustomerModel): string {
  if (price.length === 0) return "<p>To be agreed.</p>";
  const rows = price.map(
    ({ what, amount, strong }) =>
      `<tr${strong === true ? ' class="sum"' : ""}><td>${escaped(what)}</td><td class="amount">${escaped(amount)}</td></tr>`,
  );
  return `<table>\n${rows.join("\n")}\n</table>`;
}

const definitions = (lines: readonly { readonly what: string; readonly value: string }[]): string =>
  lines.length === 0
    ? ""
    : `<dl>${lines.map(({ what, value }) => `<dt>${escaped(what)}</dt><dd>${escaped(value)}</dd>`).join("")}</dl>`;

const paragraphs = (texts: readonly string[]): string =>
  texts.map((text) => `<p>${escaped(text)}</p>`).join("\n");

const list = (texts: readonly string[]): string =>
  texts.length === 0 ? "" : `<ul>${texts.map((text) => `<li>${escaped(text)}</li>`).join("")}</ul>`;

const signature = ({ revision }: CustomerModel): string =>
  `<section>\n<h2>Agreed</h2>\n<p>This offer, and the drawing in revision ${escaped(revision)}. A later change is a new revision.</p>\n<div class="sign"><div>The customer, name and date</div><div>The maker, name and date</div></div>\n</section>`;

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** Text that no browser takes for markup. */
const escaped = (text: string): string =>
  cleanText(text).replace(/[&<>"']/gu, (mark) => ENTITIES[mark] ?? mark);
