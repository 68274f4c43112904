import {
  type AskedCoreLine,
  bladeStation,
  checkMixedStack,
  coreReport,
  countLayers,
  type Issue,
  type Knife,
  SpecError,
  stackRestacks,
  withDefaultMixedLimits,
} from "@scantling/geometry";
import { type AskedFigure, limitsOf } from "./asks.js";
import type { Ask, AskName } from "./file/index.js";
import type { Job } from "./load.js";

/** What can be asked of a stack of two or more steels. */
type StackAskName = Extract<AskName, "layers" | "coreLine">;

/** Where the core line is asked for, mm; undefined where it is not. */
export function askedCoreLine({ knife }: Pick<Job, "knife">, built: Knife): AskedCoreLine | undefined {
  const ask = knife.order.asks.find(({ name }) => name === "coreLine");
  if (ask === undefined) return undefined;
  const { atLeast, atMost } = limitsOf(ask.test);
  return {
    x: bladeStation(ask.at ?? { kind: "heel" }, built.outline),
    low: atLeast,
    high: atMost,
    wished: ask.should,
  };
}

/**
 * Layers that can be told apart, and the height of the core line, as far as the file has a stack that gives them.
 *
 * @param others - What else is wrong with the asks; told together with what is wrong here.
 * @throws {SpecError} where the stack breaks rules, or an ask needs a stack that the file does not have.
 */
export function stackFigures(
  job: Job,
  built: Knife,
  others: readonly Issue[] = [],
): Partial<Record<StackAskName, AskedFigure>> {
  const { stack, order } = job.knife;
  const { losses, limits } = job.shop;
  const issues = [
    ...others,
    ...(stack === undefined ? [] : checkMixedStack(stack, losses.cleaningPerFace.high)),
    ...order.asks.flatMap((ask) => missingStack(ask, job, built)),
  ];
  if (issues.length > 0) throw new SpecError(issues);
  if (stack === undefined) return {};
  if (stack.kind === "pattern-welded") {
    const { distinct } = countLayers(
      stack.layers.map(({ steel }) => steel.name),
      stackRestacks(stack).map(({ pieces }) => pieces),
    );
    return { layers: { value: distinct } };
  }
  const asked = askedCoreLine(job, built);
  if (asked === undefined) return {};
  const centring = withDefaultMixedLimits(limits.mixed).coreCentring;
  const cleaning = stack.cleaning?.value ?? losses.cleaningPerFace.value;
  const answer = coreReport({ knife: built, stack, cleaning, keptByScale: 1, centring }, asked).asked;
  return answer === undefined ? {} : { coreLine: { value: answer.height, interval: answer.interval } };
}

/** An ask of layers needs layers, one of a core line a core. */
function missingStack({ name, path }: Ask, { knife }: Job, built: Knife): Issue[] {
  if (name === "layers" && knife.stack?.kind !== "pattern-welded") {
    return [
      {
        code: "ask-needs-stack",
        path,
        text: "Layers are asked for, but the file has no stack of layers. Describe it under stack: alternate, width, restacks.",
      },
    ];
  }
  if (name !== "coreLine") return [];
  if (knife.stack?.kind !== "clad") {
    return [
      {
        code: "ask-needs-stack",
        path,
        text: "A core line is asked for, but the file has no core with cladding. Describe it under stack: core, cladding, width.",
      },
    ];
  }
  const x = askedCoreLine({ knife }, built)?.x ?? 0;
  return x >= 0 && x < built.outline.edgeLength
    ? []
    : [
        {
          code: "off-the-edge",
          path: `${path}.at`,
          text: "The core line can be asked for from the heel to short of the tip only.",
        },
      ];
}
