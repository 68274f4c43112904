import type { Path, SectionMarks } from "@scantling/geometry";
import type { SheetUnits } from "../sheet-units.js";

/** The knife cut square to its length at one place; paths in (z, y), right-hand face at positive z; mm, mm². */
export interface SectionStation {
  /** mm from the heel. */
  readonly x: number;
  /** Where that is, in words: "heel", "60 % of the edge". */
  readonly place: string;
  /** The steel as it will be, and before: one closed path for each piece. */
  readonly finished: readonly Path[];
  readonly ready?: readonly Path[];
  readonly forged?: readonly Path[];
  /** What the finished section is dimensioned by. */
  readonly marks: SectionMarks;
  /** Thickness across the flats, as if no swedge were ground, and what a swedge leaves at the very spine. */
  readonly thickness: number;
  readonly atSwedge?: number;
  /** Height over all, holes counted in, and steel in the section. */
  readonly height: number;
  readonly area: number;
  /** Thickness at heights straight above the edge; none behind the bevels. */
  readonly aboveEdge: readonly { readonly above: number; readonly thickness: number }[];
  /** Whether it is drawn; the tables and the key have all of them. */
  readonly drawn: boolean;
  /** Whether the edge is drawn once more by itself, many times enlarged. */
  readonly edgeDetail: boolean;
}

/** Everything that a sheet of sections shows of the knife. */
export interface SectionsModel {
  readonly code: string;
  readonly title: string;
  readonly steel: string;
  /** The finished outline seen from the right, for the key to where the sections are; mm, heel at the origin. */
  readonly outline: Path;
  /** In the order of x. */
  readonly stations: readonly SectionStation[];
  readonly units: SheetUnits;
  /** Date or revision text given by the caller. */
  readonly revision?: string;
}
