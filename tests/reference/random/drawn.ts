// Outlines by runs that no family has: corners, round ends, bends both ways, edges past the vertical.
import type { RunsOutlineSpec } from "@scantling/geometry";
import type { Chance } from "./chance.js";

export interface DrawnBlade {
  readonly name: string;
  readonly edge: string;
  /** Left out: the blade ends in a point. */
  readonly front?: string;
  /** From the end of edge or front to where the level spine begins. */
  readonly spine: string;
  readonly length: number;
  readonly height: number;
}

const n = (value: number): string => String(Number(value.toFixed(6)));
const line = (x: number, y: number): string => `L${n(x)} ${n(y)}`;
const cubic = (...c: readonly number[]): string => `C${c.map(n).join(" ")}`;
/** Arc of radius r to a point; sweep 1 turns left. */
const arc = (r: number, x: number, y: number, large: 0 | 1 = 0, left: 0 | 1 = 1): string =>
  `A${n(r)} ${n(r)} 0 ${large} ${left} ${n(x)} ${n(y)}`;

type Draw = (c: Chance, L: number, H: number) => Omit<DrawnBlade, "length" | "height" | "name">;

export const SHAPES: Readonly<Record<string, Draw>> = {
  "corner toward the tip": (c, L, H) => ({
    edge: `M0 0${line(c.between(0.6, 0.85) * L, 0)}${line(L, H * c.between(0.6, 1))}`,
    spine: line(c.between(0.3, 0.55) * L, H),
  }),
  "two corners": (c, L, H) => ({
    edge: `M0 0${line(c.between(0.35, 0.5) * L, c.between(-0.02, 0.02) * H)}${line(
      c.between(0.65, 0.8) * L,
      c.between(0.06, 0.2) * H,
    )}${line(L, H * c.between(0.5, 0.9))}`,
    spine: line(c.between(0.3, 0.5) * L, H),
  }),
  "edge turning away": (c, L, H) => ({
    edge: `M0 0${line(c.between(0.3, 0.5) * L, c.between(0.04, 0.15) * H)}${line(c.between(0.75, 0.85) * L, 0)}${cubic(
      0.9 * L,
      0,
      0.96 * L,
      0.4 * H,
      L,
      0.8 * H,
    )}`,
    spine: cubic(0.9 * L, H, 0.8 * L, H, 0.6 * L, H),
  }),
  "round nose by an arc": (c, L, H) => {
    const r = c.between(0.25, 0.65) * H;
    return {
      edge: `M0 0${line(L - r, 0)}${arc(r, L, r)}`,
      spine: cubic(L, r + 0.4 * (H - r), L - 0.3 * r, H, L - 1.2 * r, H),
    };
  },
  "round nose by a cubic": (c, L, H) => {
    const r = c.between(0.3, 0.7) * H;
    const k = 0.5523;
    return {
      edge: `M0 0${line(L - 1.3 * r, 0)}${cubic(L - 1.3 * r * (1 - k), 0, L, r * (1 - k), L, r)}`,
      spine: cubic(L, r + 0.5 * (H - r), L - 0.6 * r, H, L - 1.6 * r, H),
    };
  },
  "edge past the vertical": (c, L, H) => {
    const r = c.between(0.35, 0.55) * H;
    const turn = c.between(1.7, 2.6);
    const x = L - r + r * Math.sin(turn);
    const y = r - r * Math.cos(turn);
    return {
      edge: `M0 0${line(L - r, 0)}${arc(r, x, y)}`,
      spine: cubic(x - 0.3 * r, Math.max(y + 0.1 * H, 0.98 * H), x - r, H, x - 2 * r, H),
    };
  },
  "edge past the vertical by a cubic": (c, L, H) => {
    const lean = c.between(0.02, 0.12) * H;
    const t = c.between(0.5, 0.8) * H;
    return {
      edge: `M0 0${line(0.7 * L, 0)}${cubic(0.9 * L, 0, L + 2 * lean, 0.3 * t, L - lean, t)}`,
      spine: cubic(L - 3 * lean, H, 0.75 * L, H, 0.6 * L, H),
    };
  },
  "recurve in one cubic": (c, L, H) => ({
    edge: `M0 0${cubic(0.32 * L, c.between(0.05, 0.5) * H, 0.68 * L, -c.between(0.1, 0.6) * H, L, c.between(0.5, 0.85) * H)}`,
    spine: cubic(0.85 * L, H, 0.65 * L, H, 0.45 * L, H),
  }),
  "recurve of arcs": (c, L, H) => {
    // Two arcs with a common tangent that is level at the heel: away from the steel and back.
    const x1 = c.between(0.35, 0.5) * L;
    const y1 = c.between(0.05, 0.18) * H;
    const lean = 2 * Math.atan2(y1, x1);
    const x2 = c.between(0.75, 0.85) * L;
    const w = x2 - x1;
    const r1 = Math.hypot(x1, y1) / (2 * Math.sin(lean / 2));
    // The second one falls back: it starts with the lean of the first and turns right.
    const turn = -c.between(1.6, 2.2) * lean;
    const chordLean = lean + turn / 2;
    const r2 = w / Math.cos(chordLean) / (2 * Math.sin(Math.abs(turn) / 2));
    const y2 = y1 + w * Math.tan(chordLean);
    return {
      edge: `M0 0${arc(r1, x1, y1, 0, 1)}${arc(r2, x2, y2, 0, 0)}${cubic(
        x2 + 0.4 * (L - x2),
        y2 + 0.4 * (L - x2) * Math.tan(lean + turn),
        L - 0.2 * (L - x2),
        0.4 * H,
        L,
        0.75 * H,
      )}`,
      spine: cubic(0.9 * L, H, 0.75 * L, H, 0.55 * L, H),
    };
  },
  "belly from the heel on": (c, L, H) => {
    const rise = c.between(0.3, 0.95) * H;
    const r = (L * L + rise * rise) / (2 * rise);
    return { edge: `M0 0${arc(r, L, rise)}`, spine: line(c.between(0.5, 0.9) * L, H) };
  },
  "front leaning forward": (c, L, H) => ({
    edge: `M0 0${line(0.8 * L, 0)}${line(L, c.between(0.3, 0.6) * H)}`,
    front: line(L * c.between(1.01, 1.1), H),
    spine: line(0.5 * L, H),
  }),
  "front leaning back": (c, L, H) => ({
    edge: `M0 0${line(0.75 * L, 0)}${cubic(0.85 * L, 0, 0.95 * L, 0.05 * H, L, c.between(0.15, 0.4) * H)}`,
    front: line(L * c.between(0.85, 0.98), H),
    spine: line(0.5 * L, H),
  }),
  "three cubics": (c, L, H) => {
    const y1 = c.between(0, 0.05) * H;
    const m1 = c.between(0, 0.04);
    const y2 = y1 + c.between(0.1, 0.25) * H;
    const m2 = Math.max(m1, (2.2 * (y2 - y1)) / (0.35 * L));
    return {
      edge: `M0 0${cubic(0.15 * L, 0, 0.3 * L, y1 - 0.12 * L * m1, 0.42 * L, y1)}${cubic(
        0.52 * L,
        y1 + 0.1 * L * m1,
        0.68 * L,
        y2 - 0.09 * L * m2,
        0.77 * L,
        y2,
      )}${cubic(0.85 * L, y2 + 0.08 * L * m2, 0.96 * L, 0.62 * H, L, c.between(0.72, 0.9) * H)}`,
      spine: cubic(0.9 * L, H, 0.7 * L, H, 0.5 * L, H),
    };
  },
  "dipping spine": (c, L, H) => ({
    edge: `M0 0${line(0.5 * L, 0)}${cubic(0.7 * L, 0, 0.9 * L, 0.25 * H, L, 0.72 * H)}`,
    spine: `${cubic(0.9 * L, c.between(0.62, 0.75) * H, 0.8 * L, 0.8 * H, 0.7 * L, H)}`,
  }),
};

