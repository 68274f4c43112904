import { type BenchSetUp, letterName } from "@scantling/geometry";
import { type FileUnits, formatCaliper } from "@scantling/geometry/units";
import type { CardCell, CardPanel, DrillingHole } from "@scantling/render";
import type { Measured } from "../measure.js";
import { makeDrillingModel } from "../models/drilling-model.js";

import { bareCaliper, bareLength, degrees, loudWords, panel, table, words } from "./card-blocks.js";

/** Holes and taper of the tang: the taper first where it is forged in. */
export function tangPanels(measured: Measured, bench: BenchSetUp): CardPanel[] {
  const { units } = measured.job;
  const drill = drillPanel(measured);
  const taper = taperPanel(bench, units);
  return measured.knife.allowances.tang === "tapered" ? [...taper, ...drill] : [...drill, ...taper];
}

/** Hole centres from two edges of the finished profile, as on the drill layout. */
function drillPanel(measured: Measured): CardPanel[] {
  const { units } = measured.job;
  const drilling = makeDrillingModel(measured);
  const rows = (drilling?.holes ?? []).flatMap(({ places, diameter, kind, drill }, index) =>
    places.map((place, end): CardCell[] => [
      `${letterName(index)}${places.length > 1 ? (end === 0 ? " from" : " to") : ""} ${kind}`,
      `${bareCaliper(place.along, units)}${place.end === "heel" ? " *" : ""}`,
      bareCaliper(place.fromTop, units),
      bareCaliper(diameter, units),
      drill ?? "–",
    ]),
  );
  const heel = drilling?.holes.some(({ places }) => places.some(({ end }) => end === "heel")) === true;
  return panel("Drill the steel", `square, ${units}`, [
    ...(drilling?.warnings ?? []).map(loudWords),
    ...table(["", "from butt", "from top", "hole", "drill"], rows),
    ...(heel ? [words("* from the heel, towards the tip")] : []),
    ...(rows.length === 0
      ? []
      : [words(`${playWords(drilling?.holes ?? [], units)}Butt and top as finished.`)]),
  ]);
}

/** What the pins have, hole less pin: `Pin play: A, B 0.05 mm. `; nothing where no pin goes through. */
function playWords(holes: readonly DrillingHole[], units: FileUnits): string {
  const by = new Map<string, string[]>();
  for (const [index, { play }] of holes.entries()) {
    if (play === undefined) continue;
    const text = formatCaliper(play, units);
    by.set(text, [...(by.get(text) ?? []), letterName(index)]);
  }
  const told = [...by].map(([text, names]) => `${names.join(", ")} ${text}`);
  return told.length === 0 ? "" : `Pin play: ${told.join("; ")}. `;
}

/** Places closer than this are one, mm. */
const SAME = 1e-6;

function taperPanel({ taper, holes }: BenchSetUp, units: FileUnits): CardPanel[] {
  if (taper === undefined) return [];
  const { shims, length } = taper;
  // Half way is told only where there is no pin to look at.
  const told = shims.length > 2 ? shims.filter(({ at }) => Math.abs(at - length / 2) > SAME) : shims;
  const rows = told.map((shim): CardCell[] => [
    bareLength(shim.at, units),
    bareCaliper(shim.oneFace, units),
    bareCaliper(shim.twoFace, units),
  ]);
  return panel("Taper the tang", `shims, ${units}`, [
    words(
      `Front ${formatCaliper(taper.front, units)}, butt ${formatCaliper(taper.butt, units)}, ${degrees(Math.abs(taper.lean))} on each face${taper.lean < 0 ? ", thicker behind" : ""}.`,
    ),
    ...table(
      ["behind front", holes.length === 0 ? "first face" : "first face, drilling", "second face"],
      rows,
    ),
  ]);
}
