import { dayOfDate } from "@scantling/geometry";
import { checkLayout, customerPicture } from "@scantling/render";
import { describe, expect, test } from "vitest";
import { measure } from "../../packages/cli/src/measure.js";
import { makeCustomerModel } from "../../packages/cli/src/models/customer-model.js";
import { customerPages } from "../../packages/cli/src/quote/customer-files.js";
import { makeQuote } from "../../packages/cli/src/quote/quote.js";
import { planBars } from "../../packages/cli/src/stock-report.js";
import { jobOf } from "../reference/sheets/sheet-set.js";
import { filesBelow, ROOT } from "./repository.js";

// The customer's sheet of every example on paper: can be read, keeps to the paper, is one page of words and one drawing.
const EXAMPLES = filesBelow("examples", ".knife.yaml");
const PAPERS = ["a4", "letter"] as const;
const DAY = dayOfDate("2026-11-30") ?? 0;

test("there are seven examples", () => expect(EXAMPLES).toHaveLength(7));

describe.each(["mm", "in"] as const)("the customer's sheet of an example in %s", (units) => {
  test.each(EXAMPLES)("%s: in order on A4 and Letter, and on a screen", async (file) => {
    const measured = measure(await jobOf(`${ROOT}/${file}`, units));
    const model = makeCustomerModel(makeQuote(measured, planBars(measured), { madeDay: DAY, beginDay: DAY }));
    // A row for everything that was asked for.
    const asked = measured.answers.length + (measured.hardness === undefined ? 0 : 1);
    expect(model.figures.filter((figure) => figure.asked !== undefined)).toHaveLength(asked);
    for (const paper of PAPERS) {
      const pages = await customerPages(measured.job, model, paper);
      expect(pages).toHaveLength(2);
      for (const page of pages) expect(checkLayout(page)).toEqual([]);
    }
    expect(checkLayout(customerPicture(model, 180).drawing)).toEqual([]);
  });
});
