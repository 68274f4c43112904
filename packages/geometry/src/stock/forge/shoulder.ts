import { count, type Finding, length } from "../../errors/issue.js";
import { FORGE_DEFAULTS, type ForgeLimits, forgeBasis } from "./forge-limits.js";

/** One pass of the fuller at the shoulder; mm. */
export interface ShoulderPass {
  /** How deep it sets in from the spine's side and from the edge's side. */
  readonly spineSide: number;
  readonly edgeSide: number;
  /** What is left of the section afterwards. */
  readonly height: number;
  readonly thickness: number;
  /** Area before over area after. */
  readonly ratio: number;
  /** Radius of the fuller to take. */
  readonly fuller: number;
}

/** How the tang is set off from the billet. */
export interface ShoulderPlan {
  /** How much lower the tang is than the billet, mm; 0 where nothing is to be set in. */
  readonly depth: number;
  readonly passes: readonly ShoulderPass[];
  readonly findings: readonly Finding[];
}

/** A section with a height and a thickness, mm. */
interface Section {
  readonly height: number;
  readonly thickness: number;
}

/** A pass count beyond which there is no sense in trying. */
const HOPELESS = 1000;
const HAIR = 1e-9;

/**
 * The fewest passes that set the tang off from the billet, equally deep each: none deeper from a side than the
 * fuller's radius, and none that leaves less of the section than the limit allows. The largest fuller goes first; the
 * last pass takes the smallest one that reaches as deep and leaves the corner round enough.
 *
 * @param billet - As it lies in the blade, mm.
 * @param tang - The forged tang right behind the shoulder, mm.
 * @param steps - How far the finished blade stands out on either side; the depth is shared out like that, and evenly
 *   where it does not stand out on either.
 * @param fullers - Radii in the shop, mm; where empty the default of {@link FORGE_DEFAULTS}.
 *
 * @example
 * const limits = forgeLimits();
 * const sides = { spineSide: 10, edgeSide: 10 };
 * const plan = planShoulder({ height: 40, thickness: 8 }, { height: 20, thickness: 6 }, sides, [6], limits);
 * plan.passes.length; // 3
 */
export function planShoulder(
  billet: Section,
  tang: Section,
  steps: { readonly spineSide: number; readonly edgeSide: number },
  fullers: readonly number[],
  limits: ForgeLimits,
): ShoulderPlan {
  const depth = Math.max(0, billet.height - tang.height);
  if (depth <= HAIR) return { depth: 0, passes: [], findings: [] };
  const radii = (fullers.length > 0 ? [...fullers] : [FORGE_DEFAULTS.fullerRadius.value]).sort(
    (a, b) => b - a,
  );
  const out = steps.spineSide + steps.edgeSide;
  const spineShare = out > 0 ? steps.spineSide / out : 0.5;
  const deepest = depth * Math.max(spineShare, 1 - spineShare);
  const largest = radii[0] as number;
  const thinned = Math.max(0, billet.thickness - tang.thickness);
  const sectionAfter = (done: number): Section => ({
    height: billet.height - depth * done,
    thickness: billet.thickness - thinned * done,
  });
  let passes = Math.max(1, Math.ceil(deepest / largest - HAIR));
  while (passes < HOPELESS && steepest(sectionAfter, passes) > limits.shoulderRatio * (1 + HAIR)) passes++;
  const each = deepest / passes;
  const last =
    radii.findLast((radius) => radius >= each * (1 - HAIR) && radius >= limits.cornerRadius) ?? largest;
  return {
    depth,
    passes: Array.from({ length: passes }, (_, k) => ({
      spineSide: (depth * spineShare) / passes,
      edgeSide: (depth * (1 - spineShare)) / passes,
      ...sectionAfter((k + 1) / passes),
      ratio: ratioOf(sectionAfter, k, passes),
      fuller: k + 1 === passes ? last : largest,
    })),
    findings: shoulderFindings(passes, last, deepest, limits),
  };
}

const areaOf = ({ height, thickness }: Section): number => height * thickness;

const ratioOf = (after: (done: number) => Section, pass: number, passes: number): number =>
  areaOf(after(pass / passes)) / areaOf(after((pass + 1) / passes));

/** With equal depths the last pass takes the greatest share. */
const steepest = (after: (done: number) => Section, passes: number): number =>
  ratioOf(after, passes - 1, passes);

function shoulderFindings(passes: number, corner: number, deepest: number, limits: ForgeLimits): Finding[] {
  return [
    ...(corner < limits.cornerRadius
      ? [
          {
            code: "shoulder-corner-sharp" as const,
            path: "fullers",
            severity: "warn" as const,
            text: "A fuller of radius {radius} leaves the corner of the shoulder too sharp: cold shuts and cracks start there. Finish with {least} or more, and round the edges of the dies.",
            values: { radius: length(corner), least: length(limits.cornerRadius) },
            basis: forgeBasis("cornerRadius", limits.cornerRadius),
          },
        ]
      : []),
    ...(passes > limits.shoulderPasses
      ? [
          {
            code: "shoulder-too-abrupt" as const,
            path: "fullers",
            severity: "warn" as const,
            text: "Setting off the tang goes {depth} deep on one side and takes {passes} passes; more than {most} fold the steel over. Take a larger fuller first, or a lower billet.",
            values: { depth: length(deepest), passes: count(passes), most: count(limits.shoulderPasses) },
            basis: forgeBasis("shoulderPasses", limits.shoulderPasses),
          },
        ]
      : []),
  ];
}
