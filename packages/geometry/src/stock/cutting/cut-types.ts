/** Pieces of one length for one order. */
export interface CutPiece {
  /** The order's code, as it is to stand on the cut list. */
  readonly order: string;
  /** mm */
  readonly length: number;
  /** How many; 1 or more. */
  readonly count: number;
}

/** Bars of one length that lie on the rack, all of one section, steel and price. */
export interface CutBar {
  readonly name: string;
  /** mm; left out: as long as needed, and as many. */
  readonly length?: number;
  /** How many of that length; left out: one. */
  readonly count?: number;
}

/** What is to be cut from what. */
export interface CutRequest {
  /** Orders are served as they come: where the bars do not suffice for all, the last ones are left without. */
  readonly pieces: readonly CutPiece[];
  readonly bars: readonly CutBar[];
  /** Width of the saw's cut, mm. */
  readonly kerf: number;
  /** A leftover at least this long goes back on the rack; a shorter one is scrap, mm. */
  readonly minKeep: number;
}

/** A piece that was given its place. */
export interface SawnPiece {
  readonly order: string;
  /** mm */
  readonly length: number;
}

/** One bar, sawn. Lengths mm. */
export interface SawnBar {
  /** Index of its entry in the request's bars. */
  readonly bar: number;
  readonly name: string;
  /** As it lay on the rack; left out: as long as needed. */
  readonly length?: number;
  /** In the order in which they are cut. */
  readonly pieces: readonly SawnPiece[];
  /** What is left of it after the last cut; left out where its length is not known. */
  readonly leftover?: number;
  /** Whether what is left goes back on the rack. */
  readonly kept: boolean;
}

/** An order that the bars do not suffice for, once the orders before it have been served. */
export interface LeftOutOrder {
  readonly order: string;
  /** What could not be cut of it: with the fewest mm missing. Nothing is cut for it. */
  readonly missing: readonly { readonly length: number; readonly count: number }[];
}

/** How sure it is that no other list is better. */
export interface CutProof {
  /** Proven: who is served, the length opened and the longest leftover cannot be bettered. */
  readonly optimal: boolean;
  /** Proven lower limit of the length that has to be taken for the orders served, mm; see `CutList.taken`. */
  readonly takenAtLeast: number;
  /** `integer-program`: solved. `first-fit`: laid by a rule of thumb, for want of a solver or of time. */
  readonly method: "integer-program" | "first-fit";
}

/** Which piece is cut from which bar. Lengths mm. */
export interface CutList {
  /** Shortest bars first. */
  readonly bars: readonly SawnBar[];
  readonly leftOut: readonly LeftOutOrder[];
  /** Length of all bars that are opened, and what is sawn off bars that are as long as needed, cuts included. */
  readonly taken: number;
  /** The longest piece that goes back on the rack; 0 where none does. */
  readonly longestLeftover: number;
  /** Leftovers too short to keep, together. */
  readonly scrap: number;
  readonly proof: CutProof;
}
