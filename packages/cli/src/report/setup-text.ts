import {
  type ForgeCard,
  type HeatsLeft,
  type PressPasses,
  type PressStop,
  preformSteps,
  reachShare,
  type StopChoice,
  thermalElongation,
} from "@scantling/geometry";
import { type FileUnits, formatLength, formatTemperature, inchesToMm } from "@scantling/geometry/units";
import type { Job } from "../load.js";
import type { Bars } from "../stock-report.js";
import { CAUTIONS } from "./cautions.js";
import { fixed, inBoth, LENGTH_FIGURES, lengthText, massText, percentText } from "./figures.js";
import { findingLines } from "./findings.js";
import { type Align, layOutTable, REPORT_WIDTH, wrap } from "./layout.js";
import type { Setup } from "./setup-json.js";
import { cutText, noPlanLines } from "./stock-text.js";

/** To 0.01 mm or 0.001 in, as calipers and shims are marked. */
const fine = LENGTH_FIGURES[1] ?? lengthText;

/** Sections stand two blanks in. */
const SECTION_WIDTH = REPORT_WIDTH - 2;

/** Steps along the preform that a rule lays off: 25 mm, 1 in. */
const STEP: Readonly<Record<FileUnits, number>> = { mm: 25, in: inchesToMm(1) };

/** The forge card for people, in the order of the work. */
export function setupText(setup: Setup | undefined, bars: Bars, job: Job): string[] {
  const { units } = job;
  if (setup === undefined) {
    return [...noPlanLines(bars, units), ...wrap("scantling stock FILE says why.", undefined, "  ")];
  }
  const { card, plan, place } = setup;
  const sections: string[][] = [
    ...(plan === undefined
      ? [["Forge card of the last bar: in the order of use"], lastBarLines(card, units)]
      : [
          [`Forge card of plan ${place} of ${bars.plans.length}: in the order of use`],
          section("Cut", [`${cutText(plan, units)}.`]),
          stackLines(card, units),
        ]),
    markLines(card, units),
    shoulderLines(card, units),
    pressLines("Press the blade down", card.thickness, units, downTexts(card, units)),
    preformLines(card, units),
    taperLines(card, units),
    heatsLines(card, units),
    ...(card.taper[0]?.stop === undefined ? [noStopsLines(job)] : []),
    ...(card.findings.length === 0
      ? []
      : [card.findings.flatMap((finding) => findingLines(finding, job, { basis: true }))]),
    [...CAUTIONS],
  ];
  return sections.flatMap((lines, i) => (i === 0 ? lines : ["", ...lines]));
}

function section(title: string, texts: readonly string[], table: readonly string[] = []): string[] {
  return [
    title,
    ...texts.flatMap((text) => wrap(text, SECTION_WIDTH).map((line) => `  ${line}`)),
    ...table.map((line) => `  ${line}`),
  ];
}

function stackLines(card: ForgeCard, units: FileUnits): string[] {
  const { weld, stack, billet } = card;
  const lies = liesText(billet, units);
  if (weld === undefined) return section("Stack", [`One solid bar, nothing to weld. ${lies}`]);
  const { passes } = weld;
  return [
    ...section("Stack", [
      `${stack.bars} bars, both faces of every joint cleaned bright: ${fine(passes.from, units)} high.`,
    ]),
    "",
    ...pressLines("Squeeze the weld", passes, units, [
      `From ${fine(passes.from, units)} to ${fine(passes.to, units)} at welding heat, ${percentText(weld.reduction)} at the least; the billet is then ${lengthText(weld.width, units)} wide, ${lengthText(weld.dressedWidth, units)} once its sides are ground, and ${lengthText(billet.length, units)} long once its ends are cropped. ${lies}`,
    ]),
  ];
}

/** A bar of two or more steels: how it is welded is another report. */
function lastBarLines({ billet }: ForgeCard, units: FileUnits): string[] {
  return section("Last bar", [
    `Weld it as scantling stock FILE says: ${fine(billet.height, units)} × ${fine(billet.thickness, units)}, ${lengthText(billet.length, units)} long at usual losses, any grooves ground and pressed flat. ${liesText(billet, units)}`,
  ]);
}

const liesText = ({ height, thickness }: ForgeCard["billet"], units: FileUnits): string =>
  `In the blade ${fine(height, units)} become its height, ${fine(thickness, units)} its thickness.`;

