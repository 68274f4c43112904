import type {
  BladeCount,
  CoreLines,
  CoreReport,
  MixedBar,
  MixedPlan,
  StackAsCut,
  WeldStage,
} from "@scantling/geometry";
import { type FileUnits, formatCaliper, formatLength, formatQuantity } from "@scantling/geometry/units";
import type { Job } from "../load.js";
import { CAUTIONS } from "./cautions.js";
import { fixed, inBoth, lengthText, massText, percentText, volumeText } from "./figures.js";
import { bySeverity, findingLines } from "./findings.js";
import { item, layOutTable, wrap } from "./layout.js";
import { ledgerLines, ledgerTotals, ROW_WORDS } from "./ledger-text.js";
import { sawLength } from "./stock-text.js";

/** The stock report of a blade of two or more steels: bars, welds, layers or core line, ledger. */
export function mixedStockText(plan: MixedPlan, job: Job): string[] {
  const { units } = job;
  return [
    plan.stack.kind === "clad" ? "STACK: a core with cladding" : "STACK: pattern-welded",
    ...barsLines(plan, job),
    "",
    ...orderLines(plan),
    ...weldLines(plan, units),
    ...lastBarLines(plan, units),
    "",
    ...layerLines(plan, units),
    ...(plan.core === undefined ? [] : coreLines(plan.core, units)),
    "",
    ...mixedLedgerLines(plan, units),
    "",
    ...bySeverity(plan.findings).flatMap((finding) => findingLines(finding, job, { basis: false })),
    ...(plan.findings.length > 0 ? [""] : []),
    ...CAUTIONS,
  ];
}

/** The same in a few lines, for the summary of the main job. */
export function mixedSummary(plan: MixedPlan, job: Job): string[] {
  const { units } = job;
  return [
    ...barsLines(plan, job),
    ...orderLines(plan),
    ...layerLines(plan, units),
    ...(plan.core === undefined ? [] : coreSentences(plan.core, units)),
    ...wrap(`Steel: ${ledgerTotals(plan, units)}`, undefined, "  "),
    "Welds, core line along the blade and ledger: scantling stock FILE",
  ];
}

/** A weld of given yield is one row: nobody knows its parts. */
function mixedLedgerLines(plan: MixedPlan, units: FileUnits): string[] {
  const lines = ledgerLines({ ...plan, bars: plan.joints + 1 }, units, "Steel ledger");
  if (plan.stack.yields === undefined) return lines;
  const row = `  + ${ROW_WORDS["welding-scale"]}`;
  return lines.flatMap((line) =>
    line.startsWith(row) ? [line, "      (your yield: all the weld loses)"] : [line],
  );
}

/** What the bars need, and why they are longer: high losses, the saw's step, or the shortest that the shop welds. */
function lengthReason({ shortestLength, cutLength }: MixedPlan, { units, shop }: Job): string {
  const [usual, high] = [shortestLength.nominal, shortestLength.high].map((mm) => sawLength(mm, units));
  const least = shop.limits.minBilletLength;
  const raised =
    shortestLength.high < least
      ? ` (the shop's shortest is ${sawLength(least, units)}: limits.minBilletLength)`
      : "";
  return `Needed are ${usual} at usual losses and ${high} at high ones; cut are ${sawLength(cutLength, units)}${raised}.`;
}

/** Bars to cut, each steel by itself, and what they weigh and cost. */
function barsLines(plan: MixedPlan, job: Job): string[] {
  const { units, shop } = job;
  if (!Number.isFinite(plan.cutLength)) return ["No length of bar feeds this blade."];
  const cost =
    plan.cost === undefined
      ? ""
      : `; cost ${plan.cost.toFixed(2)}${shop.currency === undefined ? "" : ` ${shop.currency}`}, saw cuts included`;
  return [
    ...plan.bars.flatMap((bar) => item("  ", barText(bar, units))),
    ...wrap(lengthReason(plan, job), undefined, "  "),
    ...wrap(
      `${inBoth(massText, plan.mass, units)} of bar; ${percentText(plan.yield.asCut)} of it ends in the blade${cost}.`,
      undefined,
      "  ",
    ),
  ];
}

