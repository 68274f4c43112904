import type { ForgeCard } from "@scantling/geometry";
import { describeIssue, type FileUnits, formatCaliper, formatTemperature } from "@scantling/geometry/units";
import { acceptedReason } from "../accepted.js";
import { namesIn, placeFinding } from "../finding-place.js";
import type { Job } from "../load.js";
import type { Bars } from "../stock-report.js";
import { ASK_WORDS } from "../wishes.js";
import { beside } from "./beside.js";
import { CAUTIONS } from "./cautions.js";
import { inBoth, percentText } from "./figures.js";
import { bySeverity, findingText, firstSentence, SEVERITY_WORDS } from "./findings.js";
import { layOutTable, wrap } from "./layout.js";
import type { Setup } from "./setup-json.js";
import { heatsTable, markTable, markText } from "./setup-marks.js";
import { mixedLines } from "./setup-mixed.js";
import { shapeLines } from "./setup-shape.js";
import { hammeredText, ruleText } from "./setup-sizes.js";
import { passTable, rightAligned, stopsKnown, withLayIn } from "./setup-stops.js";
import { weighTable } from "./setup-weights.js";
import { cutText, noPlanLines } from "./stock-text.js";

/** The forge card for people: one sheet, in the order of the work. */
export function setupText(setup: Setup, bars: Bars, job: Job): string[] {
  const { units } = job;
  const { card, plan, mixed, place } = setup;
  if (card === undefined) {
    return [
      ...stopLines(setup, job),
      ...noPlanLines(bars, units),
      ...wrap("scantling stock FILE says why.", undefined, "  "),
    ];
  }
  const title =
    mixed === undefined
      ? `Forge card of plan ${place} of ${bars.plans.length}: in the order of use`
      : "Forge card of the stack: in the order of use";
  const sections: string[][] = [
    [title, ...stopLines(setup, job)],
    [
      ...(plan === undefined ? [] : paragraph("Cut", `${cutText(plan, units)}.`)),
      ...(mixed === undefined ? [] : mixedLines(mixed, units)),
      ...weighTable(setup, units),
    ],
    billetLines(card, units),
    [...paragraph("Mark", markText(card, units)), ...markLines(card, units)],
    shoulderLines(card, units),
    downLines(card, units),
    shapeLines(card, units),
    [
      ...(stopsKnown(card.taper) ? [] : noStopsLines(job)),
      ...bySeverity(card.findings).flatMap((finding) =>
        wrap(
          acceptedReason(finding, job) === undefined
            ? `${SEVERITY_WORDS[finding.severity]}: ${namesIn(describeIssue(finding, units), job)}`
            : findingText(finding, job),
          undefined,
          "  ",
        ),
      ),
    ],
    [...CAUTIONS],
  ];
  return sections
    .filter((lines) => lines.length > 0)
    .flatMap((lines, i) => (i === 0 ? lines : ["", ...lines]));
}

const paragraph = (title: string, text: string): string[] => wrap(`${title}: ${text}`, undefined, "  ");

const indented = (lines: readonly string[]): string[] => lines.map((line) => `  ${line}`.trimEnd());

/** What `check` says stop to: the card at the forge is the last chance to see it. */
const stopLines = (setup: Setup, job: Job): string[] =>
  stopWords(setup, job).flatMap((words) => wrap(`${words} (scantling check FILE)`, undefined, "  "));

