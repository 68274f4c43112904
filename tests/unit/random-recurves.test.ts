import { describe, expect, test } from "vitest";
import { FOUND, recurve, SEED } from "../reference/random/recurves.js";
import { faultsOf } from "../reference/random/suite.js";

// Among 1,000 knives drawn by lot there is hardly an edge that swings in and out twice under a bevel ground to the spine.
const COUNT = 40;

describe(`${COUNT} recurves (seed ${SEED})`, () => {
  test.each(FOUND)("$kind, $index: all integrals, and the estimate covers them", (knife) => {
    expect(faultsOf(knife)).toEqual([]);
  });

  test.each(Array.from({ length: COUNT / 5 }, (_, i) => 5 * i))("from %i on: the same", (start) => {
    expect([0, 1, 2, 3, 4].flatMap((i) => faultsOf(recurve(start + i)))).toEqual([]);
  });
});
