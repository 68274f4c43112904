import { describe, expect, it } from "vitest";
import { checkLayout, flattenItems, layOutSheet, paperNamed } from "../../src/index.js";
import { patternContents } from "../../src/sheets/pattern-sheet.js";
import { plainKnife } from "../plain-knife.js";

const BARS = ["check-mm-across", "check-in-across", "check-mm-up", "check-in-up"];

// Between them the view leaves less than the upright bars' height under it, and no room for the usual ones beside it.
// Turned over, such a view has its tip over the place of the upright bars.
describe("the left face of a knife whose right face has a page of its own", () => {
  it.each([
    [221, 27],
    [221, 30],
    [226, 30],
  ])("is not joined either: %d × %d mm on Letter", (overall, height) => {
    const plain = plainKnife(overall, height, "in");
    const [right, left] = [false, true].map((mirror) =>
      layOutSheet(patternContents({ ...plain, mirror }), { kind: "paper", paper: paperNamed("Letter") }),
    );
    expect(right?.map(({ joinedAs }) => joinedAs)).not.toContain("A1");
    expect(left?.map(({ joinedAs }) => joinedAs)).not.toContain("A1");
    for (const page of left ?? []) expect(checkLayout(page)).toEqual([]);
  });
});

describe("a view that leaves no room for the upright check bars under it", () => {
  it.each([
    [226, 38],
    [230, 38],
    [230, 44],
  ])("has narrow ones at its side and is not joined: %d × %d mm on Letter", (overall, height) => {
    const contents = patternContents(plainKnife(overall, height, "in"));
    const pages = layOutSheet(contents, { kind: "paper", paper: paperNamed("Letter") });
    for (const page of pages) {
      expect(page.joinedAs).toBeUndefined();
      expect(checkLayout(page)).toEqual([]);
      const names = flattenItems(page.items).flatMap((item) =>
        item.kind === "path" && item.name !== undefined && BARS.includes(item.name) ? [item.name] : [],
      );
      expect(names.sort()).toEqual([...BARS].sort());
    }
  });
});
