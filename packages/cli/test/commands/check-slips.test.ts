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

describe("asks out of all proportion", () => {
  const HIDDEN = "order:\n  type: hunter\n";
  const asking = (asks: string): string => hunterWith([HIDDEN, `${HIDDEN}  asks: { ${asks} }\n`]);

  it("are asked about even where they are met: below 9 kg", async () => {
    const { code, out } = await check(asking("mass: { below: 9 kg }"));
    expect(code).toBe(EXIT.done);
    expect(out).toMatch(/^mass .* met /m);
    expect(flat(out)).toContain("Did you mean 9 oz (oz, not kg)?");
  });

  it("are asked about where they are not met: mm for inches, g for kg", async () => {
    const { out } = await check(
      asking(
        "mass: { between: [130 kg, 230 kg] }, edgeLength: { about: 102 in ± 3 }, balance: { between: [-25 in, -5 in] }",
      ),
    );
    const told = flat(out);
    expect(told).toContain("(g, not kg)?");
    expect(told.match(/mm, not inches/gu)).toHaveLength(2);
  });

  it("are none where an ask is only missed, by four times and more even", async () => {
    const { out } = await check(
      asking(
        "mass: { below: 2 oz }, edgeLength: { below: 1 }, overallLength: { above: 36 }, balance: { above: 2 }",
      ),
    );
    expect(out).toContain("NOT MET");
    expect(out).not.toContain("proportion");
  });
});

describe("sizes of a sheath that no sheath has", () => {
  it("are asked about where a file gives them, at their line", async () => {
    const sheath = "sheath: { leather: 9 mm, welt: 40 mm, stitchInset: 30 mm }\n";
    const { code, out } = await check(`${HUNTER}${sheath}`);
    expect(code).toBe(EXIT.done);
    const told = flat(out);
    expect(told.match(/Is the unit right\?/gu)).toHaveLength(3);
    expect(told).toContain("sheath.leather, hunter.knife.yaml:14:20");
  });

  it("are those of the shop file where it gives them", async () => {
    const shop = "scantling: 1\nunits: mm\nsheath: { leather: 9, welt: 12 }\n";
    const { out } = await answer(["check", FILE], { files: { [FILE]: HUNTER, "shop.yaml": shop } });
    expect(flat(out)).toContain("sheath.leather, shop.yaml:3:20");
    expect(flat(out).match(/Is the unit right\?/gu)).toHaveLength(1);
  });

  it("are none where they are usual: 8 to 9 oz leather, a welt of half an inch", async () => {
    const { out } = await check(
      `${HUNTER}sheath: { leather: 3.4 mm, welt: 1/2, stitchInset: 5/32, stitchPitch: 5/32 }\n`,
    );
    expect(out).not.toContain("sheath");
  });
});
