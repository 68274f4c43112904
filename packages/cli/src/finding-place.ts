import { type Finding, letterName } from "@scantling/geometry";
import { formatPath, nearestPosition, parsePath, pathWords, withPathWords } from "./file/index.js";
import type { Job } from "./load.js";

/** Where in a file that which was found stands. */
export interface FindingPosition {
  readonly file: string;
  readonly line: number;
  readonly column: number;
}

/** What a finding is about, and where that stands. */
export interface FindingPlace {
  /** In words, as the drawing and the rack call it; empty for the whole knife. */
  readonly name: string;
  readonly position: FindingPosition | undefined;
}

/** What stands in the shop file and never in a knife file. */
const SHOP_PATHS = /^(?:rack|press|oven|quenchTank|fullers|preCurve|limits|losses|work|currency)\b/u;

/** Finds what a finding is about: paths count lists from 0, people do not. */
export function placeFinding({ path }: Finding, job: Job): FindingPlace {
  const inShop = SHOP_PATHS.test(path) || isFromShop(path, job);
  const file = inShop ? job.shopPlaces : job.knife;
  const position = file === undefined ? undefined : nearestPosition(path, file);
  return {
    name: placeName(path, job),
    position: file === undefined || position === undefined ? undefined : { file: file.fileName, ...position },
  };
}

/** Allowances, and sizes of the sheath, that a knife file leaves out are those of the shop file. */
const isFromShop = (path: string, { knife, shopPlaces }: Job): boolean =>
  /^(?:allowances|sheath)\./u.test(path) &&
  knife.positionOf(path) === undefined &&
  shopPlaces?.positionOf(path) !== undefined;

/** A hole is called by its letter on the pattern, and by where it stands in the file. */
function placeName(path: string, job: Job): string {
  const hole = HOLE.exec(path)?.[0];
  return hole === undefined ? nameOf(path, job) : `${nameOf(path, job)}, ${pathWords(parsePath(hole))}`;
}

const HOLE = /^(?:blade|tang)\.holes\[\d+\]/u;

function nameOf(path: string, { shop, spec }: Job): string {
  const [, owner, hole] = /^(blade|tang)\.holes\[(\d+)\]/u.exec(path) ?? [];
  if (owner !== undefined) {
    return `hole ${letterName(Number(hole) + (owner === "blade" ? 0 : (spec.blade.holes?.length ?? 0)))}`;
  }
  const [, bar] = /^rack\[(\d+)\]$/u.exec(path) ?? [];
  if (bar !== undefined) return shop.rack[Number(bar)]?.name ?? "the rack";
  return formatPath(parsePath(path).filter((step) => typeof step === "string"));
}

/** A text in which other paths are named: holes by their letters, all else counted from 1. */
export function namesIn(text: string, job: Job): string {
  return withPathWords(text.replace(/\b(?:blade|tang)\.holes\[\d+\]/gu, (path) => nameOf(path, job)));
}
