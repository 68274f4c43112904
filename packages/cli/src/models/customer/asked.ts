import { bladeStation, type Knife } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import type { AskAnswer } from "../../asks.js";
import type { Ask, AskName } from "../../file/index.js";
import { lengthText, percentText } from "../../report/figures.js";

/** What is asked for, as the customer reads it, its place left out. */
const WORDS: Readonly<Record<AskName, string>> = {
  mass: "Mass",
  balance: "Balance",
  overallLength: "Overall length",
  edgeLength: "Edge, heel to tip",
  heelHeight: "Height at the heel",
  handleLength: "Handle length",
  thickness: "Spine",
  behindEdge: "Thickness behind the edge",
  bevelAngle: "Bevel, per side",
  sharpeningAngle: "Edge sharpened at",
  layers: "Layers that can be told apart",
  coreLine: "Core line above the edge",
};

/** `Spine at the tip`, `Thickness 1.0 mm above the edge at 60 %`. */
export function askedWords({ name, at, up }: Ask, units: FileUnits): string {
  const what = up === undefined ? WORDS[name] : `Thickness ${lengthText(up, units)} above the edge`;
  if (!isPlaced(name)) return what;
  if (at === undefined) return `${what} at the heel`;
  switch (at.kind) {
    case "distance":
      return `${what} at ${lengthText(at.mm, units)} from the heel`;
    case "fraction":
      return `${what} at ${percentText(at.share)} of the edge`;
    default:
      return `${what} at the ${at.kind}`;
  }
}

const PLACED: readonly AskName[] = ["thickness", "behindEdge", "bevelAngle", "coreLine"];
const isPlaced = (name: AskName): boolean => PLACED.includes(name);

/** What a row of the sheet tells, so that an answer can be put to it. */
export interface Told {
  readonly name: AskName;
  /** mm ahead of the heel, where a place is told of. */
  readonly x?: number;
  /** mm, g, rad or a number. */
  readonly value: number;
}

/** Two figures that are the same one, mm, g or rad. */
const SAME = 1e-6;

/** Whether an answer is about the very figure of a row: its name, its place, its value. */
export function isAbout({ name, x, value }: Told, { ask, figure }: AskAnswer, { outline }: Knife): boolean {
  if (ask.name !== name || ask.up !== undefined || Math.abs(figure.value - value) > SAME) return false;
  return !isPlaced(name) || Math.abs(bladeStation(ask.at ?? { kind: "heel" }, outline) - (x ?? 0)) <= SAME;
}

/** Whether two answers are about one figure of the knife. */
export function isSameFigure(one: AskAnswer, other: AskAnswer, { outline }: Knife): boolean {
  const x = ({ ask }: AskAnswer): number => bladeStation(ask.at ?? { kind: "heel" }, outline);
  return (
    one.ask.name === other.ask.name &&
    one.ask.up === other.ask.up &&
    (!isPlaced(one.ask.name) || Math.abs(x(one) - x(other)) <= SAME)
  );
}