function markLines({ marks }: ForgeCard, units: FileUnits): string[] {
  const { usual, high, at } = marks;
  const neck = Math.abs(usual.handleFront - usual.tang) > 0.5;
  const row = (name: string, of: (side: typeof usual) => number): string[] => [
    name,
    lengthText(of(usual), units),
    lengthText(of(high), units),
  ];
  return section(
    "Mark",
    [
      `Punch the billet ${inBoth(lengthText, at, units)} from its butt end. What is behind the mark becomes ${neck ? "handle and neck" : "the handle"}, the rest the blade.`,
      ...(neck
        ? [
            `The handle itself begins ${lengthText(high.tang - high.handleFront, units)} behind the mark; the step is at the mark.`,
          ]
        : []),
      "The mark covers high losses for the handle: saw off what is over at the butt. Spare steel is left at the point.",
    ],
    layOutTable(
      [
        ["", "usual", "high losses"],
        row("handle eats", (side) => side.tang),
        row("blade eats", (side) => side.blade),
        row("spare", (side) => side.spare),
        row("billet in all", (side) => side.available),
      ],
      ["left", "right", "right"],
    ),
  );
}

function shoulderLines({ shoulder, tang, billet }: ForgeCard, units: FileUnits): string[] {
  const { passes, depth } = shoulder;
  const drawn = `Draw the handle steel to ${inBoth(lengthText, tang.length, units)} long, ${fine(tang.front.height, units)} × ${fine(tang.front.thickness, units)} at the shoulder, ${fine(tang.butt.height, units)} × ${fine(tang.butt.thickness, units)} at the butt.`;
  if (passes.length === 0) {
    return section("Shoulder", [
      `Nothing to set in: the billet, ${fine(billet.height, units)} high, is not higher than the handle.`,
      drawn,
    ]);
  }
  const rows = passes.map((pass, i) => [
    `${i + 1}.`,
    pass.edgeSide > 0 ? fine(pass.edgeSide, units) : "–",
    pass.spineSide > 0 ? fine(pass.spineSide, units) : "–",
    fine(pass.height, units),
    fine(pass.thickness, units),
    fixed(pass.ratio, 2),
    fine(pass.fuller, units),
  ]);
  return section(
    "Shoulder",
    [`Set in ${fine(depth, units)} at the mark before the blade is drawn.`],
    [
      ...layOutTable(
        [["", "edge side", "spine side", "height", "thickness", "ratio", "fuller R"], ...rows],
        rightAligned(7),
      ),
      ...wrap(drawn, SECTION_WIDTH),
    ],
  );
}

/** What the blade's steel is brought to at the heel: its thickness, and what of the thinning has to go into height. */
function downTexts(
  { thickness: { from, to, passes }, billet, preform }: ForgeCard,
  units: FileUnits,
): string[] {
  if (passes.length === 0) {
    return [`Nothing to take off: the billet is ${fine(from, units)} thick, the preform ${fine(to, units)}.`];
  }
  const height = preform[0]?.height ?? 0;
  const share = reachShare(height, to, billet.height, billet.thickness);
  const grows = share > 0 ? `, so ${percentText(share)} of the thinning goes into height` : "";
  return [
    `From ${fine(from, units)} to ${fine(to, units)}, the preform's thickness at the heel. Its height goes from ${fine(billet.height, units)} to ${lengthText(height, units)} there${grows}.`,
  ];
}

function pressLines(
  title: string,
  pressed: PressPasses,
  units: FileUnits,
  said: readonly string[],
): string[] {
  const { passes } = pressed;
  if (passes.length === 0) return section(title, said);
  const rows = passes.map((pass, i) => [
    `${i + 1}.`,
    bare(pass.cold, units),
    percentText(pass.reduction),
    ...stopCells(pass, units),
  ]);
  const heads = ["", `cold ${units}`, "takes", ...stopHeads(pressed, units)];
  return section(title, said, withLayIn([heads, ...rows], passes, units));
}

/** Heads of the columns that `stopCells` fills; the stop is told apart from the hot size where the press is off. */
function stopHeads({ temperature }: { readonly temperature: number }, units: FileUnits): string[] {
  return [`at ${formatTemperature(temperature, units)}`, "stop", "off by"];
}

function stopCells({ hot, wanted, stop }: PressStop, units: FileUnits): string[] {
  const off = stop === undefined ? "" : `${stop.error < 0 ? "−" : "+"}${bare(Math.abs(stop.error), units)}`;
  return [bare(hot, units), bare(wanted, units), off];
}

