import { type Drawing, toSvg } from "@scantling/render";
import { beforeAll, describe, expect, test } from "vitest";
import { drawCard } from "../../packages/cli/src/commands/jobsheet.js";
import { measure } from "../../packages/cli/src/measure.js";
import { drawSheets } from "../../packages/cli/src/sheets/draw-sheets.js";
import { SHEET_NAMES } from "../../packages/cli/src/sheets/sheet-names.js";
import { LIGHTNESS } from "../../packages/render/src/tone.js";
import { attributeOf, readSvg, type SvgElement } from "../../packages/render/test/read-svg.js";
import { jobOf, sheetSet } from "../reference/sheets/sheet-set.js";
import { ROOT } from "./repository.js";

// What those who cannot see a sheet get of it, and those whose printer has black only.
const DEMO = `${ROOT}/examples/market-garden/harvest.knife.yaml`;

/** Colours that may be written: none, and the tones of the drawing, which are greys. */
const GREYS = new Set(
  Object.values(LIGHTNESS).map((light) => `#${light.toString(16).padStart(2, "0").repeat(3)}`),
);
/** Attributes that could bring in another colour, or let one shine through. */
const LOOKS = /^(?:style|class|color|opacity|fill-opacity|stroke-opacity|filter|mask|stop-color|href)$/;

let pages: readonly (readonly [string, readonly SvgElement[]])[] = [];
beforeAll(async () => {
  const measured = measure(await jobOf(DEMO));
  const wishes = { sheets: SHEET_NAMES, states: ["forged", "finished"], cutOffset: 0.5 } as const;
  const tiled = await drawSheets(measured, { ...wishes, format: "pdf", paper: "a4" });
  const whole = await drawSheets(measured, { ...wishes, format: "svg" });
  const card = await drawCard(measured, (await sheetSet(measured)).setup, "a4");
  const drawings: (readonly [string, Drawing])[] = [
    ...[...tiled.drawn, ...whole.drawn].flatMap(({ suffix, pages: all }) =>
      all.map((page, index) => [`${suffix} ${index + 1} of ${all.length}`, page] as const),
    ),
    ...card.map((page, index) => [`jobsheet ${index + 1}`, page] as const),
  ];
  pages = await Promise.all(
    drawings.map(async ([name, drawing]) => [name, readSvg(await toSvg(drawing))] as const),
  );
});

/** Pages for which something does not hold. */
const where = (wrong: (elements: readonly SvgElement[]) => boolean): string[] =>
  pages.filter(([, elements]) => wrong(elements)).map(([name]) => name);

const textOf = (elements: readonly SvgElement[], id: string, tag: string): string =>
  elements.find((element) => element.tag === tag && attributeOf(element, "id") === id)?.text.trim() ?? "";

describe("every page of the demo's sheets as SVG", () => {
  test("there are pages of every sheet", () => {
    for (const name of [...SHEET_NAMES, "jobsheet"])
      expect(
        pages.some(([page]) => page.startsWith(name)),
        name,
      ).toBe(true);
    expect(pages.length).toBeGreaterThan(30);
  });

  test("is an image by its role, labelled by the title and the description in it", () => {
    const unlabelled = where((elements) => {
      const [root] = elements;
      const [title = "", description = "", ...more] = attributeOf(root, "aria-labelledby").split(" ");
      return (
        root?.tag !== "svg" ||
        attributeOf(root, "role") !== "img" ||
        more.length > 0 ||
        textOf(elements, title, "title").length < 8 ||
        textOf(elements, description, "desc").length < 20
      );
    });
    expect(unlabelled).toEqual([]);
  });

  test("has a title that no other page of its sheet has", () => {
    const titles = pages.map(
      ([name, elements]) => `${/^\S+/.exec(name)?.[0]}, ${textOf(elements, "sheet-title", "title")}`,
    );
    const tiles = titles.filter((title) => /page [A-Z]\d/.test(title));
    expect(tiles.length).toBeGreaterThan(3);
    expect(new Set(tiles).size).toBe(tiles.length);
  });

  test("uses each id once", () => {
    const doubled = where((elements) => {
      const ids = elements.map((element) => attributeOf(element, "id")).filter((id) => id !== "");
      return new Set(ids).size !== ids.length;
    });
    expect(doubled).toEqual([]);
  });

  test("is drawn in black, white and the greys of the tones, nothing else, so that no colour says anything", () => {
    expect(GREYS).toContain("#000000");
    expect(GREYS).toContain("#ffffff");
    const colours = new Set<string>();
    const other = where((elements) =>
      elements.some(({ attributes }) =>
        Object.entries(attributes).some(([name, value]) => {
          if (name === "fill" || name === "stroke") colours.add(value);
          return LOOKS.test(name);
        }),
      ),
    );
    expect(other).toEqual([]);
    expect([...colours].filter((colour) => colour !== "none" && !GREYS.has(colour))).toEqual([]);
    // The areas of the plots: were there none, nothing had been looked at.
    expect(colours.size).toBeGreaterThan(3);
  });

  test("keeps lettering black, and greys to areas", () => {
    const pale = where((elements) =>
      elements.some(({ tag, attributes }) => {
        const { fill = "", stroke = "#000000" } = attributes;
        return stroke !== "#000000" || (tag === "text" && fill !== "#000000");
      }),
    );
    expect(pale).toEqual([]);
  });
});
