import { spawnSync } from "node:child_process";
import { PNG } from "pngjs";

// A printer that is not true: it takes a file's page, shrinks or stretches it along either side of the paper, and puts
// it on the paper in dots, which are then measured. The file's own width, height and view box are left to the renderer.

/** How far it is off along the short side of the paper and along the long one. */
export interface CrookedPrinter {
  readonly shortSide: number;
  readonly longSide: number;
}

interface Point {
  readonly x: number;
  readonly y: number;
}

const DPI = 1200;
const DOTS_PER_MM = DPI / 25.4;

/** A print of one SVG page. */
export class Print {
  private readonly svg: string;
  private readonly scale: Point;
  /** mm on paper of one user unit of the file, by its own words. */
  private readonly unit: Point;

  constructor(svg: string, printer: CrookedPrinter) {
    const [, width, height, viewWidth, viewHeight] =
      /<svg[^>]* width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 ([\d.]+) ([\d.]+)"/
        .exec(svg)
        ?.map(Number) ?? [];
    if (!width || !height || !viewWidth || !viewHeight) throw new Error("no page size in mm");
    this.svg = svg.replace(/^<\?xml[^>]*>\s*/, "");
    this.scale =
      width <= height
        ? { x: printer.shortSide, y: printer.longSide }
        : { x: printer.longSide, y: printer.shortSide };
    this.unit = { x: (width / viewWidth) * this.scale.x, y: (height / viewHeight) * this.scale.y };
  }

  /**
   * Where on the paper an upright line lies (across) or a level one (up), mm from the page's upper left corner: the
   * middle of its ink, in a stretch of it from `from` to `to` mm beside a point of the file.
   *
   * @param point - User units; only where to look.
   */
  lineNear(point: Point, direction: "across" | "up", from: number, to: number): number {
    const across = direction === "across";
    const [near, far] = from < to ? [from, to] : [to, from];
    const centre = { x: point.x * this.unit.x, y: point.y * this.unit.y };
    // A window of paper 2 mm to either side of where the line should be.
    const left = across ? centre.x - 2 : centre.x + near;
    const top = across ? centre.y + near : centre.y - 2;
    const [width, height] = across ? [4, far - near] : [far - near, 4];
    const png = this.dots(left, top, width, height);
    let weight = 0;
    let sum = 0;
    for (let row = 0; row < png.height; row++) {
      for (let column = 0; column < png.width; column++) {
        const ink = 1 - (png.data[4 * (row * png.width + column)] ?? 255) / 255;
        weight += ink;
        sum += ink * ((across ? column : row) + 0.5);
      }
    }
    if (weight === 0) throw new Error(`no ink beside ${point.x}, ${point.y}`);
    return (across ? left : top) + sum / weight / DOTS_PER_MM;
  }

  /** A piece of the printed paper in dots; mm. */
  private dots(left: number, top: number, width: number, height: number): PNG {
    // Inside, mm of the file are DPI / 25.4 units; the scale makes them mm of paper again.
    const inner = `scale(${this.scale.x / DOTS_PER_MM} ${this.scale.y / DOTS_PER_MM})`;
    const paper =
      `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="${left} ${top} ${width} ${height}">` +
      `<g transform="${inner}">${this.svg}</g></svg>`;
    const result = spawnSync(
      "rsvg-convert",
      ["--dpi-x", String(DPI), "--dpi-y", String(DPI), "--background-color", "white"],
      { input: paper, maxBuffer: 1 << 28 },
    );
    if (result.error) {
      throw new Error("no rsvg-convert: install the Debian package librsvg2-bin; this check is not skipped", {
        cause: result.error,
      });
    }
    if (result.status !== 0) throw new Error(`rsvg-convert: ${result.stderr.toString()}`);
    return PNG.sync.read(result.stdout);
  }
}
