import { gaussRule } from "../numeric/gauss.js";

/** How the corners of a block's section are made. `square` has none taken off. */
export type Corner = "square" | "cut" | "round";

/** Enough for products of a few sines over a quarter turn, to rounding. */
const ROUND_RULE = gaussRule(16);
/** Exact for the third power of a straight line, and for y² times it. */
const CUT_RULE = gaussRule(3);

/**
 * Section of a block square to x, the same above and below its middle and on both faces. Over the height `u` above the
 * middle its half-width is `halfWidth` up to the corner; the corner takes `cornerHeight` of the height and `cornerWidth`
 * of the width: a straight cut, or a quarter of an ellipse (an oval is all corner). Filled again at every station.
 */
export class BlockSection {
  halfHeight = 0;
  halfWidth = 0;
  cornerHeight = 0;
  cornerWidth = 0;
  readonly corner: Corner;
  /** ∫h, ∫h·u, ∫h·u², ∫h³ du over what was added since {@link clear}; u counted from the middle, upward. */
  readonly sums = new Float64Array(4);

  constructor(corner: Corner) {
    this.corner = corner;
  }

  /** Half-width at a height above (or below) the middle, mm; 0 outside the section. */
  widthAt(u: number): number {
    const height = Math.abs(u);
    if (height > this.halfHeight) return 0;
    const start = this.halfHeight - this.cornerHeight;
    if (this.corner === "square" || height <= start) return this.halfWidth;
    return this.halfWidth - this.cornerWidth * this.lost((height - start) / this.cornerHeight);
  }

  clear(): void {
    this.sums.fill(0);
  }

  /**
   * Adds what lies between two heights from the middle, no wider than `cap` on each side of the centre plane.
   *
   * @param cap - greatest half-width that counts, mm; may be infinite.
   */
  add(from: number, to: number, cap: number): void {
    if (!(to > from)) return;
    if (to > 0) this.addAbove(Math.max(0, from), Math.min(to, this.halfHeight), cap, 1);
    if (from < 0) this.addAbove(Math.max(0, -to), Math.min(-from, this.halfHeight), cap, -1);
  }

  /** Share of the corner's width that is gone at the share s of its height. */
  private lost(s: number): number {
    return this.corner === "cut" ? s : 1 - Math.sqrt(Math.max(0, 1 - s * s));
  }

  private addAbove(u0: number, u1: number, cap: number, side: 1 | -1): void {
    if (!(u1 > u0)) return;
    const start = this.corner === "square" ? this.halfHeight : this.halfHeight - this.cornerHeight;
    const level = Math.min(u1, start);
    if (level > u0) this.addLevel(u0, level, Math.min(cap, this.halfWidth), side);
    const first = Math.max(u0, start);
    if (!(u1 > first) || this.cornerHeight <= 0) return;
    // Below the height at which the corner has come in to the cap, the cap holds.
    const change = start + this.cornerHeight * this.shareAtLoss((this.halfWidth - cap) / this.cornerWidth);
    const middle = Math.min(u1, Math.max(first, change));
    if (middle > first) this.addLevel(first, middle, cap, side);
    if (u1 > middle) this.addCorner(middle, u1, start, side);
  }

  /** The share of the corner's height at which a share of its width is gone. */
  private shareAtLoss(loss: number): number {
    if (!(loss > 0)) return 0;
    if (loss >= 1) return 1;
    return this.corner === "cut" ? loss : Math.sqrt(1 - (1 - loss) ** 2);
  }

  private addLevel(u0: number, u1: number, h: number, side: 1 | -1): void {
    const { sums } = this;
    sums[0] = (sums[0] as number) + h * (u1 - u0);
    sums[1] = (sums[1] as number) + (side * h * (u1 * u1 - u0 * u0)) / 2;
    sums[2] = (sums[2] as number) + (h * (u1 ** 3 - u0 ** 3)) / 3;
    sums[3] = (sums[3] as number) + h * h * h * (u1 - u0);
  }

  private addCorner(u0: number, u1: number, start: number, side: 1 | -1): void {
    const { sums, cornerHeight, cornerWidth, halfWidth } = this;
    const round = this.corner === "round";
    const { nodes, weights } = round ? ROUND_RULE : CUT_RULE;
    // A round corner is walked by its angle, which takes the upright end out of the integrand.
    const share = (u: number): number => Math.min(1, Math.max(0, (u - start) / cornerHeight));
    const p0 = round ? Math.asin(share(u0)) : share(u0);
    const p1 = round ? Math.asin(share(u1)) : share(u1);
    for (let i = 0; i < nodes.length; i++) {
      const p = p0 + (p1 - p0) * (nodes[i] as number);
      const s = round ? Math.sin(p) : p;
      const rest = round ? Math.cos(p) : 1 - s;
      const h = halfWidth - cornerWidth * (1 - rest);
      const u = start + cornerHeight * s;
      const w = (weights[i] as number) * (p1 - p0) * cornerHeight * (round ? rest : 1);
      sums[0] = (sums[0] as number) + w * h;
      sums[1] = (sums[1] as number) + side * w * h * u;
      sums[2] = (sums[2] as number) + w * h * u * u;
      sums[3] = (sums[3] as number) + w * h * h * h;
    }
  }
}
