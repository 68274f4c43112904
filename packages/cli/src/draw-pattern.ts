import type { PieceState } from "@scantling/geometry";
import type { OutputFile } from "./deliver.js";
import type { Measured } from "./measure.js";
import { makePatternModel } from "./models/pattern-model.js";

/** A sheet that was drawn, with its page in mm. */
export interface DrawnSheet extends OutputFile {
  readonly format: "svg";
  readonly state: string;
  readonly width: number;
  readonly height: number;
  /** The standard paper whose size the page has, "A3"; undefined where none is large enough. */
  readonly paper: string | undefined;
}

/** Draws the true-size pattern. The drawing side is loaded here, for most commands never need it. */
export async function drawPattern(measured: Measured, state: PieceState = "finished"): Promise<DrawnSheet> {
  const model = makePatternModel(measured, state);
  const { patternSheet, toSvg } = await import("@scantling/render");
  const drawing = patternSheet(model);
  return {
    name: `${measured.job.name}.pattern${state === "finished" ? "" : `-${state}`}.svg`,
    content: await toSvg(drawing),
    format: "svg",
    state: model.state,
    width: drawing.width,
    height: drawing.height,
    paper: drawing.paper,
  };
}
