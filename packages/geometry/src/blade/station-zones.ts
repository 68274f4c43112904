import type { EdgeElement } from "./edge-element.js";
import type { EdgeRun } from "./edge-run.js";
import type { HalfSection } from "./half-section.js";

/**
 * Receives one zone of a station: between `ya` and `yb` the nearest edge element and the piece of the section stay the
 * same. `va`, `vb` are the distances from the edge at its ends, `footA`, `footB` the parameters of the nearest points there.
 */
export type ZoneVisitor = (
  element: EdgeElement,
  piece: number,
  ya: number,
  va: number,
  footA: number,
  yb: number,
  vb: number,
  footB: number,
) => void;

/** Walks a station in zones. One object serves one body; it keeps the station in fields while it walks. */
export class StationZones {
  private readonly run: EdgeRun;
  private section: HalfSection;
  private visit: ZoneVisitor = () => {};
  /** Pieces of which the visitor wants nothing: those level at this half-thickness. */
  private whole = Number.NaN;
  private x = 0;

  constructor(run: EdgeRun, section: HalfSection) {
    this.run = run;
    this.section = section;
  }

  /**
   * Visits the zones of station x between y0 and y1.
   *
   * @param whole - pieces that are level at this half-thickness are passed over; NaN: none are.
   */
  walk(x: number, y0: number, y1: number, section: HalfSection, whole: number, visit: ZoneVisitor): void {
    this.begin(x, section, whole, visit);
    this.run.walk(x, y0, y1, this.stretch);
  }

  /** The same where the nearest points of both ends are known: distance, element, parameter. */
  walkBetween(
    x: number,
    y0: number,
    v0: number,
    e0: number,
    f0: number,
    y1: number,
    v1: number,
    e1: number,
    f1: number,
    section: HalfSection,
    whole: number,
    visit: ZoneVisitor,
  ): void {
    this.begin(x, section, whole, visit);
    this.run.walkBetween(x, y0, v0, e0, f0, y1, v1, e1, f1, this.stretch);
  }

  private begin(x: number, section: HalfSection, whole: number, visit: ZoneVisitor): void {
    this.x = x;
    this.section = section;
    this.whole = whole;
    this.visit = visit;
  }

  private readonly stretch = (
    e: number,
    y0: number,
    v0: number,
    foot0: number,
    y1: number,
    v1: number,
    foot1: number,
  ): void => {
    const section = this.section;
    const element = this.run.elements[e] as EdgeElement;
    const rising = v1 >= v0;
    const low = rising ? v0 : v1;
    const high = rising ? v1 : v0;
    const yEnd = rising ? y1 : y0;
    const footEnd = rising ? foot1 : foot0;
    let ya = rising ? y0 : y1;
    let va = low;
    let foot = rising ? foot0 : foot1;
    for (let i = section.pieceAt(low); i < section.count; i++) {
      const end = section.endOf(i);
      const last = !(end < high);
      const vb = last ? high : end;
      element.foot = foot;
      const yb = last ? yEnd : element.heightAtDistance(this.x, vb, ya, va, yEnd, high, footEnd);
      const footAtB = last ? footEnd : element.foot;
      if (!this.isWhole(i)) this.visit(element, i, ya, va, foot, yb, vb, footAtB);
      if (last) return;
      ya = yb;
      va = vb;
      foot = footAtB;
    }
  };

  private isWhole(piece: number): boolean {
    const section = this.section;
    return !section.isArc(piece) && section.b[piece] === 0 && section.a[piece] === this.whole;
  }
}
