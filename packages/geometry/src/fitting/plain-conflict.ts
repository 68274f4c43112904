/** A window that a figure was asked to lie in; mm, rad. A side that is not asked for is infinite. */
export interface AskedWindow {
  /** Unique among the asks of an order. */
  readonly name: string;
  readonly low: number;
  readonly high: number;
  /** Whether a figure on a limit does not meet it. */
  readonly isOpen?: boolean;
}

/** One limit that gives way by itself, and how far it has to for the others to hold. */
export interface LimitRelaxation {
  readonly name: string;
  readonly limit: "atLeast" | "atMost";
  readonly from: number;
  readonly to: number;
}

/** Asks that cannot hold together whatever the knife, and what would settle it: any one of them. */
export interface PlainConflict {
  readonly names: readonly string[];
  readonly relaxations: readonly LimitRelaxation[];
}

/** Computed lengths carry the last digits of a double. */
const HAIR = 1e-9;

/**
 * Windows of one figure that have nothing in common, two by two: where every two of them overlap, all do.
 *
 * @example
 * clashingWindows([{ name: "a", low: 4, high: Infinity }, { name: "b", low: 0, high: 3 }])[0]?.relaxations;
 * // a down to 3, or b up to 4
 */
export function clashingWindows(windows: readonly AskedWindow[]): readonly PlainConflict[] {
  return windows.flatMap((first, i) =>
    windows.slice(i + 1).flatMap((second): PlainConflict[] => {
      const [lower, upper] = first.high < second.high ? [first, second] : [second, first];
      const gap = upper.low - lower.high;
      const isOpen = lower.isOpen === true || upper.isOpen === true;
      if (!(gap > HAIR || (isOpen && gap > -HAIR))) return [];
      return [
        {
          names: [first.name, second.name],
          relaxations: [
            { name: upper.name, limit: "atLeast", from: upper.low, to: lower.high },
            { name: lower.name, limit: "atMost", from: lower.high, to: upper.low },
          ],
        },
      ];
    }),
  );
}

/** What was asked of lengths that add up; those that were not asked for are left out. */
export interface AskedSum {
  readonly whole?: AskedWindow;
  readonly parts: readonly (AskedWindow | undefined)[];
  /** What belongs to the whole and is not asked for: the ricasso, mm. */
  readonly rest: number;
}

/**
 * Lengths that cannot add up: their least is more than the most of the whole, or their most less than its least.
 *
 * @example
 * const part = { name: "edge", low: 200, high: Infinity };
 * clashingLengths({ whole: { name: "overall", low: 0, high: 190 }, parts: [part], rest: 10 })[0]?.relaxations;
 * // overall up to 210, or edge down to 180
 */
export function clashingLengths({ whole, parts, rest }: AskedSum): readonly PlainConflict[] {
  if (whole === undefined) return [];
  const sum = (side: (part: AskedWindow) => number, none: number): number =>
    parts.reduce((all, part) => all + (part === undefined ? none : side(part)), rest);
  const over = sum(({ low }) => Math.max(0, low), 0) - whole.high;
  const under = whole.low - sum(({ high }) => high, Number.POSITIVE_INFINITY);
  const [gap, isOver] = over > under ? [over, true] : [under, false];
  if (!(gap > HAIR)) return [];
  const own = ({ low, high }: AskedWindow): number => (isOver ? low : high);
  const asked = parts.filter(
    (part): part is AskedWindow => part !== undefined && Number.isFinite(own(part)) && own(part) > 0,
  );
  const wholeFrom = isOver ? whole.high : whole.low;
  return [
    {
      names: [whole.name, ...asked.map(({ name }) => name)],
      relaxations: [
        {
          name: whole.name,
          limit: isOver ? "atMost" : "atLeast",
          from: wholeFrom,
          to: wholeFrom + (isOver ? gap : -gap),
        } as const,
        ...asked.map((part): LimitRelaxation => {
          const to = own(part) + (isOver ? -gap : gap);
          return { name: part.name, limit: isOver ? "atLeast" : "atMost", from: own(part), to };
        }),
        // A length that would have to be nothing settles nothing.
      ].filter(({ to }) => to > 0),
    },
  ];
}

/** What was asked of a bevel at one station, where both faces are alike. */
export interface AskedBevel {
  /** Of the chord per side. */
  readonly angle?: AskedWindow;
  /** At the spine. */
  readonly thickness?: AskedWindow;
  /** Of the blade: no bevel is higher. */
  readonly height?: AskedWindow;
  /** Behind the sharpened edge: the unsharpened one is no thicker. */
  readonly behindEdge?: AskedWindow;
  /** The edge before sharpening as drawn, which counts where none is asked for. */
  readonly drawnEdge: number;
  /** The most by which the blade is thinner at the bevel line than at the spine; left out: flats are parallel. */
  readonly flankTaper?: number;
}

/**
 * A bevel that has to be steeper than it may be. From a spine T down to an edge e over a height h it stands at atan((T − e)/2h)
 * per side: the thinnest spine, the thickest edge and the highest blade that are asked for leave the least angle. Flats that taper
 * toward the bevel line take off T what they may at the most.
 *
 * @example
 * // atan((4 − 0.4)/(2 · 30)) is 3.43°, more than 2.9°
 * const asked = {
 *   angle: { name: "angle", low: 0, high: 0.05 },
 *   thickness: { name: "thickness", low: 4, high: 5 },
 *   height: { name: "height", low: 0, high: 30 },
 *   drawnEdge: 0.4,
 * };
 * clashingBevel(asked)[0]?.relaxations[1]; // thickness, at least 4, down to 3.40
 */
export function clashingBevel(asked: AskedBevel): readonly PlainConflict[] {
  const { angle, thickness, height, behindEdge, drawnEdge, flankTaper = 0 } = asked;
  if (angle === undefined || thickness === undefined || height === undefined) return [];
  const isEdgeAsked = behindEdge !== undefined && Number.isFinite(behindEdge.high);
  const edge = isEdgeAsked ? behindEdge.high : drawnEdge;
  const taken = edge + flankTaper;
  const least = Math.atan2(thickness.low - taken, 2 * height.high);
  if (!Number.isFinite(thickness.low + height.high) || !(least > angle.high + HAIR)) return [];
  const rise = 2 * Math.tan(angle.high);
  const relaxations: readonly LimitRelaxation[] = [
    { name: angle.name, limit: "atMost", from: angle.high, to: least },
    { name: thickness.name, limit: "atLeast", from: thickness.low, to: taken + rise * height.high },
    { name: height.name, limit: "atMost", from: height.high, to: (thickness.low - taken) / rise },
    ...(isEdgeAsked
      ? ([
          {
            name: behindEdge.name,
            limit: "atMost",
            from: edge,
            to: thickness.low - flankTaper - rise * height.high,
          },
        ] as const)
      : []),
  ];
  return [
    {
      names: relaxations.map(({ name }) => name),
      relaxations: relaxations.filter(({ to }) => to > 0 && Number.isFinite(to)),
    },
  ];
}
