import type { PieceState } from "@scantling/geometry";
import type { SheetContent } from "@scantling/render";
import { setupOf } from "../forge-setup.js";
import type { Measured } from "../measure.js";
import { makeDrillingModel } from "../models/drilling-model.js";
import { makeGaugesModel } from "../models/gauges-model.js";
import { makePatternModel } from "../models/pattern-model.js";
import { makePlotsModel } from "../models/plots-model.js";
import { makePreformModel } from "../models/preform-model.js";
import { makeSectionsModel } from "../models/sections-model.js";
import { makeSheathModel, whyNoSheath } from "../models/sheath-model.js";
import { makeSlabsModel, whyNoSlabs } from "../models/slabs-model.js";
import { isStop } from "../report/findings.js";
import { stopWords } from "../report/setup-text.js";
import { type Bars, knifeFindings, planBars } from "../stock-report.js";
import type { SheetName } from "./sheet-names.js";

/** What is asked of the sheets. */
export interface SheetWishes {
  /** Size states of the pattern, nested in one another. */
  readonly states: readonly PieceState[];
  /** Distance of the line to saw or scribe along from the outline, mm; 0: none. */
  readonly cutOffset: number;
  /** Places of further sections. */
  readonly at?: string;
}

/** A sheet before it is laid out, in versions from the fullest; or why there is none. */
export type MadeSheet =
  | { readonly name: SheetName; readonly contents: readonly SheetContent[] }
  | { readonly name: SheetName; readonly missing: string };

/** The job with its bars, which only some sheets need: planned when the first of them asks. */
interface SheetJob {
  readonly measured: Measured;
  readonly bars: () => Bars;
  /** Whether one sheet alone is asked for. */
  readonly isAlone: boolean;
}

/**
 * What goes on each of the sheets that are asked for.
 *
 * @param bars - The planned bars where they are known already.
 */
export async function makeSheets(
  measured: Measured,
  names: readonly SheetName[],
  wishes: SheetWishes,
  bars?: Bars,
): Promise<MadeSheet[]> {
  let planned = bars;
  const job: SheetJob = {
    measured,
    isAlone: names.length === 1,
    bars: () => {
      planned ??= planBars(measured);
      return planned;
    },
  };
  const render = await import("@scantling/render");
  const stops = knifeFindings(measured).filter(isStop);
  const warnings = stopWords({ stops, notMet: [] }, measured.job);
  return names.map((name) => {
    const made = makeSheet(render, job, name, wishes);
    return "missing" in made || warnings.length === 0
      ? made
      : { ...made, contents: made.contents.map((content) => ({ ...content, warnings })) };
  });
}

function makeSheet(
  render: typeof import("@scantling/render"),
  { measured, bars, isAlone }: SheetJob,
  name: SheetName,
  wishes: SheetWishes,
): MadeSheet {
  const made = <T>(
    model: T | undefined,
    contentsOf: (model: T) => SheetContent[],
    missing: string,
  ): MadeSheet => {
    const contents = model === undefined ? [] : contentsOf(model);
    return contents.length === 0 ? { name, missing } : { name, contents };
  };
  const { cutOffset } = wishes;
  switch (name) {
    case "pattern":
      return {
        name,
        contents: render.patternContents(makePatternModel(measured, wishes.states, { cutOffset })),
      };
    case "mirrored":
      return {
        name,
        contents: render.patternContents(
          makePatternModel(measured, wishes.states, { cutOffset, face: "left" }),
        ),
      };
    case "preform":
      return made(
        makePreformModel(measured, setupOf(measured, bars())),
        render.preformContents,
        "no bar on the rack can become this blade",
      );
    case "drilling":
      return made(makeDrillingModel(measured), render.drillingContents, "no hole is drilled in the steel");
    case "slabs":
      return made(makeSlabsModel(measured), render.slabsContents, whyNoSlabs(measured));
    case "gauges":
      return made(makeGaugesModel(measured), render.gaugesContents, "nothing on the knife wants a gauge");
    case "sections":
      return { name, contents: render.sectionsContents(makeSectionsModel(measured, wishes.at)) };
    case "sheath":
      return sheath(render, measured, isAlone);
    case "plots":
      return { name, contents: render.plotsContents(makePlotsModel(measured, bars())) };
  }
}

/** Asked for alone, a sheath that cannot be is told with the line of the file that says so; among others it is left out. */
function sheath(render: typeof import("@scantling/render"), measured: Measured, isAlone: boolean): MadeSheet {
  const missing = isAlone ? undefined : whyNoSheath(measured);
  return missing === undefined
    ? { name: "sheath", contents: render.sheathContents(makeSheathModel(measured)) }
    : { name: "sheath", missing };
}
