import {
  bevelsBegin,
  bladeStation,
  type FitFigure,
  type Knife,
  type StationPlace,
} from "@scantling/geometry";
import { ASK_KINDS, type Ask } from "../file/index.js";
import type { Job } from "../load.js";
import type { Measured } from "../measure.js";
import { askLabel } from "../report/asks-text.js";
import { sizeValue } from "../size-intervals.js";
import { stackFigures } from "../stack-figures.js";
import { type FitTarget, massScale, SCALES } from "./targets.js";

/**
 * Asks of the order as targets. Where the command line asks for nothing they are what is to be met. Where it does, those that the
 * drawing meets are to stay met, and a figure that it asks for itself takes the place of the order's. Wishes are not among them,
 * nor layers, which no size changes.
 */
export function orderTargets(
  { job, knife, answers }: Measured,
  asked: readonly FitTarget[],
): readonly FitTarget[] {
  return answers
    .filter(({ ask, verdict }) => {
      const isOpen = asked.length === 0 || verdict !== "not-met";
      return (
        isOpen &&
        !ask.should &&
        ask.name !== "layers" &&
        !asked.some((target) => isSameFigure(target, ask, knife))
      );
    })
    .map(({ ask }): FitTarget => {
      const figure = figureOf(ask, job);
      const kind = ASK_KINDS[ask.name];
      return {
        name: askKey(ask),
        path: ask.path,
        words: askLabel(ask, job.units),
        kind,
        test: ask.test,
        figure,
        scale: scaleOf(ask),
        source: "order",
      };
    });
}

/** As for the same figure on the command line. */
function scaleOf({ name, test }: Ask): number {
  if (ASK_KINDS[name] === "mass") return massScale(test);
  if (ASK_KINDS[name] === "angle") return SCALES.angle;
  return name === "thickness" || name === "behindEdge" ? SCALES.thin : SCALES.length;
}

/** Whether the command line asks for the figure of an ask: at the same place, as far up. */
function isSameFigure({ figure }: FitTarget, { name, at, up }: Ask, knife: Knife): boolean {
  const x = (place: StationPlace | undefined): number =>
    place === undefined ? bevelsBegin(knife) : bladeStation(place, knife.outline);
  switch (figure.kind) {
    case "mass":
    case "balance":
      return name === figure.kind;
    case "bevel-angle":
      return name === "bevelAngle" && x(figure.at) === x(at);
    case "behind-edge":
      return name === "behindEdge" && up === figure.above && x(figure.at) === x(at);
    default:
      return false;
  }
}

/** What tells an ask from all others of its order: several may be about one figure, each at its own place. */
export const askKey = ({ path }: Pick<Ask, "path">): string => path.replace(/^order\.asks\./u, "");

function figureOf(ask: Ask, job: Job): FitFigure {
  const { name } = ask;
  switch (name) {
    case "mass":
    case "balance":
      return { kind: name };
    case "layers":
    case "coreLine":
      return own((knife) => stackFigures(job, knife)[name]?.value ?? Number.NaN);
    default:
      return own((knife) => sizeValue(knife, { ...ask, name }));
  }
}

const own = (measure: (knife: Knife) => number): FitFigure => ({ kind: "own", measure });
