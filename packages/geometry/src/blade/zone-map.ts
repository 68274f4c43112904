import type { HalfSection } from "./half-section.js";

/** An arc whose radius is so many times its width is as good as straight. */
const NEARLY_STRAIGHT = 1e4;

/** Spreads points over a zone so that what is summed is smooth in them, even where a face stands upright at its end. */
export class ZoneMap {
  /** Share of the zone's width at the last point asked for, and how fast it grows there. */
  place = 0;
  stretch = 1;
  private kind: "even" | "arc" | "ends" = "even";
  private from = 0;
  private turn = 0;
  private centre = 0;
  private radius = 0;
  private start = 0;
  private width = 1;

  /** By the angle along a circular piece of a section, evenly along a straight one; between two v, mm. */
  fit(section: HalfSection, piece: number, va: number, vb: number): void {
    this.kind = "even";
    if (!section.isArc(piece)) return;
    const radius = section.radiusOf(piece);
    if (!(radius < NEARLY_STRAIGHT * (vb - va))) return;
    const centre = section.b[piece] as number;
    const angle = (v: number): number => Math.asin(Math.max(-1, Math.min(1, (v - centre) / radius)));
    this.kind = "arc";
    this.from = angle(va);
    this.turn = angle(vb) - this.from;
    this.centre = centre;
    this.radius = radius;
    this.start = va;
    this.width = vb - va;
  }

  /** Drawn together at both ends. */
  ends(): void {
    this.kind = "ends";
  }

  /** @param t - 0 to 1. */
  at(t: number): void {
    if (this.kind === "even") {
      this.place = t;
      this.stretch = 1;
    } else if (this.kind === "ends") {
      this.place = Math.sin((Math.PI / 2) * t) ** 2;
      this.stretch = (Math.PI / 2) * Math.sin(Math.PI * t);
    } else {
      const angle = this.from + this.turn * t;
      this.place = (this.centre + this.radius * Math.sin(angle) - this.start) / this.width;
      this.stretch = (this.radius * Math.cos(angle) * this.turn) / this.width;
    }
  }
}
