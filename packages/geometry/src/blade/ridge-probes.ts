import type { EdgeRun } from "./edge-run.js";

/** Heights at which a station is looked at for an element between two stretches of another. */
const PROBES = 11;
/** Most times that the least lead between two probes is closed in on. */
const CLOSINGS = 16;
const GOLDEN = (Math.sqrt(5) - 1) / 2;
/** A rival must be nearer by this to count, mm: at a common end both are equally near. */
const NEARER = 1e-11;

/**
 * Looks along a station for elements of the edge that are nearest over a short stretch only: at even heights, and between
 * them wherever the lead of the nearest element over another one has a least value that might fall below zero.
 */
export class RidgeProbes {
  private readonly changes: number[] = [];
  private readonly run: EdgeRun;
  private readonly element = new Int32Array(PROBES + 2);
  private readonly y = new Float64Array(PROBES + 2);
  private readonly v = new Float64Array(PROBES + 2);
  /** Distances of all elements, ends included, from each probe; further ones than matter are only known to be far. */
  private readonly far: Float64Array;
  /** What was looked at last: the second face of a blade asks for the same stations. */
  private lastX = Number.NaN;
  private lastY0 = Number.NaN;
  private lastY1 = Number.NaN;

  constructor(run: EdgeRun) {
    this.run = run;
    this.far = new Float64Array((PROBES + 2) * run.elements.length);
  }

  /** Heights of the station x between y0 and y1 at which another element is nearest than at the one before, ascending. */
  look(x: number, y0: number, y1: number): readonly number[] {
    const { run, y, v, element, changes } = this;
    if (x === this.lastX && y0 === this.lastY0 && y1 === this.lastY1) return changes;
    this.lastX = x;
    this.lastY0 = y0;
    this.lastY1 = y1;
    changes.length = 0;
    const count = run.elements.length;
    const reach = (2 * (y1 - y0)) / (PROBES + 1);
    for (let k = 0; k <= PROBES + 1; k++) {
      y[k] = k > PROBES ? y1 : y0 + ((y1 - y0) * k) / (PROBES + 1);
      v[k] = run.nearest(x, y[k] as number);
      element[k] = run.element;
      for (let i = 0; i < count; i++) {
        const box = run.boxDistance(i, x, y[k] as number);
        // What is farther than this cannot take the lead before the next probe.
        const isFar = run.sources[i] === undefined || box > (v[k] as number) + reach;
        this.far[k * count + i] = isFar ? box : run.closedDistance(i, x, y[k] as number);
      }
    }
    for (let k = 0; k <= PROBES; k++) {
      if (k > 0 && element[k] !== element[k - 1]) changes.push(y[k] as number);
      if (element[k] !== element[k + 1]) continue;
      const found = this.overtaken(x, k);
      if (found !== undefined) changes.push(found);
    }
    return changes;
  }

  /** A height between probes k and k + 1 at which another element is nearer than the one that is nearest at both. */
  private overtaken(x: number, k: number): number | undefined {
    const { run } = this;
    const a = this.y[k] as number;
    const b = this.y[k + 1] as number;
    // Neither distance changes faster than the height: a lead that adds up to twice the step is not lost inside it.
    const enough = (this.v[k] as number) + (this.v[k + 1] as number) + 2 * (b - a);
    const leader = this.element[k] as number;
    const count = run.elements.length;
    let first = -1;
    let second = -1;
    let least = enough;
    let next = enough;
    for (let i = 0; i < count; i++) {
      // A corner is an end of both its neighbours, and never nearer than they are with their ends.
      if (i === leader || run.sources[i] === undefined) continue;
      const apart = (this.far[k * count + i] as number) + (this.far[(k + 1) * count + i] as number);
      if (apart < least) {
        second = first;
        next = least;
        first = i;
        least = apart;
      } else if (apart < next) {
        second = i;
        next = apart;
      }
    }
    // The two closest rivals are enough: whoever overtakes is one of them before it does.
    const found = first < 0 ? undefined : this.leastLead(x, leader, first, a, b);
    return found ?? (second < 0 ? undefined : this.leastLead(x, leader, second, a, b));
  }

  /** Closes in on the least lead by golden section; returns a height at which it is lost. */
  private leastLead(x: number, leader: number, rival: number, from: number, to: number): number | undefined {
    const { run } = this;
    const leadAt = (y: number): number =>
      run.closedDistance(rival, x, y) - run.closedDistance(leader, x, y) + NEARER;
    let a = from;
    let b = to;
    let c = b - GOLDEN * (b - a);
    let d = a + GOLDEN * (b - a);
    let atC = leadAt(c);
    let atD = leadAt(d);
    for (let pass = 0; pass < CLOSINGS; pass++) {
      if (atC < 0) return c;
      if (atD < 0) return d;
      if (Math.min(atC, atD) > 2 * (b - a)) return undefined;
      if (atC < atD) {
        b = d;
        d = c;
        atD = atC;
        c = b - GOLDEN * (b - a);
        atC = leadAt(c);
      } else {
        a = c;
        c = d;
        atC = atD;
        d = a + GOLDEN * (b - a);
        atD = leadAt(d);
      }
    }
    return undefined;
  }
}
