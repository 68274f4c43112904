import { type Drawing, flattenItems } from "@scantling/render";
import { expect, it } from "vitest";
import { tangPanels } from "../../src/card/tang-panels.js";
import { drawSheets } from "../../src/sheets/draw-sheets.js";
import { cardOf } from "../card/card-of.js";
import { DEMO_SHOP, demoWith } from "../support/demo.js";

/** A lightening hole between two pins: the slabs have the pins' holes and the thong's, and not that one. */
const KNIFE = demoWith([
  "    - { kind: pin, at: [-84, 76], diameter: 4 }\n",
  "    - { kind: lightening, at: [-55, 76], diameter: 8 }\n    - { kind: pin, at: [-84, 76], diameter: 4 }\n",
]);
const KINDS = { A: "pin", B: "lightening", C: "pin", D: "thong" };

/** Letter and kind of each row of a sheet's tables that names a kind of hole. */
function kindsByLetter(pages: readonly Drawing[]): Record<string, string> {
  const texts = pages.flatMap(({ items }) => flattenItems(items)).filter((item) => item.kind === "text");
  return Object.fromEntries(
    texts
      .filter(({ text }) => Object.values(KINDS).includes(text))
      .flatMap(({ text, at }) =>
        texts
          .filter((other) => /^[A-Z]$/u.test(other.text) && Math.abs(other.at.y - at.y) < 1e-6)
          .map((letter) => [letter.text, text]),
      ),
  );
}

it("every sheet and the card call a hole by the same letter, also past a hole that the slabs have not", async () => {
  const { measured, bench } = await cardOf(KNIFE, DEMO_SHOP);
  const sheets = ["pattern", "mirrored", "drilling", "slabs"] as const;
  const wishes = { sheets, states: ["finished"], cutOffset: 0, format: "dxf" } as const;
  const { drawn } = await drawSheets(measured, wishes);
  const found = Object.fromEntries(drawn.map(({ sheet, pages }) => [sheet, kindsByLetter(pages)]));
  const { B: _, ...throughSlabs } = KINDS;
  expect(found).toEqual({ pattern: KINDS, mirrored: KINDS, drilling: KINDS, slabs: throughSlabs });

  const slabs = drawn.find(({ sheet }) => sheet === "slabs")?.pages ?? [];
  const items = slabs.flatMap((page) => flattenItems(page.items));
  const named = items.flatMap(
    (item) => (item.kind === "circle" && /^slab-right-hole-(\w+)$/u.exec(item.name ?? "")?.[1]) || [],
  );
  expect([...new Set(named)]).toEqual(["A", "C", "D"]);
  const callouts = items.flatMap((item) => (item.kind === "text" ? [item.text] : []));
  expect(callouts).toContainEqual(expect.stringMatching(/^D\s+Ø 6 mm/u));

  const rows = tangPanels(measured, bench).flatMap(({ blocks }) => JSON.stringify(blocks));
  for (const [letter, kind] of Object.entries(KINDS)) expect(rows.join()).toContain(`${letter} ${kind}`);
});
