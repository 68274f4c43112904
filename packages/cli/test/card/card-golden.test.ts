import { benchCard, paperNamed, toSvg } from "@scantling/render";
import { expect, it } from "vitest";
import { cardOf } from "./card-of.js";

// Looked at at 100 %; what is right about it the other tests say.
it("the demo's card is drawn to the byte", async () => {
  const { card } = await cardOf();
  const [forge, bench] = benchCard(card, paperNamed("A4"));
  if (forge === undefined || bench === undefined) throw new Error("the demo's card has two pages");
  await expect(await toSvg(forge)).toMatchFileSnapshot("../golden/bench-card-mg-14-forge.svg");
  await expect(await toSvg(bench)).toMatchFileSnapshot("../golden/bench-card-mg-14-bench.svg");
});