function barText(bar: MixedBar, units: FileUnits): string {
  const pieces = bar.pieces === 1 ? "1 piece" : `${bar.pieces} pieces, each`;
  const size = `${formatLength(bar.thickness, units)} × ${formatLength(bar.width, units)}`;
  const from = bar.bar === undefined ? "not on the rack" : `from ${bar.bar.name}`;
  return `${pieces} ${inBoth(sawLength, bar.cutLength, units)} long, of ${bar.steel} ${size}: ${massText(bar.mass, units)}, ${from}`;
}

/** Runs of two steels in turn are not written out layer by layer. */
const MOST_IN_FULL = 5;

function orderLines({ stack, layers }: MixedPlan): string[] {
  if (stack.kind === "clad") {
    return wrap(
      `Stack: ${stack.core.steel.name} between two of ${stack.cladding.steel.name}.`,
      undefined,
      "  ",
    );
  }
  const order = layers?.order ?? [];
  const inTurn = order.every((steel, i) => i < 2 || steel === order[i - 2]);
  const text =
    order.length > MOST_IN_FULL && inTurn
      ? `${order.slice(0, 3).join(", ")} and so on in turn, ${order.length} bars, ${order.at(-1)} on top`
      : order.join(", ");
  const again = stack.restacks.map(({ pieces }) => pieces).join(", then ");
  return wrap(
    `Stack, from the bottom: ${text}.${again === "" ? "" : ` Restack: cut in ${again}, all the same way up.`}`,
    undefined,
    "  ",
  );
}

/** What lies on the anvil, at usual losses, and beside it what the blade takes of it. */
function weldLines({ stages, asCut, stack }: MixedPlan, units: FileUnits): string[] {
  const rows = stages.flatMap((stage, i) => {
    const cut = asCut.welds[i];
    if (cut === undefined) return [];
    return [
      [
        `${i + 1}.`,
        // The bars themselves as the saw is set for them.
        `${stage.pieces} × ${(i === 0 ? sawLength : lengthText)(cut.pieceLength, units)}`,
        lengthText(stage.pieceLength, units),
        stackText(stage, units),
        volumeText(cut.out, units),
        volumeText(stage.out, units),
        percentText(cut.out / cut.in),
      ],
    ];
  });
  return [
    "",
    ...layOutTable(
      [["Weld", "pieces", "needed", "stack, high × wide", "out", "needed", "kept"], ...rows],
      ["left", "right", "right", "right", "right", "right", "right"],
    ),
    ...drawnLines(stages, asCut, units),
    ...wrap(
      `As it comes of the bars as cut, at usual losses; what is not needed is spare.${stack.yields === undefined ? "" : " What is kept is the yield that the file gives."}`,
      undefined,
      "  ",
    ),
  ];
}

const stackText = ({ stackHeight, width }: WeldStage, units: FileUnits): string =>
  `${lengthText(stackHeight, units)} × ${lengthText(width, units)}`;

/** What a billet is drawn to before it is cut. */
function drawnLines(stages: readonly WeldStage[], { welds }: StackAsCut, units: FileUnits): string[] {
  return stages.slice(1).flatMap(({ height, pieces, width, barLength }, i) => {
    const long = welds[i + 1]?.barLength ?? barLength;
    return wrap(
      `After weld ${i + 1} draw to ${lengthText(width, units)} × ${lengthText(height / pieces, units)}, ${lengthText(long, units)} long (${lengthText(barLength, units)} needed); cut in ${pieces}.`,
      undefined,
      "  ",
    );
  });
}

