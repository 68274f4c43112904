import {
  type Bounds,
  type Path,
  parametersAtX,
  pathBounds,
  pointAt,
  type Segment,
  segmentBounds,
  type Vec2,
} from "@scantling/geometry";
import { intersectBoxes } from "../../box.js";
import type { DrawingItem } from "../../drawing.js";
import { textBox } from "../../text-metrics.js";
import { circlePath } from "./in-window.js";
import { parametersAtY } from "./segment-box.js";

/** A point this near to the edge of a cell lies in both cells, mm. */
const ON_EDGE = 1e-9;

/**
 * Which whole square millimetres of a view a line or lettering touches. Curves are followed exactly, from one cell's
 * edge to the next, so that a box of whole mm is empty here if and only if it is empty.
 */
export class InkMap {
  private readonly left: number;
  private readonly foot: number;
  private readonly columns: number;
  private readonly rows: number;
  private readonly inked: Uint8Array;
  private readonly sums: Int32Array;

  /** @param zone - a box that holds the items. */
  constructor(items: readonly DrawingItem[], zone: Bounds) {
    this.left = Math.floor(zone.minX) - 1;
    this.foot = Math.floor(zone.minY) - 1;
    this.columns = Math.ceil(zone.maxX) + 1 - this.left;
    this.rows = Math.ceil(zone.maxY) + 1 - this.foot;
    this.inked = new Uint8Array(this.columns * this.rows);
    this.mark(items, zone);
    this.sums = this.sumUp();
  }

  /** Whether nothing is drawn in a box of whole mm, its edges included. */
  isEmpty(minX: number, minY: number, maxX: number, maxY: number): boolean {
    const fromX = this.column(minX);
    const toX = this.column(maxX);
    const low = this.row(minY) * (this.columns + 1);
    const high = this.row(maxY) * (this.columns + 1);
    const at = (index: number): number => this.sums[index] ?? 0;
    return at(high + toX) - at(high + fromX) - at(low + toX) + at(low + fromX) === 0;
  }

  private column(x: number): number {
    return Math.min(Math.max(x - this.left, 0), this.columns);
  }

  private row(y: number): number {
    return Math.min(Math.max(y - this.foot, 0), this.rows);
  }

  private mark(items: readonly DrawingItem[], clip: Bounds): void {
    for (const item of items) {
      if (item.kind === "group") {
        const inner = item.clip === undefined ? clip : intersectBoxes(item.clip, clip);
        if (inner !== undefined) this.mark(item.items, inner);
      } else if (item.kind === "text") {
        if (item.text !== "") this.markBox(textBox(item), clip);
      } else if (item.kind === "path" && item.fill !== undefined) {
        for (const path of item.paths) this.markBox(pathBounds(path), clip);
      } else {
        const paths: readonly Path[] = item.kind === "circle" ? [circlePath(item)] : item.paths;
        for (const path of paths) for (const segment of path.segments) this.markSegment(segment, clip);
      }
    }
  }

  private markBox(box: Bounds, clip: Bounds): void {
    const seen = intersectBoxes(box, clip);
    if (seen === undefined) return;
    const [fromX, toX] = [this.column(Math.floor(seen.minX)), this.column(Math.ceil(seen.maxX))];
    for (let y = this.row(Math.floor(seen.minY)); y < this.row(Math.ceil(seen.maxY)); y++)
      this.inked.fill(1, y * this.columns + fromX, y * this.columns + toX);
  }

  private markSegment(segment: Segment, clip: Bounds): void {
    const { minX, minY, maxX, maxY } = segmentBounds(segment);
    const breaks = [0, 1];
    for (let x = Math.ceil(minX); x <= maxX; x++) breaks.push(...parametersAtX(segment, x));
    for (let y = Math.ceil(minY); y <= maxY; y++) breaks.push(...parametersAtY(segment, y));
    breaks.sort((a, b) => a - b);
    let before = 0;
    for (const t of breaks) {
      // Between two breaks the curve stays in one cell.
      this.markPoint(pointAt(segment, (before + t) / 2), clip);
      this.markPoint(pointAt(segment, t), clip);
      before = t;
    }
  }

  private markPoint({ x, y }: Vec2, clip: Bounds): void {
    if (x < clip.minX || x > clip.maxX || y < clip.minY || y > clip.maxY) return;
    for (const cellY of [Math.floor(y - ON_EDGE), Math.floor(y + ON_EDGE)])
      for (const cellX of [Math.floor(x - ON_EDGE), Math.floor(x + ON_EDGE)])
        this.inked[(cellY - this.foot) * this.columns + cellX - this.left] = 1;
  }

  /** Inked cells left of and below each corner, so that any box is counted in four steps. */
  private sumUp(): Int32Array {
    const stride = this.columns + 1;
    const sums = new Int32Array(stride * (this.rows + 1));
    for (let y = 0; y < this.rows; y++) {
      let inRow = 0;
      for (let x = 0; x < this.columns; x++) {
        inRow += this.inked[y * this.columns + x] ?? 0;
        sums[(y + 1) * stride + x + 1] = (sums[y * stride + x + 1] ?? 0) + inRow;
      }
    }
    return sums;
  }
}
