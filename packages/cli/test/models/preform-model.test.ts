import { readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { ledgerBodies, signedArea, thermalElongation } from "@scantling/geometry";
import { checkLayout, layOutSheet, papersFor, preformContents } from "@scantling/render";
import { describe, expect, it } from "vitest";
import { setupOf } from "../../src/forge-setup.js";
import { nodeIo } from "../../src/io/node-io.js";
import { loadJob } from "../../src/load.js";
import { type Measured, measure } from "../../src/measure.js";
import { makePreformModel } from "../../src/models/preform-model.js";
import { planBars } from "../../src/stock-report.js";
import { DEMO_FILES } from "../support/demo.js";
import { fakeIo } from "../support/fake-io.js";

const FILE = "harvest.knife.yaml";

const measuredOf = async (files: Readonly<Record<string, string>>): Promise<Measured> =>
  measure(await loadJob(fakeIo({ files }), FILE, {}));

const EXAMPLES = fileURLToPath(new URL("../../../../examples/", import.meta.url));
const files = readdirSync(EXAMPLES, { recursive: true, encoding: "utf8" })
  .filter((name) => name.endsWith(".knife.yaml"))
  .sort();

describe.each(files)("the preform of %s", (file) => {
  it("is as thick between its marks and the places of the card's taper as a straight line says", async () => {
    const measured = measure(await loadJob(nodeIo(), `${EXAMPLES}${file}`, {}));
    const { card } = setupOf(measured, planBars(measured));
    const model = makePreformModel(measured, { ...(card === undefined ? {} : { card }) });
    if (model === undefined || card === undefined) return;
    const told = [
      ...model.marks.map(({ fromShoulder, thickness }) => ({ at: fromShoulder, thickness })),
      ...card.taper.map(({ at, cold }) => ({ at, thickness: cold })),
    ].sort((a, b) => a.at - b.at);
    for (const { at, thickness } of card.preform.filter((station) => station.at >= 0)) {
      const next = told.find((place) => place.at >= at) ?? told.at(-1);
      const before = told.findLast((place) => place.at <= at) ?? told[0];
      if (next === undefined || before === undefined) throw new Error("marks");
      const share = next.at === before.at ? 0 : (at - before.at) / (next.at - before.at);
      const straight = before.thickness + share * (next.thickness - before.thickness);
      // What is hammered to is told in tenths of a mm.
      expect(Math.abs(straight - thickness), `${at}`).toBeLessThan(0.1);
    }
  });
});

describe("the demo's preform", () => {
  it("is that of the forge card: handle and blade one after the other, at its temperature", async () => {
    const measured = await measuredOf(DEMO_FILES);
    const { card } = setupOf(measured, planBars(measured));
    const model = makePreformModel(measured, { ...(card === undefined ? {} : { card }) });
    if (model === undefined || card === undefined) throw new Error("no card");
    const end = card.preform.at(-1);
    expect(model.shoulder).toBeCloseTo(card.tang.length, 9);
    expect(model.length).toBeCloseTo(card.tang.length + (end?.at ?? 0), 9);
    expect(model.marks.at(-1)).toMatchObject({ fromShoulder: end?.at, height: end?.height });
    expect(model.marks.slice(0, 3).map(({ fromShoulder }) => fromShoulder)).toEqual([0, 25, 50]);
    expect(model.elongation).toBe(thermalElongation(card.temperature));
    expect(model.billetMark).toBe(card.marks.at);
    // Its area times the thickness over it is the forged steel; with the thickness between 2 and 5 mm it lies between.
    const bodies = ledgerBodies(measured.knife);
    const steel =
      bodies.finished +
      bodies.sharpening +
      bodies.finishGrinding +
      bodies.drilling +
      bodies.bevelGrinding +
      bodies.tangGrinding +
      bodies.faceGrinding +
      bodies.profileTrimming;
    const mean = steel / signedArea(model.outline);
    expect(mean).toBeGreaterThan(Math.min(...model.marks.map(({ thickness }) => thickness)));
    expect(mean).toBeLessThan(Math.max(...model.marks.map(({ thickness }) => thickness)));
    const pages = layOutSheet(preformContents(model), { kind: "smallest", papers: papersFor("mm") });
    expect(pages.flatMap(checkLayout)).toEqual([]);
  });

  it("is none where the rack gives no plan", async () => {
    const measured = await measuredOf({ [FILE]: DEMO_FILES[FILE] });
    expect(makePreformModel(measured, setupOf(measured, planBars(measured)))).toBeUndefined();
  });
});