/** The same, each as one text, without where it is told in full. */
export function stopWords({ stops, notMet }: Pick<Setup, "stops" | "notMet">, job: Job): string[] {
  return [
    ...(notMet.length === 0 ? [] : [`NOT MET: ${notMet.map((name) => ASK_WORDS[name]).join(", ")}`]),
    ...stops.map((finding) => {
      // Of a hole the text does not say which.
      const hole = /\.holes\[/u.test(finding.path)
        ? `${placeFinding(finding, job).name.replace(/,.*/u, "")}: `
        : "";
      return `STOP: ${hole}${firstSentence(finding, job)}`;
    }),
  ];
}

/** The weld of equal bars, or the one bar; what of it becomes which size of the blade. */
function billetLines(card: ForgeCard, units: FileUnits): string[] {
  const { weld, stack, billet } = card;
  const lies = `${hammeredText(billet.height, units)} become the blade's height, ${hammeredText(billet.thickness, units)} its thickness`;
  if (weld === undefined) {
    return stack.highLength === undefined
      ? paragraph("Billet", `one solid bar, nothing to weld; ${lies}.`)
      : paragraph("Billet", `the last bar, ${ruleText(billet.length, units)} long at usual losses; ${lies}.`);
  }
  const { passes, least, reduction } = weld;
  const more =
    percentText(reduction) === percentText(least) ? "" : `, ${percentText(reduction)} with these stops`;
  return [
    ...paragraph(
      "Squeeze the weld",
      `${stack.bars} bars, joints cleaned bright, ${formatCaliper(passes.from, units)} high, to ${formatCaliper(passes.to, units)} or less at welding heat: ${percentText(least)} at the least${more}. The billet is then ${ruleText(weld.width, units)} wide, ${ruleText(weld.dressedWidth, units)} with its sides ground, ${ruleText(billet.length, units)} long with its ends cropped; ${lies}.`,
    ),
    ...indented(passTable(passes, units)),
  ];
}

function markLines(card: ForgeCard, units: FileUnits): string[] {
  return [
    ...indented(beside(markTable(card, units), heatsTable(card, units), 78)),
    ...(card.heats.usual.more < 0 ? ["  The steel does not last for the heats that are planned."] : []),
  ];
}

function shoulderLines(card: ForgeCard, units: FileUnits): string[] {
  const { shoulder, tang, billet, handle, thickness, shoulderPressing } = card;
  const size = ({ height, thickness: thick }: typeof tang.front): string =>
    `${hammeredText(height, units)} × ${hammeredText(thick, units)}`;
  const middle = tang.middle === undefined ? "" : `, ${size(tang.middle)} in the middle`;
  const fillet =
    tang.fillet === undefined ? "" : ` behind the radius of ${ruleText(tang.fillet, units)} in its corners`;
  const drawn = `draw the handle ${inBoth(ruleText, tang.length, units)} long, ${size(tang.front)} at the shoulder${fillet}${middle}, ${size(tang.butt)} at the butt.`;
  const known = stopsKnown(handle.passes);
  if (shoulder.passes.length === 0) {
    const own = known && handle.passes !== thickness.passes ? indented(passTable(handle, units)) : [];
    return [
      ...paragraph(
        "Shoulder",
        `nothing to set in: the billet, ${hammeredText(billet.height, units)} high, is not higher than the handle. D${drawn.slice(1)}`,
      ),
      ...own,
    ];
  }
  const rows = shoulder.passes.map((pass, i) => [
    `${i + 1}.`,
    pass.edgeSide > 0 ? hammeredText(pass.edgeSide, units) : "–",
    pass.spineSide > 0 ? hammeredText(pass.spineSide, units) : "–",
    hammeredText(pass.height, units),
    known
      ? formatCaliper(shoulderPressing[i]?.thickness ?? pass.thickness, units)
      : hammeredText(pass.thickness, units),
    hammeredText(pass.fuller, units),
  ]);
  const heads = ["", "edge side", "spine side", "high", "thick", "fuller R"];
  return [
    ...paragraph(
      "Shoulder",
      `set in ${hammeredText(shoulder.depth, units)} at the mark before the blade is drawn, and ${drawn}`,
    ),
    ...indented(
      known
        ? handleStops([heads, ...rows], card, units)
        : layOutTable([heads, ...rows], rightAligned(heads.length)),
    ),
  ];
}

/** Beside the passes of the fuller those of the press: by their numbers where the blade has the same below. */
function handleStops(rows: readonly (readonly string[])[], card: ForgeCard, units: FileUnits): string[] {
  const { handle, thickness, shoulderPressing } = card;
  const stops = shoulderPressing.map(({ passes }) => passes);
  if (handle.passes !== thickness.passes) return withLayIn(rows, stops, units);
  const numbers = stops.map((passes) =>
    passes.length === 0 ? "–" : passes.map((pass) => thickness.passes.indexOf(pass) + 1).join(", "),
  );
  const cells = ["blade's pass", ...numbers];
  return layOutTable(
    rows.map((row, i) => [...row, cells[i] ?? ""]),
    rightAligned((rows[0]?.length ?? 0) + 1),
  );
}

/** What the blade's steel is brought to at the heel: its thickness, and what of the thinning has to go into height. */
function downLines(card: ForgeCard, units: FileUnits): string[] {
  const { thickness, billet, preform } = card;
  const { from, to, passes } = thickness;
  if (passes.length === 0) {
    return paragraph(
      "Press the blade down",
      `nothing to take off: the billet is ${formatCaliper(from, units)} thick, the preform ${formatCaliper(to, units)}.`,
    );
  }
  const height = preform[0]?.height ?? 0;
  const grows =
    Math.abs(height - billet.height) < 1
      ? ""
      : `; its height goes from ${ruleText(billet.height, units)} to ${ruleText(height, units)}`;
  return [
    ...paragraph(
      "Press the blade down",
      `from ${formatCaliper(from, units)} to ${formatCaliper(to, units)}, the preform's thickness at the heel, at ${formatTemperature(thickness.temperature, units)}${grows}.`,
    ),
    ...indented(passTable(thickness, units)),
  ];
}

function noStopsLines({ shopPlaces }: Job): string[] {
  return wrap(
    `No stop blocks are known: list them in ${shopPlaces?.fileName ?? "shop.yaml"} below press:, as stopBlocks: [6, 8, 10] and shims: [1, 0.5, 0.2].`,
    undefined,
    "  ",
  );
}
