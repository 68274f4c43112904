import { type Knife, LEDGER_TOTALS, type LedgerRow, ledgerRow, weighState } from "@scantling/geometry";
import type { PlotBillet, PlotLedgerRow, PlotPlan, PlotsModel } from "@scantling/render";
import { limitsOf } from "../asks.js";
import { inFileTerms, type Measured } from "../measure.js";
import { inputWords } from "../report/input-words.js";
import { ROW_WORDS } from "../report/ledger-text.js";
import { sawLength } from "../report/stock-text.js";
import { stationsOf } from "../stations.js";
import type { Bars } from "../stock-report.js";
import { usedMaterials } from "../used-materials.js";
import { areaAlong, forgedAreaAlong, type PlacedSection, sectionsAlong } from "./plots/along-blade.js";
import { sheetUnits } from "./sheet-units.js";

/** Height above the edge at which the thickness is plotted, mm: as near as a caliper can be held. */
const ABOVE_EDGE = 1;

/** The knife and its bars as the sheet of plots shows them. */
export function makePlotsModel(measured: Measured, bars: Bars): PlotsModel {
  const { job, weight, interval } = measured;
  const mass = measured.answers.find(({ ask }) => ask.name === "mass");
  const { currency } = job.shop;
  return {
    code: job.knife.order.code,
    title: job.knife.order.title,
    steel: job.spec.steel.name,
    units: sheetUnits(job),
    densityFromMemory: usedMaterials(job.spec).some(({ mark }) => mark === "from memory"),
    ...inFileTerms(job, () => alongBlade(measured, bars)),
    ledger: ledgerRows(bars),
    mass: {
      value: weight.knife.mass,
      interval: interval.massInterval,
      causes: interval.contributions.map(({ input, share }) => ({
        name: inputWords(input, job.spec),
        share,
      })),
      ...(mass === undefined ? {} : { asked: askedRange(limitsOf(mass.ask.test)) }),
    },
    plans: bars.plans.map(
      ({ bars: count, cutLength, bar, mass: ofBars, waste, joints, reach, cost }): PlotPlan => ({
        words: `${count} × ${sawLength(cutLength, job.units, job.shopPlaces?.sheets?.inches)} of ${bar.name}`,
        mass: ofBars,
        waste,
        joints,
        reach: reach.wholeShare,
        ...(cost === undefined ? {} : { cost }),
      }),
    ),
    ...missing(bars),
    ...(currency === undefined ? {} : { currency }),
  };
}

function alongBlade({ knife, weight, job }: Measured, bars: Bars): Pick<PlotsModel, "thickness" | "area"> {
  const stations = stationsOf(knife, undefined, job.units).map(({ x }) => x);
  const finished = sectionsAlong(knife, "finished", [ABOVE_EDGE], stations);
  const forged = sectionsAlong(knife, "forged", [], stations);
  const bladeFrom = Math.max(0, knife.outline.handleFront);
  const spine = finished.map(({ x, section }) => ({ x, y: section.atSwedge ?? section.thickness }));
  const forgedArea = forgedAreaAlong(knife, forged);
  const billet = billetOf(bars, forgedArea[0]?.x ?? 0);
  return {
    thickness: {
      spine,
      above: ABOVE_EDGE,
      aboveEdge: ofBlade(finished, bladeFrom).flatMap(({ x, section }) => {
        const [found] = section.aboveEdge;
        return found === undefined ? [] : [{ x, y: found.thickness }];
      }),
      forgedSpine: forged.map(({ x, section }) => ({ x, y: section.thickness })),
      forgedEdge: ofBlade(forged, bladeFrom).map(({ x, section }) => ({ x, y: section.edgeThickness })),
      ...swedgeOf(knife),
      stations: stations.flatMap((x) => spine.find((point) => point.x === x) ?? []),
    },
    area: {
      finished: areaAlong(finished),
      forged: forgedArea,
      finishedVolume: weight.steel.volume,
      forgedVolume: weighState(knife, "forged").volume,
      ...(billet === undefined ? {} : { billet }),
    },
  };
}

/** The swedge of the finished blade. */
function swedgeOf(knife: Knife): Pick<PlotsModel["thickness"], "swedge"> {
  const swedge = knife.body("finished").input.crest?.input.swedge;
  return swedge === undefined ? {} : { swedge: { from: swedge.from, to: swedge.to } };
}

const ofBlade = (sections: readonly PlacedSection[], from: number): readonly PlacedSection[] =>
  sections.filter(({ x }) => x > from);

/** The dressed billet, or the bar where one alone does, as a block of one section. */
function billetOf({ plans, mixed }: Bars, from: number): PlotBillet | undefined {
  const [plan] = plans;
  const ledger = mixed?.ledger ?? plan?.ledger;
  if (ledger === undefined) return undefined;
  const { volume } = ledgerRow(ledger, "dressed-billet");
  const area = mixed === undefined ? sectionOf(plan) : mixed.lastBar.width * mixed.lastBar.thickness;
  if (!(area > 0) || !Number.isFinite(volume)) return undefined;
  const words = mixed !== undefined ? "last bar" : plan?.bars === 1 ? "bar" : "welded billet";
  return { from, length: volume / area, area, words };
}

const sectionOf = (plan: Bars["plans"][number] | undefined): number =>
  plan === undefined ? 0 : plan.billet.dressedWidth * plan.billet.weldedHeight;

/** Rows in which there is something, each in words. */
function ledgerRows({ plans, mixed }: Bars): PlotLedgerRow[] {
  const ledger: readonly LedgerRow[] = mixed?.ledger ?? plans[0]?.ledger ?? [];
  if (!ledger.every(({ mass }) => Number.isFinite(mass))) return [];
  return ledger
    .map(({ row, mass }) => ({ name: rowWords(row, mixed), mass, total: LEDGER_TOTALS.includes(row) }))
    .filter(({ total, mass }) => total || mass > 0);
}

/** A weld of given yield is one row: nobody knows its parts. */
const rowWords = (row: LedgerRow["row"], mixed: Bars["mixed"]): string =>
  row === "welding-scale" && mixed?.stack.yields !== undefined ? "weld, by your yield" : ROW_WORDS[row];

/** Why there is no ledger, and nothing to compare. */
function missing({ mixed, plans, considered }: Bars): Pick<PlotsModel, "noLedger" | "noPlans"> {
  if (mixed !== undefined) {
    return {
      noPlans: "The knife file describes its own stack: there are no plans to compare.",
      noLedger: "No length of bar feeds this blade.",
    };
  }
  if (plans.length > 0) return {};
  const why = considered === 0 ? "No bars are known." : "Nothing on the rack can become this blade.";
  return { noLedger: why, noPlans: why };
}

const askedRange = (limits: ReturnType<typeof limitsOf>): readonly [number, number] => [
  limits.atLeast,
  limits.atMost,
];
