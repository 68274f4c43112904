import { type FigurePath, figureOf, type LearntFigure, type ModelsCompared } from "@scantling/geometry";
import { describeIssue, type FileUnits, formatNumber } from "@scantling/geometry/units";
import { shownFigure } from "../learn/figure-text.js";
import type { LearnReport } from "../learn/learn-report.js";
import { item, layOutTable, wrap } from "./layout.js";

/** What was learnt, figure by figure, what was left out and why, and the change of the shop file. */
export function learnText(report: LearnReport): string[] {
  const { learnt, units, copies } = report;
  const told = learnt.figures.filter(({ estimate }) => estimate.jobs > 1);
  const figures = told.flatMap((figure) => ["", ...figureLines(figure, report)]);
  const leftOut = [
    ...copies.flatMap(({ file, of }) => item("- ", `${file}: ${COPIED} ${of}. ${OTHER_KNIFE}`)),
    ...learnt.leftOut.flatMap(({ of, file, on, issue }) =>
      item("- ", `${file}, ${on}, ${figureOf(of).words}: ${describeIssue(issue, units)}.`),
    ),
  ];
  if (report.records.length === 0) return noRecords(report);
  return [
    ...wrap(headText(report)),
    ...figures,
    ...(learnt.models === undefined ? [] : modelLines(learnt.models)),
    ...fewLines(report),
    ...(leftOut.length === 0 ? [] : ["", "LEFT OUT, and counted nowhere", ...leftOut]),
    "",
    ...changeLines(report),
  ];
}

const COPIED = "a copy, with the same entries on the same days as";
const OTHER_KNIFE = "Is it another knife's, say so in a note of one of its entries.";

function noRecords({ shop }: LearnReport): string[] {
  const where = shop === undefined ? "the current folder" : `the folder of ${shop}`;
  return [
    ...wrap(
      `There are no records below ${where}, so there is nothing to learn from. Begin one with the first weighing:`,
    ),
    "  scantling record NAME.knife.yaml --stage cut --mass 1215g",
  ];
}

function headText({ shop, records, learnt }: LearnReport): string {
  const where = shop ?? "a shop without a file";
  const many = records.length === 1 ? "1 record" : `${records.length} records`;
  const nothing = learnt.figures.length === 0 ? ": nothing that the shop reckons with" : "";
  return `LEARNT for ${where} from ${many}${nothing}`;
}

function figureLines(figure: LearntFigure, report: LearnReport): string[] {
  const { path, own, isNew, estimate } = figure;
  const { units, proposals, now } = report;
  const show = (value: number): string => shownFigure(path, value, units);
  const row = (name: string, { value, low, high }: typeof own): string[] => [
    `  ${name}`,
    show(value),
    high > low ? `95 in 100: ${show(Math.max(0, low))} to ${show(high)}` : "",
  ];
  const stands = now[path];
  const learntBefore = stands !== undefined && !isNew && show(stands.value) !== show(own.value);
  const proposed = proposals.some((one) => one.path === path);
  return [
    ...wrap(`${capital(figureOf(path).words)} (${path})`),
    ...layOutTable(
      [
        ...(learntBefore ? [row("first", own)] : []),
        ...(stands === undefined ? [] : [row("now", stands)]),
        ...(proposed ? [row("proposed", estimate)] : []),
      ],
      ["left", "right", "left"],
    ),
    ...item("  ", jobsWords(figure, proposed, units)),
    ...steelLines(figure, units),
  ];
}

