import { type MaterialRow, makeMaterials } from "./material.js";

const LAMINATOR = "laminate maker's comparative data chart";
const MEMORY = "from memory, unconfirmed: weigh a piece of your own";

const COMPOSITE_ROWS: readonly MaterialRow[] = [
  { name: "G10", also: ["glass-epoxy laminate"], gPerCm3: 1.8, source: LAMINATOR, mark: "looked up" },
  {
    name: "FR4",
    gPerCm3: 1.85,
    band: [1.82, 1.85],
    source: `${LAMINATOR} (1.85); another maker's page (1.82)`,
    mark: "looked up",
  },
  {
    name: "canvas phenolic",
    also: ["linen phenolic", "canvas micarta", "linen micarta", "micarta"],
    gPerCm3: 1.36,
    band: [1.33, 1.4],
    source: MEMORY,
    mark: "from memory",
  },
  {
    name: "paper phenolic",
    also: ["paper micarta"],
    gPerCm3: 1.37,
    band: [1.34, 1.4],
    source: MEMORY,
    mark: "from memory",
  },
  {
    name: "carbon fibre",
    also: ["carbon fiber"],
    gPerCm3: 1.55,
    band: [1.5, 1.6],
    source: MEMORY,
    mark: "from memory",
  },
  {
    name: "epoxy",
    also: ["cured epoxy"],
    gPerCm3: 1.15,
    band: [1.1, 1.2],
    source: MEMORY,
    mark: "from memory",
  },
  {
    name: "stabilised wood",
    also: ["stabilized wood"],
    gPerCm3: 1.05,
    band: [0.9, 1.2],
    source: MEMORY,
    mark: "from memory",
  },
];

const OTHER_ROWS: readonly MaterialRow[] = [
  { name: "bone", also: ["antler"], gPerCm3: 1.85, band: [1.7, 2.0], source: MEMORY, mark: "from memory" },
  {
    name: "leather",
    gPerCm3: 0.94,
    band: [0.86, 0.95],
    source: "published list of bulk densities (dry), as transcribed",
    mark: "secondary copy",
  },
];

/** Laminates and resins. */
export const COMPOSITES = makeMaterials("composite", COMPOSITE_ROWS);
/** Handle materials that are neither wood nor laminate. */
export const OTHER_HANDLE_MATERIALS = makeMaterials("other", OTHER_ROWS);