function lastBarLines({ lastBar, grooves, reach, stages, asCut }: MixedPlan, units: FileUnits): string[] {
  const of = stages.at(-1)?.out ?? 0;
  const show = (mm: number): string => lengthText(mm, units);
  const { dressedLength, length } = asCut.lastBar;
  const ground =
    grooves > 0
      ? `; grooves take ${percentText(grooves / of)} (${volumeText(grooves, units)} of what is needed), pressed flat it is ${show(dressedLength)}`
      : "";
  return wrap(
    `Last bar ${formatLength(lastBar.width, units)} × ${formatLength(lastBar.thickness, units)}, ${show(length)} long${ground}. The blade takes ${show(asCut.needed.usual)} of that, ${show(asCut.needed.high)} at high losses.${bladesText(asCut.blades)} Reach: ${reach.share <= 1 ? percentText(reach.share) : "more than all"} of its thinning has to go into height: ${reach.class}.`,
    undefined,
    "  ",
  );
}

/** Nothing where it is one blade, as planned. */
function bladesText({ usual, high }: BladeCount): string {
  if (usual < 2) return "";
  const atHigh = high === usual ? "at high losses too" : `${high} at high ones`;
  return ` It holds ${usual} blades at usual losses, ${atHigh}.`;
}

function layerLines({ layers }: MixedPlan, units: FileUnits): string[] {
  if (layers === undefined) return [];
  const { nominal, distinct, equalMeet, thickness } = layers;
  const count =
    nominal === distinct
      ? `Layers: ${distinct}`
      : `Layers: ${distinct} that can be told apart (${nominal} as multiplied up${equalMeet ? "; equal steels meet at the joints" : ""})`;
  return wrap(
    `${count}, ${fineText(thickness, units)} thick at the face of the forged blade.`,
    undefined,
    "  ",
  );
}

/** To a thousandth of a millimetre, or a ten-thousandth of an inch. */
function fineText(mm: number, units: FileUnits): string {
  return units === "mm" ? `${fixed(mm, 3)} mm` : formatLength(mm, "in", { resolution: 0.0001 });
}

/** Where the core comes out along the blade, by three assumptions. */
function coreLines(core: CoreReport, units: FileUnits): string[] {
  const rows = core.stations.map(({ x, thinning, constant, lessScale, budget }) => [
    lengthText(x, units),
    formatCaliper(thinning.core, units),
    lineText(thinning.lines, units),
    lineText(constant.lines, units),
    lineText(lessScale.lines, units),
    budget.edge <= 0 ? "none" : formatCaliper(budget.edge, units),
  ]);
  return [
    ...layOutTable(
      [
        ["Core line,", "core", "line", "core as", "scale off", "may lie"],
        ["from heel", "", "", "at heel", "cladding", "off by"],
        ...rows,
      ],
      ["right", "right", "right", "right", "right", "right"],
    ),
    ...wrap(
      "Line: height above the edge if the core thins with the forging. Beside it: if it stays as thick as at the heel, and if all fire scale comes off the cladding. Off by: how far off the middle before cladding reaches the edge.",
      undefined,
      "  ",
    ),
    ...askedLines(core, units),
  ];
}

function lineText({ right, left }: CoreLines, units: FileUnits): string {
  const text = (height: number | undefined): string =>
    height === undefined ? "to the spine" : lengthText(height, units);
  return text(right) === text(left) ? text(right) : `${text(right)}/${text(left)}`;
}

function coreSentences(core: CoreReport, units: FileUnits): string[] {
  const [heel] = core.stations;
  if (heel === undefined) return [];
  return [
    ...wrap(
      `Core ${formatCaliper(heel.thinning.core, units)} of ${formatCaliper(heel.forged, units)} forged at the heel; its line ${lineText(heel.thinning.lines, units)} above the edge.`,
      undefined,
      "  ",
    ),
    ...askedLines(core, units),
  ];
}

/** What was asked for, as it was written. */
const limitText = (value: number, units: FileUnits): string =>
  formatQuantity({ quantity: "length", value }, units);

function askedLines({ asked }: CoreReport, units: FileUnits): string[] {
  if (asked === undefined || asked.budget <= 0) return [];
  return wrap(
    `For the line that is asked for, ${limitText(asked.low, units)} to ${limitText(asked.high, units)}, the core has to lie within ${formatCaliper(asked.budget, units)} of the middle.`,
    undefined,
    "  ",
  );
}
