import type { Bounds, Path, Segment, Vec2 } from "@scantling/geometry";
import { arcAround, invariant } from "@scantling/geometry";
import { mmToInches } from "@scantling/geometry/units";
import { cleanText } from "../clean-text.js";
import type { CircleItem, Drawing, DrawingItem, PathItem, TextItem } from "../drawing.js";
import { penOf, type Role } from "../role.js";
import { fontSizeOf } from "../text-metrics.js";
import { LIGHTNESS } from "../tone.js";
import { arcCubics } from "./arc-cubics.js";
import type { PdfDocument } from "./pdf-document.js";
import { type Coverage, type Run, typeset } from "./typeset.js";

/** PDF counts in 1/72 in unless told otherwise (ISO 32000-1, 8.3.2.3). */
const POINTS_PER_INCH = 72;

/** Points of a length in mm. */
export const mmToPoints = (mm: number): number => mmToInches(mm) * POINTS_PER_INCH;

/** Writes one drawing on a page of its own. Every coordinate is worked out here; the page has one unit throughout. */
export class PageWriter {
  readonly #pdf: PdfDocument;
  readonly #covers: Coverage;
  readonly #drawing: Drawing;
  readonly #across: number;
  readonly #up: number;

  constructor(pdf: PdfDocument, covers: Coverage, drawing: Drawing) {
    this.#pdf = pdf;
    this.#covers = covers;
    this.#drawing = drawing;
    this.#across = drawing.correction?.across ?? 1;
    this.#up = drawing.correction?.up ?? 1;
  }

  write(): void {
    const { width, height, items } = this.#drawing;
    this.#pdf.addPage({
      size: [mmToPoints(width * this.#across), mmToPoints(height * this.#up)],
      margin: 0,
    });
    this.#pdf.lineJoin("round");
    for (const item of items) this.#item(item);
  }

  /** The library counts y from the top of the page down and turns it over once, at the head of the page. */
  #point({ x, y }: Vec2): [number, number] {
    const { origin, height } = this.#drawing;
    const place: [number, number] = [
      mmToPoints((x + origin.x) * this.#across),
      mmToPoints((height - origin.y - y) * this.#up),
    ];
    invariant(place.every(Number.isFinite), `a drawing's coordinate is finite, got ${x}, ${y}`);
    return place;
  }

  #item(item: DrawingItem): void {
    switch (item.kind) {
      case "group":
        this.#group(item.items, item.clip);
        return;
      case "path":
        this.#path(item);
        return;
      case "circle":
        this.#circle(item);
        return;
      case "text":
        this.#text(item);
    }
  }

  #group(items: readonly DrawingItem[], clip: Bounds | undefined): void {
    if (clip !== undefined) {
      const [left, bottom] = this.#point({ x: clip.minX, y: clip.minY });
      const [right, top] = this.#point({ x: clip.maxX, y: clip.maxY });
      this.#pdf
        .save()
        .rect(left, top, right - left, bottom - top)
        .clip();
    }
    for (const item of items) this.#item(item);
    if (clip !== undefined) this.#pdf.restore();
  }

  #path(item: PathItem): void {
    const paths = item.paths.filter(({ segments }) => segments.length > 0);
    if (paths.length === 0) return;
    if (item.fill === undefined) {
      this.#pen(item.role, item.dashStart);
      for (const path of paths) this.#trace(path);
      this.#pdf.stroke();
    } else {
      this.#pdf.save();
      // Grey by the black ink alone, not mixed from three colours.
      this.#pdf.addContent(`${(LIGHTNESS[item.fill] / LIGHTNESS.white).toFixed(4)} g`);
      for (const path of paths) this.#trace(path);
      this.#pdf.fill();
      this.#pdf.restore();
    }
  }

  #circle({ centre, radius, role }: CircleItem): void {
    this.#pen(role);
    // The way round that an SVG circle is drawn, so that dashes fall alike.
    this.#trace({ segments: [arcAround(centre, radius, 0, -2 * Math.PI)], closed: true });
    this.#pdf.stroke();
  }

  #pen(role: Role, dashStart = 0): void {
    const { width, dash } = penOf(role);
    this.#pdf.lineWidth(mmToPoints(width));
    if (dash.length === 0) this.#pdf.undash();
    // The library takes a whole pattern; its types know of one length only.
    else this.#pdf.dash(dash.map(mmToPoints) as unknown as number, { phase: mmToPoints(dashStart) });
  }

  #trace({ segments, closed }: Path): void {
    let pen: Vec2 | undefined;
    for (const segment of segments) {
      const { from } = segment;
      // Joints are exact in a path; where a run of curves is broken, a new line begins.
      if (pen === undefined || Math.hypot(from.x - pen.x, from.y - pen.y) > SAME_POINT)
        this.#pdf.moveTo(...this.#point(from));
      this.#segment(segment);
      pen = segment.to;
    }
    if (closed) this.#pdf.closePath();
  }

  #segment(segment: Segment): void {
    if (segment.kind === "line") {
      this.#pdf.lineTo(...this.#point(segment.to));
      return;
    }
    for (const { control1, control2, to } of segment.kind === "arc" ? arcCubics(segment) : [segment])
      this.#pdf.bezierCurveTo(...this.#point(control1), ...this.#point(control2), ...this.#point(to));
  }

  #text(item: TextItem): void {
    const runs = typeset(cleanText(item.text), item.bold ?? false, this.#covers).filter(
      ({ text }) => text !== "",
    );
    if (runs.length === 0) return;
    const size = mmToPoints(fontSizeOf(item.height));
    // A single run from its point on need not be measured, and most are.
    const measured = item.anchor !== "start" || runs.length > 1 ? runs : [];
    const widths = measured.map((run) =>
      this.#pdf.font(run.font, size).widthOfString(run.text, layoutOf(run)),
    );
    const total = widths.reduce((sum, width) => sum + width, 0);
    const start = item.anchor === "start" ? 0 : item.anchor === "middle" ? -total / 2 : -total;
    const [x, y] = this.#point(item.at);
    const level = item.rotation === 0 && this.#across === 1 && this.#up === 1;
    if (!level) {
      const cos = Math.cos(item.rotation);
      const sin = Math.sin(item.rotation);
      this.#pdf.save();
      this.#pdf.transform(cos * this.#across, -sin * this.#up, sin * this.#across, cos * this.#up, x, y);
    }
    let along = start + (level ? x : 0);
    for (const [index, run] of runs.entries()) {
      this.#pdf.font(run.font, size).text(run.text, along, level ? y : 0, {
        ...layoutOf(run),
        lineBreak: false,
        baseline: "alphabetic",
      });
      along += widths[index] ?? 0;
    }
    if (!level) this.#pdf.restore();
  }
}

/** Closer than this is the same point, mm: half of the finest step that is written. */
const SAME_POINT = 5e-6;

/** Asked for a list of features, be it empty, the library sets a run as a whole and not word by word. */
const layoutOf = (run: Run): PDFKit.Mixins.TextOptions => (run.rightToLeft ? { features: [] } : {});
