import { expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { answer, flat } from "../support/answer.js";

/** An outline as long as any that is taken, a cleaver for a giant. */
const LONG = `scantling: 1
units: mm
steel: "1084"
blade:
  outline: { family: vegetable, edgeLength: 4861, heelHeight: 92 }
  thickness:
    - { at: heel, is: 4.6 }
  bevel: { form: flat, height: 48, edgeThickness: 0.5 }
  edgeAngle: 16 deg
tang: { form: full, length: 128 }
`;

it("a page longer than PDF readers take, 5080 mm, is refused as PDF and drawn as SVG", async () => {
  const draw = (format: string) =>
    answer(["pattern", "long.knife.yaml", "--paper", "fit", "--format", format], {
      files: { "long.knife.yaml": LONG },
    });
  const pdf = await draw("pdf");
  expect(pdf.code).toBe(EXIT.usage);
  expect(pdf.written).toEqual([]);
  expect(flat(pdf.err)).toMatch(
    /this sheet's own page would be 50[89]\d mm long, and a PDF page is 5080 mm at the most .*--format svg/u,
  );
  const svg = await draw("svg");
  expect(svg.code).toBe(EXIT.done);
  // 4999 mm of knife and 85 beside it.
  expect(svg.io.disk.text("/shop/long.pattern.svg")).toMatch(/width="50[89]\dmm"/u);
});
