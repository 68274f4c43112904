import { answer } from "./answer.js";
import { DEMO_FILES, DEMO_KNIFE } from "./demo.js";

/** The demo in the current folder. */
export const FILE = "harvest.knife.yaml";

/** Fits the demo, or another text in its place. */
export const fit = (options: readonly string[], text = DEMO_KNIFE) =>
  answer(["fit", FILE, ...options], { files: { ...DEMO_FILES, [FILE]: text } });

/** What `fit --json` says, as far as tests look at it. */
interface FitJson {
  readonly schema: string;
  readonly verdict: string;
  readonly sure: boolean;
  readonly newStop: boolean;
  readonly asks: readonly {
    readonly ask: string;
    readonly source: string;
    readonly verdict: string;
    readonly fittedG?: number;
    readonly fittedIntervalG?: readonly [number, number];
    readonly fittedMm?: number;
    readonly fittedDeg?: number;
    readonly atMostG?: number | null;
  }[];
  readonly changes: readonly {
    readonly name: string;
    readonly changed: boolean;
    readonly sizes: readonly {
      readonly path: string;
      readonly drawnMm?: number;
      readonly fittedMm?: number;
    }[];
  }[];
  readonly steps: string;
  readonly reach: readonly { readonly ask: string; readonly lowMm: number; readonly highMm: number }[];
  readonly conflict: {
    readonly outOfReach: readonly {
      readonly ask: string;
      readonly nearestG?: number;
      readonly nearestMm?: number;
    }[];
    readonly asks: readonly string[];
    readonly relax: readonly {
      readonly ask: string;
      readonly limit: string;
      readonly toG?: number;
      readonly toMm?: number;
    }[];
  } | null;
  readonly missedOfOrder: readonly {
    readonly ask: string;
    readonly path: string;
    readonly verdict: string;
  }[];
  readonly findings: readonly { readonly code: string; readonly severity: string }[];
  readonly file: string | null;
}

/** The same as JSON. */
export async function fitJson(options: readonly string[], text = DEMO_KNIFE) {
  const { out, code } = await fit([...options, "--json"], text);
  return { code, report: JSON.parse(out) as FitJson };
}
