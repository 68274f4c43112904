import { SpecError } from "../../src/errors/errors.js";
import type { Issue } from "../../src/errors/issue.js";
import { describeIssue } from "../../src/units/describe-issue.js";

/** Attributes of a page of 400 × 100 units that are mm. */
export const PAGE = 'width="400mm" height="100mm" viewBox="0 0 400 100"';

export const svg = (inside: string, page = PAGE): string =>
  `<?xml version="1.0" encoding="UTF-8"?>\n<svg xmlns="http://www.w3.org/2000/svg" ${page}>${inside}</svg>`;

/**
 * A garden knife of our own, drawn with y down in mm: each run by itself, and all of them as one closed path. The butt is
 * an arc of radius 13 over a chord of 24, with its centre 5 from the chord. (A half circle would be ill-conditioned: its
 * turn depends on its radius by a square root.)
 */
export const RUNS = {
  edge: "M150 70 H250 C290 70 310 60 320 40",
  spine: "M320 40 L140 30",
  tangTop: "M140 30 H30",
  butt: "M30 30 A13 13 0 0 0 30 54",
  tangBottom: "M30 54 H140",
  heelFace: "M140 54 H150 V70",
} as const;
export const WHOLE = "M150 70 H250 C290 70 310 60 320 40 L140 30 H30 A13 13 0 0 0 30 54 H140 H150 Z";

export const CORNERS = {
  heel: { x: 150, y: 70 },
  tip: { x: 320, y: 40 },
  handleTop: { x: 140, y: 30 },
  buttTop: { x: 30, y: 30 },
  buttBottom: { x: 30, y: 54 },
  handleBottom: { x: 140, y: 54 },
} as const;

/** Run names to element ids: `{ edge: "edge", … }`. */
export const IDS: Readonly<Record<keyof typeof RUNS, string>> = {
  edge: "edge",
  spine: "spine",
  tangTop: "tangTop",
  butt: "butt",
  tangBottom: "tangBottom",
  heelFace: "heelFace",
};

/** The runs as paths whose ids are the runs' names, some of them changed. */
export const runPaths = (changes: Partial<Record<keyof typeof RUNS, string>> = {}): string =>
  Object.entries({ ...RUNS, ...changes })
    .map(([id, d]) => `<path id="${id}" d="${d}"/>`)
    .join("");

export function issuesOf(run: () => unknown): readonly Issue[] {
  try {
    run();
  } catch (error) {
    if (error instanceof SpecError) return error.issues;
    throw error;
  }
  return [];
}

export const codes = (run: () => unknown): string[] =>
  issuesOf(run).map(({ code, path }) => (path === "" ? code : `${code} ${path}`));
export const sentences = (run: () => unknown): string[] =>
  issuesOf(run).map((issue) => describeIssue(issue, "mm"));
