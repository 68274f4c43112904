import type { Path, Segment } from "@scantling/geometry";
import type { PatternModel } from "./pattern-model.js";
import type { SectionStation } from "./sections-model.js";

/** One thing that is agreed: what it is, how much as drawn, the limits that the finished knife keeps, what was asked. */
export interface CustomerFigure {
  readonly what: string;
  readonly value: string;
  readonly within?: string;
  readonly asked?: string;
  /** That it is not what was asked. */
  readonly differs?: true;
}

/** A name and what belongs to it. */
export interface CustomerLine {
  readonly what: string;
  readonly value: string;
}

/** An amount with its currency. */
export interface CustomerAmount {
  readonly what: string;
  readonly amount: string;
  /** The sum. */
  readonly strong?: true;
}

/** What is seen of the knife from its right side: steel that shows, what lies inside the handle, the handle; mm. */
export interface CustomerView {
  /** The steel's pattern, for its bevels, holes and sizes; its outline is closed. */
  readonly pattern: PatternModel;
  /** Runs of the steel's outline that are seen, and those that lie inside the handle. */
  readonly seen: readonly (readonly Segment[])[];
  readonly inside: readonly (readonly Segment[])[];
  /** Closed outlines of slabs or block and of what is fitted. */
  readonly handle: readonly Path[];
  /** What is not drawn. */
  readonly note?: string;
}

/** What a customer gets before the work begins: everything that is agreed, and nothing of how it is made. */
export interface CustomerModel {
  readonly code: string;
  readonly title: string;
  readonly revision: string;
  readonly maker: readonly string[];
  readonly customer: readonly string[];
  /** As they are printed: the day of the offer, and the one up to which it holds. */
  readonly date: string;
  readonly validUntil?: string;
  readonly figures: readonly CustomerFigure[];
  readonly materials: readonly CustomerLine[];
  /** None where the price is to be agreed. */
  readonly price: readonly CustomerAmount[];
  readonly ready: string;
  readonly terms: readonly string[];
  readonly cautions: readonly string[];
  readonly view: CustomerView;
  /** As it will be; earlier states are not shown. */
  readonly sections: readonly SectionStation[];
}