function jobsWords(
  { path, isNew, estimate, heldOut }: LearntFigure,
  proposed: boolean,
  units: FileUnits,
): string {
  const { jobs, ofJobs = estimate.value, ownWeight, scatter, apart = 0 } = estimate;
  const show = (value: number): string => shownFigure(path, value, units);
  const shownApart = (by: number): string => (figureOf(path).spreading === "ratio" ? percent(by) : show(by));
  const differ = shownApart(apart) === shownApart(0) ? ALIKE : `which differ by ${shownApart(apart)} or so`;
  const own = isNew ? "" : ` What the shop reckoned with counts for ${percent(ownWeight)} of the answer.`;
  const held =
    heldOut === undefined
      ? ""
      : ` Each job foretold from the others alone: ${heldOut.within} of ${heldOut.jobs} within the band.`;
  const weld = WELDS.includes(path) ? ` ${OFF_THE_WELD}` : "";
  const stays = proposed ? "" : " It comes out as it stands.";
  const band = ` The band reckons with ${shownApart(scatter)} from one job to the next.`;
  return `${jobs} jobs, by themselves ${show(ofJobs)}, ${differ}.${band}${own}${held}${weld}${stays}`;
}

const ALIKE = "alike as far as they could be measured";

const WELDS: readonly FigurePath[] = ["losses.scalePerWeldingHeat", "losses.skinPerWeldingHeat"];
const OFF_THE_WELD =
  "What is cleaned, dressed and cropped off is not weighed, but counted as the shop file has it; so this is told less surely.";

/** Figures of which no job, or only one, tells. */
function fewLines({ learnt, now, units }: LearnReport): string[] {
  const few = learnt.figures.filter(({ estimate }) => estimate.jobs <= 1);
  if (few.length === 0) return [];
  const rows = few.map(({ path, estimate: { ofJobs } }) => {
    const stands = now[path];
    return [
      `  ${path}`,
      stands === undefined ? "none yet" : `${shownFigure(path, stands.value, units)} now`,
      ofJobs === undefined
        ? "no job left to count on"
        : `the job came to ${shownFigure(path, ofJobs, units)}`,
    ];
  });
  return [
    "",
    ...wrap("AS THEY ARE, for one job cannot tell how far jobs lie apart:"),
    ...layOutTable(rows, ["left", "right", "left"]),
  ];
}

function steelLines({ path, bySteel }: LearntFigure, units: FileUnits): string[] {
  if (bySteel.length === 0) return [];
  const each = bySteel.map(
    ({ steel, jobs, value }) => `${steel} ${shownFigure(path, value, units)} (${jobs} jobs)`,
  );
  return item("  ", `By steel: ${each.join(", ")}. The shop file has one figure for all.`);
}

/** Where jobs lie so much nearer together the other way is worth a word. */
const MUCH_NEARER = 0.75;
const WAYS = { fraction: "a share of the mass", skin: "a skin of the surface" } as const;

function modelLines({ other, jobs, apart, otherApart }: ModelsCompared): string[] {
  if (otherApart > MUCH_NEARER * apart) return [];
  const used = other === "skin" ? "fraction" : "skin";
  return [
    "",
    ...wrap(
      `Forging scale counted as ${WAYS[other]} puts the same ${jobs} jobs ${percent(otherApart)} apart, as ${WAYS[used]} ${percent(apart)}. With scale: ${other} under losses the shop would foretell them better; then learn again.`,
    ),
  ];
}

function changeLines({ shop, proposals, diff, outcome, again }: LearnReport): string[] {
  if (proposals.length === 0) return ["Nothing to change in the shop file."];
  const name = shop ?? "shop.yaml, a new file";
  switch (outcome) {
    case "written":
      return [
        `CHANGED ${name}`,
        ...diff,
        "",
        ...wrap("scantling plan and all other commands reckon with it from now on."),
      ];
    case "proposed":
      return [`PROPOSED CHANGE of ${name}`, ...diff, "", "Nothing is written yet. To write it:", ...again];
    case "by-hand":
      return [
        ...wrap(`PROPOSED CHANGE of ${name}, which can only be changed by hand:`),
        ...(diff.length > 0 ? diff : proposals.map(({ path, to }) => `  ${path}: ${to}`)),
      ];
  }
}

const percent = (share: number): string => `${formatNumber(share * 100, 1)} %`;

const capital = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);
