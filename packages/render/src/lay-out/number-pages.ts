import { type Drawing, lettering } from "../drawing.js";

/**
 * The pages of several sheets as one file: each says which of all pages it is, where there is room for that.
 *
 * @param pages - In the order of the file.
 *
 * @example
 * const [first] = numberPages(layOutSheet(contents, { kind: "own" }));
 */
export const numberPages = (pages: readonly Drawing[]): Drawing[] =>
  pages.map((page, index) => {
    const { numberPlace, origin } = page;
    if (numberPlace === undefined) return page;
    const { at, ...how } = numberPlace;
    const text = `file page ${index + 1} of ${pages.length}`;
    return {
      ...page,
      items: [
        ...page.items,
        {
          kind: "group",
          name: "file-page",
          ofPaper: true,
          items: [lettering(text, { x: at.x - origin.x, y: at.y - origin.y }, how)],
        },
      ],
    };
  });
