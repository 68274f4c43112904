import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { answer, flat } from "../support/answer.js";

const FILE = "hunter.knife.yaml";

/** A hunter with a hidden tang, in inches. */
const HUNTER = `scantling: 1
units: in
order:
  type: hunter
steel: 1084
blade:
  outline: { family: drop-point, edgeLength: 4, heelHeight: 1 1/8 }
  thickness: [{ at: heel, is: 5/32 }, { at: tip, is: 0.06 }]
  bevel: { form: flat, height: full, edgeThickness: 0.02 }
  edgeAngle: 18 deg
tang: { form: hidden, length: 3 1/2, heights: { front: 5/8, middle: 1/2, butt: 3/8 } }
handle:
  block: { material: walnut, section: oval, length: 4 1/4, height: 1 1/8, width: 7/8 }
`;

/** The hunter with pieces of its text replaced; the pieces must be there. */
const hunterWith = (...changes: readonly (readonly [string, string])[]): string =>
  changes.reduce((text, [from, to]) => {
    if (!text.includes(from)) throw new Error(`the hunter has no "${from}"`);
    return text.replace(from, to);
  }, HUNTER);

const check = (text: string) => answer(["check", FILE], { files: { [FILE]: text } });

describe("slips of a knife that cannot be built", () => {
  it("are told before what comes of them", async () => {
    const { code, err } = await check(hunterWith(["is: 5/32", "is: 4"], ["18 deg", "36 deg"]));
    expect(code).toBe(EXIT.file);
    const told = flat(err);
    expect(told).toContain('Did you mean 0.157" (mm, not inches)?');
    expect(told).toContain("Did you mean 18° (both sides together");
    expect(told.indexOf("Did you mean")).toBeLessThan(told.indexOf("stands out of the handle"));
  });

  it("are none where a size is only wrong", async () => {
    const { code, err } = await check(hunterWith(["height: 1 1/8, width: 7/8", "height: 1/2, width: 7/8"]));
    expect(code).toBe(EXIT.file);
    expect(flat(err)).toContain("stands out of the handle");
    expect(err).not.toContain("Did you mean");
  });
});
