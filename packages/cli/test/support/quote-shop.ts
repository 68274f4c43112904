import { DEMO_SHOP } from "./demo.js";

/** What a shop reckons with and no customer is told: figures that stand nowhere else. */
export const SECRET_FIGURES = {
  rate: "47.31",
  overhead: "13.57",
  profit: "17.3",
  waste: "11.9",
  consumables: "23.17",
  hours: "3.37",
  scrap: "6.7",
  bar: "98.31",
  slab: "8.77",
  rod: "171.3",
} as const;

/** The demo's shop without its own terms. */
export const BARE_DEMO_SHOP = DEMO_SHOP.replace(/^work:[\s\S]*?(?=^tolerances:)/mu, "");

/** The demo's shop with other terms, one line a key. */
export const shopWithWork = (work: string): string =>
  `${BARE_DEMO_SHOP}\nwork:\n${work.replace(/^/gmu, "  ")}\n`;

/** A shop full of secrets. */
export const SECRET_SHOP = shopWithWork(`rate: ${SECRET_FIGURES.rate}
overhead: ${SECRET_FIGURES.overhead}
profit: ${SECRET_FIGURES.profit} %
waste: ${SECRET_FIGURES.waste} %
consumables: ${SECRET_FIGURES.consumables}
hours: { forge: ${SECRET_FIGURES.hours} h }
scrap: { harden: ${SECRET_FIGURES.scrap} % }
prices: [{ of: European ash, each: ${SECRET_FIGURES.slab} }, { of: brass, perMetre: ${SECRET_FIGURES.rod} }]
tax: { name: VAT, rate: 19 % }
deposit: 40 %
validFor: 30 days
maker: The forge of this test`).replaceAll(/price: 8\.\d\d/gu, `price: ${SECRET_FIGURES.bar}`);
