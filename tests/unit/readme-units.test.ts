import { parseQuantity, type QuantityKind, unitNames, unitWords } from "@scantling/geometry/units";
import { describe, expect, it } from "vitest";
import { readText } from "./repository.js";

const KINDS = ["length", "mass", "angle", "share", "temperature", "density", "time"] as const;

/** What stands between backticks up to the first full stop, with its plurals written out: `inch(es)` is inch and inches. */
function listed(kind: QuantityKind): string[] {
  const row = readText("README.md")
    .split("\n")
    .find((line) => line.startsWith(`| ${kind} |`));
  const [list = ""] = (row ?? "").split(". ");
  const words = [...list.matchAll(/`([^`]+)`/gu)].map(([, word = ""]) => word.toLowerCase());
  if (kind === "density") {
    const plain = words.filter((word) => word.includes("/"));
    expect(words.filter((word) => !word.includes("/"))).toEqual(["³", "^3"]);
    return plain.flatMap((word) =>
      word.endsWith("3") ? [word, word.replace(/3$/u, "³"), word.replace(/3$/u, "^3")] : [word],
    );
  }
  return words.flatMap((word) => {
    const [, stem = word, ending] = /^(.*)\((\w+)\)$/u.exec(word) ?? [];
    return ending === undefined ? [stem] : [stem, stem + ending];
  });
}

describe("the units that the README lists", () => {
  it.each(KINDS)("are those of %s that are taken, and no others are", (kind) => {
    expect(listed(kind).toSorted()).toEqual([...unitWords(kind)].toSorted());
  });

  it.each(KINDS)("of %s can be read in a file, in capitals too", (kind) => {
    for (const word of listed(kind)) {
      for (const text of [`3 ${word}`, `3${word}`, `3 ${word.toUpperCase()}`])
        expect(parseQuantity(text, kind, "mm"), text).toMatchObject({ ok: true });
    }
  });

  it("are named in messages by their short forms", () => {
    for (const kind of KINDS)
      for (const name of unitNames(kind)) expect(listed(kind)).toContain(name.toLowerCase());
  });
});
