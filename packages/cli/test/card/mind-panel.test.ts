import type { Finding } from "@scantling/geometry";
import { expect, it } from "vitest";
import { mindPanel } from "../../src/card/mind-panel.js";
import { cardOf, textOf } from "./card-of.js";

const finding = (text: string, severity: Finding["severity"]): Finding => ({
  code: "hole-near-edge",
  severity,
  path: "",
  text,
  values: {},
  basis: "",
});

it("what to mind is told with what to do about it, in two sentences at the most; notes are left out", async () => {
  const { measured } = await cardOf();
  const [panel] = mindPanel(
    [
      finding("The bar is too tall. Squeeze it back earlier. It buckles in heavy blows.", "warn"),
      finding("Nothing can be done.", "warn"),
      finding("A note. It is told elsewhere.", "note"),
    ],
    measured.job,
  );
  if (panel === undefined) throw new Error("no panel");
  expect(textOf(panel)).toBe("The bar is too tall. Squeeze it back earlier. Nothing can be done.");
});
