import { wrap } from "./layout.js";

/** What can hurt someone, in one sentence of at most a few lines. */
export const cautionLines = (hazards: readonly string[]): string[] =>
  wrap(`Take care: ${hazards.join(", ")}. Follow data sheets and local rules.`, undefined, "  ");

/** Where the work can hurt someone; with every list of bars. */
export const CAUTIONS: readonly string[] = cautionLines([
  "hot steel and fumes",
  "hot quench oil",
  "grinding dust",
  "noise",
  "sharp edges",
]);
