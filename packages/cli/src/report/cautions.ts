import { wrap } from "./layout.js";

/** Where the work can hurt someone; with every list of bars. */
export const CAUTIONS: readonly string[] = wrap(
  "Take care: hot steel and fumes, hot quench oil, grinding dust, noise, sharp edges. Follow data sheets and local rules.",
  undefined,
  "  ",
);