export function drawnBlade(c: Chance): DrawnBlade {
  const names = Object.keys(SHAPES) as [string, ...string[]];
  const name = c.pick(...names);
  const length = c.between(70, 260);
  const height = c.between(0.14, 0.34) * length;
  const draw = SHAPES[name];
  if (draw === undefined) throw new Error(`no shape ${name}`);
  return { name, length, height, ...draw(c, length, height) };
}

/** The blade with a tang behind it. */
export function drawnOutline(c: Chance, blade: DrawnBlade): RunsOutlineSpec {
  const { height: H, edge, front, spine } = blade;
  const ricasso = c.in(0.5) ? 0 : c.between(3, 20);
  const tang = c.between(70, 130);
  const x = -ricasso;
  const butt = x - tang;
  const low = c.between(0.05, 0.4) * H;
  const heelFace = `${line(0, low)}${line(0, 0)}`;
  const shared = {
    edge,
    ...(front === undefined ? {} : { front }),
    spine: `${spine}${line(x, H)}`,
    heelFace,
  };
  if (c.in(0.35)) {
    const r = 0.45 * (H - low);
    return {
      runs: {
        ...shared,
        tangTop: `${line(x - 0.6 * tang, H - 0.05 * H)}${line(butt, H - 0.1 * H)}`,
        butt: c.in(0.5) ? line(butt, low) : arc(r, butt, H - 0.1 * H - 1.7 * r, 0, 1),
        tangBottom: line(x, low),
      },
    };
  }
  if (c.in(0.5)) {
    // Hidden: shoulders above and below.
    return {
      runs: {
        ...shared,
        tangTop: `${line(x, 0.75 * H)}${line(butt, 0.65 * H)}`,
        butt: line(butt, 0.45 * H),
        tangBottom: `${line(x, 0.3 * H)}${line(x, low)}`,
      },
    };
  }
  return {
    runs: {
      ...shared,
      tangTop: cubic(x - 0.3 * tang, H, x - 0.6 * tang, 0.86 * H, butt, 0.92 * H),
      butt: line(butt, 0.2 * H),
      tangBottom: cubic(x - 0.7 * tang, 0.1 * H, x - 0.3 * tang, low + 0.1 * H, x, low),
    },
  };
}
