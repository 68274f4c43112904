/** What every sheet of an order says about it. */
export interface OrderHead {
  readonly code: string;
  readonly title: string;
  readonly units: "mm" | "in";
  /** Date or revision text given by the caller. */
  readonly revision?: string;
}
