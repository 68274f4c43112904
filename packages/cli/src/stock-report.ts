import {
  benchSetUp,
  type Finding,
  findMaterial,
  fitsShop,
  forgedThicknessAt,
  type Issue,
  isSameMaterial,
  type Knife,
  type LedgerBodies,
  ledgerBodies,
  lossFindings,
  type MixedPlan,
  makeSteelChain,
  planMixed,
  planStock,
  pressHeatFindings,
  pressWork,
  type Refusal,
  type StockReport,
  sheathFindings,
  stopHeightFindings,
  suggestMaterials,
} from "@scantling/geometry";
import { drillSizes } from "@scantling/geometry/units";
import { acceptNotes, withAccepted } from "./accepted.js";
import type { OrderConflicts } from "./conflict/ask-conflict.js";
import { conflictFindings } from "./conflict/conflict-findings.js";
import type { Job } from "./load.js";
import { inFileTerms, type Measured } from "./measure.js";
import { orderFindings } from "./order-findings.js";
import { askedCoreLine } from "./stack-figures.js";
import { wishFindings } from "./wishes.js";

/** The bars for a knife, and what they have to become. */
export interface Bars extends StockReport {
  /** Mass of the forged blade, handling bar not counted, at the usual losses, g. */
  readonly forgedMass: number;
  /** The stack that the file describes, in place of plans, where the blade is of two or more steels. */
  readonly mixed?: MixedPlan;
}

/** Plans the bars of the job's rack for the knife. */
export function planBars({ job, knife }: Measured): Bars {
  return inFileTerms(job, () => {
    const bodies = ledgerBodies(knife);
    const forgedMass = forgedMassOf(bodies, job, knife);
    const { stack } = job.knife;
    if (stack !== undefined) {
      const mixed = planMixed(knife, bodies, job.shop, stack, askedCoreLine(job, knife));
      return { plans: [], rejected: [], considered: 0, superfluous: 0, forgedMass, mixed };
    }
    const report = planStock(bodies, job.shop, { ...knife.forging, steel: job.spec.steel.name });
    return { ...report, forgedMass };
  });
}

/** Mass of the forged blade, handling bar not counted, at the usual losses, g. */
export function forgedMassOf(bodies: LedgerBodies, { shop }: Job, { forging }: Knife): number {
  return makeSteelChain(bodies, shop.losses, shop.limits, forging, "value").forged * bodies.density;
}

/** What is to be said whatever the bars: of the knife, of wishes that are missed, of the shop and the bench that are to make it. */
export function knifeFindings(measured: Measured): readonly Finding[] {
  const { job, knife } = measured;
  const findings = [
    ...measured.findings,
    ...wishFindings(measured.answers),
    ...orderFindings(measured),
    ...fitsShop(knife, job.shop),
    ...inFileTerms(job, () => benchSetUp(knife, job.shop, drillSizes())).findings,
    ...sheathFindings(job.sheath, knife.limits),
    ...stopFindings(measured),
    ...pressHeatFindings(job.shop.press, job.shop.limits.findings),
    ...lossFindings(job.shop.losses, job.shop.limits.findings),
  ];
  return withAccepted(findings, job);
}

/** The stop that the blade is to be pressed to, held against its hot height: the forged thickness at the heel, where it is thickest. */
function stopFindings({ job, knife }: Measured): readonly Finding[] {
  const { stop } = job.knife;
  if (stop === undefined) return [];
  const work = pressWork(job.shop.press, job.shop.limits.findings);
  return stopHeightFindings(stop, forgedThicknessAt(knife, 0), work, "forging.stop");
}

/**
 * All that is to be said of a job: of the knife and its shop, of the bars, and of asks that cannot be had together where that was
 * looked for.
 */
const OF_CONFLICTS: readonly string[] = ["asks-contradict", "asks-collide", "ask-out-of-reach"];

export function allFindings(measured: Measured, bars: Bars, conflicts?: OrderConflicts): readonly Finding[] {
  const { job } = measured;
  const more = [
    ...(conflicts === undefined ? [] : conflictFindings(conflicts, job.units)),
    ...stockFindings(bars, job),
  ];
  const findings = [...knifeFindings(measured), ...withAccepted(more, job)];
  // Where quarrels of asks were not looked for, nobody can say that there are none.
  const isLookedFor = conflicts !== undefined;
  return [
    ...findings,
    ...acceptNotes(findings, job).filter(
      ({ path }) => isLookedFor || !OF_CONFLICTS.some((code) => path.endsWith(code)),
    ),
  ];
}