/** A table of stops, and behind each what to lay in: the post, then the shims on it. */
function withLayIn(
  rows: readonly (readonly string[])[],
  stops: readonly PressStop[],
  units: FileUnits,
): string[] {
  const lines = layOutTable(rows, rightAligned(rows[0]?.length ?? 0));
  if (stops[0]?.stop === undefined) {
    // Without stops there is nothing that they could be off by.
    return layOutTable(
      rows.map((cells) => cells.slice(0, -1)),
      rightAligned(rows[0]?.length ?? 0),
    );
  }
  const wide = Math.max(...lines.map((line) => line.length)) + 2;
  const indent = " ".repeat(wide);
  return lines.flatMap((line, i) => {
    const stop = stops[i - 1]?.stop;
    const text = stop === undefined ? "lay in" : layIn(stop, units);
    return wrap(text, SECTION_WIDTH - wide).map(
      (part, n) => `${n === 0 ? line.padEnd(wide) : indent}${part}`,
    );
  });
}

/** `8 + 0.5 + 2×0.2`: the post, then the shims on it, thickest first. */
function layIn({ block, shims }: StopChoice, units: FileUnits): string {
  const sizes = [...new Set(shims)].map((size) => {
    const number = shims.filter((one) => one === size).length;
    return `${number > 1 ? `${number}×` : ""}${marked(size, units)}`;
  });
  return [marked(block, units), ...sizes].join(" + ");
}

/** A size as it is marked on a block: no more digits than it has. */
const marked = (mm: number, units: FileUnits): string =>
  formatLength(mm, units, { resolution: units === "mm" ? 0.001 : 0.0001 }).replace(/ mm$/u, "");

/** A size in a table whose head says the unit. */
const bare = (mm: number, units: FileUnits): string => fine(mm, units).replace(/ mm$/u, "");

function preformLines(card: ForgeCard, units: FileUnits): string[] {
  const { preform, spreadShare, temperature, preCurve } = card;
  const rows = preformSteps(preform, STEP[units]).map((station) => [
    lengthText(station.at, units),
    lengthText(station.height, units),
    fine(station.thickness, units),
    lengthText(station.x, units),
    lengthText(station.height * (station.thickness / station.meanThickness) ** spreadShare, units),
  ]);
  const longer = percentTenths(thermalElongation(temperature));
  return section(
    "Preform, before the bevels",
    [
      `${percentText(spreadShare)} of the thinning goes into height. Sizes are cold: hot steel measures ${longer} more. "Then": once the bevels are in.`,
      preCurve === undefined
        ? "The point comes up as the edge is stretched. Measure by how much, give the shop file preCurve: { sweep, length }, and the bend to make before is told here."
        : `Bend the point down by ${inBoth(lengthText, preCurve, units)} before the bevels are hammered in.`,
    ],
    layOutTable(
      [["from shoulder", "height", "thickness", "then from heel", "then high"], ...rows],
      rightAligned(5),
    ),
  );
}

const percentTenths = (share: number): string => `${fixed(share * 100, 1)} %`;

function taperLines(card: ForgeCard, units: FileUnits): string[] {
  const rows = card.taper.map((stop) => [
    lengthText(stop.x, units),
    bare(stop.cold, units),
    ...stopCells(stop, units),
  ]);
  return section(
    "Distal taper, thickness at the spine",
    [],
    withLayIn([["from heel", `cold ${units}`, ...stopHeads(card, units)], ...rows], card.taper, units),
  );
}

function heatsLines({ heats }: ForgeCard, units: FileUnits): string[] {
  const { usual, high } = heats;
  const more = ({ more: heatsMore }: HeatsLeft): string =>
    Number.isFinite(heatsMore) ? `${heatsMore}` : "any number";
  const row = (name: string, cell: (side: HeatsLeft) => string): string[] => [name, cell(usual), cell(high)];
  return section(
    "Heats left",
    usual.more < 0 ? ["The steel does not last for the heats that are planned."] : [],
    layOutTable(
      [
        [`${usual.planned} heats are planned`, "usual", "high losses"],
        row("more than these", more),
        row("each costs, billet", ({ perHeat }) => tenths(perHeat.billet, units)),
        row("each costs, forged blade", ({ perHeat }) => tenths(perHeat.forged, units)),
        row("over when forged", ({ overForged }) => massText(overForged, units)),
      ],
      ["left", "right", "right"],
    ),
  );
}

/** A loss of one heat: to 0.1 g, or 0.01 oz. */
const tenths = (grams: number, units: FileUnits): string =>
  units === "mm" ? `${fixed(grams, 1)} g` : massText(grams, units);

function noStopsLines({ shopPlaces }: Job): string[] {
  return wrap(
    `No stop blocks are known. List them in ${shopPlaces?.fileName ?? "shop.yaml"} below press: as stopBlocks: [6, 8, 10] and shims: [1, 0.5, 0.2], and what to lay in is told here.`,
    undefined,
    "  ",
  );
}

const rightAligned = (columns: number): Align[] => Array.from({ length: columns }, () => "right");
