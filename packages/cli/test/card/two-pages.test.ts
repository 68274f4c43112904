import { FAMILY_NAMES } from "@scantling/geometry";
import { benchCard, checkLayout, paperNamed } from "@scantling/render";
import { describe, expect, it } from "vitest";
import { answer } from "../support/answer.js";
import { fakeIo } from "../support/fake-io.js";
import { cardOf } from "./card-of.js";

const ASKS = {
  mm: "    behindEdge: { below: 0.4 mm }\n    hardness: { between: [58 HRC, 60 HRC] }",
  in: "    behindEdge: { below: 0.016 in }\n    hardness: { between: [58 HRC, 60 HRC] }",
} as const;

/** A knife to begin with, all asks of its own taken in, and two more. */
const withAsks = (file: string, units: "mm" | "in"): string =>
  file
    .replace(/^ {2}# asks:/mu, "  asks:")
    .replace(/^ {2}# {3}(mass|balance|overallLength):/gmu, "    $1:")
    .replace(/^ {4}overallLength:.*$/mu, (line) => `${line}\n${ASKS[units]}`);

const TANGS = ["full", "hidden", "through"] as const;

describe.each(["mm", "in"] as const)("an order with five asks in %s", (units) => {
  it.each(FAMILY_NAMES)("has a card of two pages, whatever the tang: %s", async (family) => {
    for (const tang of TANGS) {
      const io = fakeIo({ files: {} });
      await answer(["new", "shop.yaml", "--units", units], io);
      await answer(["new", "knife", "--family", family, "--tang", tang], io);
      const file = withAsks(io.disk.text("/shop/knife.knife.yaml"), units);
      const { card, measured } = await cardOf(file, io.disk.text("/shop/shop.yaml"));
      expect(measured.answers).toHaveLength(4);
      for (const paper of ["A4", "Letter"] as const) {
        const pages = benchCard(card, paperNamed(paper));
        expect([tang, paper, pages.length]).toEqual([tang, paper, 2]);
        expect(pages.flatMap(checkLayout)).toEqual([]);
      }
    }
  });
});