/** What is to be said of the best plan, or of there being none, and of the rack. */
function stockFindings(bars: Bars, job: Job): readonly Finding[] {
  if (bars.mixed !== undefined) return bars.mixed.findings;
  const [best] = bars.plans;
  const { rack } = job.shop;
  if (rack.length === 0) return [rackEmpty(job)];
  return [...(best === undefined ? [noBarsFit(bars, job)] : best.findings), ...unknownSteels(job)];
}

/** Where the bars are to be listed: nothing can lie beside standard input. */
export function rackEmpty({ shopPlaces, fromStdin }: Job): Finding {
  const folder = fromStdin
    ? "in the current folder (or another file, named with --shop FILE)"
    : "beside the knife file";
  const where =
    shopPlaces === undefined
      ? `shop.yaml ${folder}; scantling new shop.yaml begins one.`
      : "{file}, a line such as - size: 1/4 x 2 in for each.";
  return {
    code: "rack-empty",
    severity: "note",
    path: "",
    text: `No bars are known, so none can be planned. List yours under rack: in ${where}`,
    ...(shopPlaces === undefined ? {} : { values: { file: shopPlaces.fileName } }),
    basis: "the shop file",
  };
}

/** Why stacks were refused, in a sentence with its numbers. */
function refusalIssue({ reason, text, example }: Refusal, steel: string): Issue {
  const { bar, value, limit } = example;
  const other = reason === "wrong-steel" && bar.steel !== undefined;
  return {
    code: reason,
    path: "",
    text: other ? text.replace(/\.$/u, " (bar: {barSteel}; knife: {knifeSteel}).") : text,
    values: {
      ...(other ? { barSteel: bar.steel, knifeSteel: steel } : {}),
      // Where not even all of the thinning would do, the share has no end.
      ...(value === undefined ? {} : { value: Number.isFinite(value.value) ? value : "more than 100 %" }),
      ...(limit === undefined ? {} : { limit }),
    },
  };
}

/** What comes nearest to a plan: in the words of `refusalIssue`, the stack that is shown for the refusal. */
function nearestStack({ example }: Refusal): Pick<Issue, "text" | "values"> {
  const { bar, bars, cutLength } = example;
  const values = { bars: { quantity: "count", value: bars }, bar: bar.name } as const;
  if (cutLength === undefined) return { text: "Nearest: {bars} × {bar}.", values };
  return {
    text: "With bars long enough: {bars} × {cutLength} of {bar}.",
    values: { ...values, cutLength: { quantity: "length", value: cutLength } },
  };
}

/** Why stacks were refused, and which of them a smith would look at first. */
export function refusalWithNearest(refusal: Refusal, steel: string): Issue {
  const why = refusalIssue(refusal, steel);
  const nearest = nearestStack(refusal);
  return { ...why, text: `${why.text} ${nearest.text}`, values: { ...why.values, ...nearest.values } };
}

/** Only steel or room is lacking for these, so they say more than what most stacks fail by. */
const LACKING: readonly string[] = ["bar-too-short", "longer-than-forge"];

/** Says why: by what is lacking for a plan that could be made with it, else by the reason that refused most stacks. */
function noBarsFit({ rejected, considered }: Bars, { spec }: Job): Finding {
  const most =
    LACKING.flatMap((reason) => rejected.filter((refusal) => refusal.reason === reason))[0] ??
    [...rejected].sort((a, b) => b.count - a.count)[0];
  const why = most === undefined ? undefined : refusalWithNearest(most, spec.steel.name);
  return {
    code: "no-bars-fit",
    severity: "stop",
    path: "",
    text: `Nothing on the rack can become this blade.${why === undefined ? "" : ` For {count} of {considered} stacks: ${why.text}`} Every reason: scantling stock FILE.`,
    values: {
      count: { quantity: "count", value: most?.count ?? 0 },
      considered: { quantity: "count", value: considered },
      ...why?.values,
    },
    basis: "the shop file",
  };
}

/** A bar whose steel is misspelt is passed over without a word: each such name once. */
function unknownSteels({ shop, spec }: Job): Finding[] {
  const seen = new Set<string>();
  return shop.rack.flatMap(({ steel }, index): Finding[] => {
    if (steel === undefined || seen.has(steel)) return [];
    seen.add(steel);
    if (findMaterial(steel) !== undefined || isSameMaterial(steel, spec.steel.name)) return [];
    const near = suggestMaterials(steel, 2, "steel");
    return [
      {
        code: "bar-steel-unknown",
        severity: "note",
        path: `rack[${index}]`,
        text:
          near.length === 0
            ? "{steel}, the steel of this bar, is not in the table of materials; the bar serves knives of that very name only."
            : "{steel}, the steel of this bar, is not in the table of materials; the bar serves knives of that very name only. Did you mean {near}?",
        values: { steel, near: near.join(" or ") },
        basis: "the table of materials",
      },
    ];
  });
}
