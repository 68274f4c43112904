/**
 * Adaptive quadrature of a vector-valued function over pieces that are smooth inside, by nested rules of 3, 7 and 15
 * points: each reuses every value of the one before it, and a piece that is good enough with 7 is left at 7.
 *
 * Source of nodes and weights: T. N. L. Patterson, "The optimum addition of points to quadrature formulae", Math. Comp. 22
 * (1968), tables (from memory; the tests hold them to their degree of exactness: 11 with 7 points, 23 with 15). The error
 * estimate follows R. Piessens et al., QUADPACK (Springer 1983), where nothing better is known.
 */

/** Positive nodes in the order in which they are added: 2 of Gauss, 2 more for 7 points, 4 more for 15; 0 comes first. */
const POSITIVE_NODES = [
  0.7745966692414834, 0.9604912687080202, 0.4342437493468025, 0.993831963212755, 0.888459232872257,
  0.6211029467372264, 0.2233866864289669,
] as const;
/** Weight of 0, then of each positive node, for 3, 7 and 15 points. */
const WEIGHTS_3 = [0.8888888888888888, 0.5555555555555556] as const;
const WEIGHTS_7 = [0.4509165386584741, 0.2684880898683334, 0.1046562260264673, 0.4013974147759622] as const;
const WEIGHTS_15 = [
  0.2255104997982067, 0.1344152552437842, 0.0516032829970798, 0.200628529376989, 0.0170017196299403,
  0.0929271953151246, 0.1715119091363914, 0.2191568584015875,
] as const;

const NODES = new Float64Array(15);
POSITIVE_NODES.forEach((node, k) => {
  NODES[2 * k + 1] = -node;
  NODES[2 * k + 2] = node;
});

/** Weights in the order of the nodes, of a rule given by the weight of 0 and of each positive node. */
function inOrder(weights: readonly number[]): Float64Array {
  const all = new Float64Array(15);
  all[0] = weights[0] as number;
  for (let k = 1; k < weights.length; k++) all[2 * k - 1] = all[2 * k] = weights[k] as number;
  return all;
}

const W1 = inOrder([2]);
const W3 = inOrder(WEIGHTS_3);
const W7 = inOrder(WEIGHTS_7);
const W15 = inOrder(WEIGHTS_15);

/** A rule, the one that it is held against, and what the difference is taken to mean. */
interface Level {
  readonly count: number;
  readonly weights: Float64Array;
  readonly before: Float64Array;
  readonly belief: Belief;
}

/**
 * Fewer points are enough where a piece takes no more than so many times its share of the error allowed: most take far less,
 * and where they do not, the worst are halved in the end.
 */
const MOST_SHARES = 4;

export interface Piece {
  readonly from: number;
  readonly to: number;
}

export interface AdaptiveOptions {
  /** Absolute error aimed at, for each component. */
  readonly tolerance: Float64Array;
  /** Most pieces that may be looked at; where it is reached the error estimate says what is missing. */
  readonly maxPieces?: number;
  /**
   * How far the pieces are to be trusted. `wary`: a kink may hide near the end of one, so none is left at seven points.
   * `smooth`: sure to have none inside, so that the speed at which the rules converge is believed from the first. Left out: in between.
   */
  readonly trust?: "wary" | "smooth";
}

export interface AdaptiveResult {
  readonly value: Float64Array;
  /** Estimated absolute error of each component. */
  readonly error: Float64Array;
  readonly evaluations: number;
}

/** One piece with its integrals, kept until the whole is good enough. */
interface Looked {
  readonly from: number;
  readonly to: number;
  readonly depth: number;
  /** Where its integrals stand in the store, its errors after them. */
  readonly place: number;
  /** How far this piece alone misses the aim, as a multiple of it; 0 when dividing it can gain nothing. */
  readonly miss: number;
}

/** Integrals and errors of all pieces in one array: small arrays are dear to make. */
class Store {
  values: Float64Array;
  private used = 0;
  private readonly width: number;

  constructor(width: number, count: number) {
    this.width = width;
    this.values = new Float64Array(width * count);
  }

  /** @returns the place of a piece more. */
  next(): number {
    const place = this.used;
    this.used += this.width;
    if (this.used > this.values.length) {
      const longer = new Float64Array(2 * this.used);
      longer.set(this.values);
      this.values = longer;
    }
    return place;
  }
}

/**
 * Integrates `f` over all pieces; the piece with the largest error is halved until the sum is good enough. `f(x, out)`
 * writes its components into `out`.
 *
 * @param size - number of components.
 * @returns sums over all pieces with their estimated errors.
 */
export function integrateAdaptive(
  f: (x: number, out: Float64Array) => void,
  size: number,
  pieces: readonly Piece[],
  options: AdaptiveOptions,
): AdaptiveResult {
  const { tolerance } = options;
  const maxPieces = options.maxPieces ?? 400;
  const out = new Float64Array(size);
  const levels = LEVELS[options.trust ?? "some"];
  const least = options.trust === "wary" ? Number.NEGATIVE_INFINITY : MOST_SHARES;
  const judge = new Judge(size, tolerance);
  const store = new Store(2 * size, pieces.length + 4);
  let evaluations = 0;
  const sample = (from: number, to: number, first: number, count: number): void => {
    const half = (to - from) / 2;
    const centre = (to + from) / 2;
    const { samples } = judge;
    for (let i = first; i < count; i++) {
      f(centre + half * (NODES[i] as number), out);
      const base = i * size;
      for (let c = 0; c < size; c++) samples[base + c] = out[c] as number;
    }
    evaluations += count - first;
  };
  const look = (from: number, to: number, depth: number, whole: number): Looked => {
    const place = store.next();
    const share = (to - from) / whole;
    let done = 0;
    let miss = 0;
    for (const level of levels) {
      sample(from, to, done, level.count);
      done = level.count;
      miss = judge.miss(level, to - from, store.values, place);
      if (miss <= least * share) break;
    }
    return { from, to, depth, place, miss: depth >= 48 ? 0 : miss };
  };
  const looked: Looked[] = [];
  let whole = 0;
  for (const piece of pieces) whole += Math.max(0, piece.to - piece.from);
  for (const piece of pieces) {
    if (piece.to > piece.from) looked.push(look(piece.from, piece.to, 0, whole));
  }
  const error = new Float64Array(size);
  for (const piece of looked) add(error, store.values, piece.place + size, 1);
  while (looked.length < maxPieces && exceeds(error, tolerance)) {
    let worst = 0;
    for (let i = 1; i < looked.length; i++) {
      if ((looked[i] as Looked).miss > (looked[worst] as Looked).miss) worst = i;
    }
    const piece = looked[worst];
    if (piece === undefined || piece.miss === 0) break;
    const centre = (piece.from + piece.to) / 2;
    const left = look(piece.from, centre, piece.depth + 1, whole);
    const right = look(centre, piece.to, piece.depth + 1, whole);
    add(error, store.values, piece.place + size, -1);
    add(error, store.values, left.place + size, 1);
    add(error, store.values, right.place + size, 1);
    looked[worst] = left;
    looked.push(right);
  }
  // Summed once more from the start: the running sum has lost digits where a large error was taken away.
  const value = new Float64Array(size);
  error.fill(0);
  for (const { place } of looked) {
    add(value, store.values, place, 1);
    add(error, store.values, place + size, 1);
  }
  return { value, error, evaluations };
}

function add(sum: Float64Array, values: Float64Array, place: number, sign: 1 | -1): void {
  for (let c = 0; c < sum.length; c++) sum[c] = (sum[c] as number) + sign * (values[place + c] as number);
}

function exceeds(error: Float64Array, tolerance: Float64Array): boolean {
  for (let c = 0; c < error.length; c++) if ((error[c] as number) > (tolerance[c] as number)) return true;
  return false;
}

/**
 * Error that is left in a rule, relative to how much the function varies: from its difference to the one before it, and how
 * much smaller that is than the difference before.
 */
type Belief = (share: number, gap: number, gapBefore: number) => number;

/** With a kink about, convergence is slow. Roots instead of powers: they take a tenth of the time. */
const believeNothing: Belief = (share) => 200 * share * Math.sqrt(Math.sqrt(200 * share));

/**
 * On a smooth function the error falls with the square of the difference; that is believed, with a margin of 400, where the
 * difference before was at least 500 times larger (a kink in the third derivative gives a factor of 20), and else the
 * cautious formula of QUADPACK is taken.
 */
const believeSpeed: Belief = (share, gap, gapBefore) =>
  gap < gapBefore / 500 ? 400 * share * share : 200 * share * Math.sqrt(200 * share);

/** Seven points on what is sure to be smooth: rules of degree 1, 5 and 11, so that the second difference is the cube of the first. */
const believeSmooth: Belief = (share, gap, gapBefore) =>
  gap < gapBefore / 100 ? 400 * share * share : believeNothing(share, gap, gapBefore);

/** Three points, after the middle alone: the error is about the cube of the difference, and its square is no less. */
const believeThree: Belief = (share) => share * share * (1 + 16 * share);

const SEVEN: Level = { count: 7, weights: W7, before: W3, belief: believeNothing };
const LEVELS: Readonly<Record<"wary" | "some" | "smooth", readonly Level[]>> = {
  wary: [SEVEN, { count: 15, weights: W15, before: W7, belief: believeNothing }],
  some: [SEVEN, { count: 15, weights: W15, before: W7, belief: believeSpeed }],
  smooth: [
    { count: 3, weights: W3, before: W1, belief: believeThree },
    { count: 7, weights: W7, before: W3, belief: believeSmooth },
    { count: 15, weights: W15, before: W7, belief: believeSpeed },
  ],
};

/** The samples of one piece, and what they tell. */
class Judge {
  readonly samples: Float64Array;
  private readonly gaps: Float64Array;
  private readonly size: number;
  private readonly tolerance: Float64Array;

  constructor(size: number, tolerance: Float64Array) {
    this.samples = new Float64Array(15 * size);
    this.gaps = new Float64Array(size);
    this.size = size;
    this.tolerance = tolerance;
  }

  /**
   * Applies a rule and the one before it to every component, over a piece so wide; puts integrals and errors into `values`
   * from `place` on.
   *
   * @returns by how much the worst misses its tolerance, 0 where only rounding is left.
   */
  miss(
    { count, weights, before, belief }: Level,
    width: number,
    values: Float64Array,
    place: number,
  ): number {
    const { samples, gaps, size, tolerance } = this;
    let miss = 0;
    const half = width / 2;
    for (let c = 0; c < size; c++) {
      let fine = 0;
      let rough = 0;
      for (let i = 0, k = c; i < count; i++, k += size) {
        const s = samples[k] as number;
        fine += (weights[i] as number) * s;
        rough += (before[i] as number) * s;
      }
      const mean = fine / 2;
      let variation = 0;
      for (let i = 0, k = c; i < count; i++, k += size) {
        variation += (weights[i] as number) * Math.abs((samples[k] as number) - mean);
      }
      fine *= half;
      variation *= Math.abs(half);
      const gap = Math.abs(fine - rough * half);
      const share = variation === 0 || gap === 0 ? 0 : belief(gap / variation, gap, gaps[c] as number);
      const e = share === 0 ? gap : variation * Math.min(1, share);
      gaps[c] = gap;
      // Rounding alone leaves this much; asking for less would divide for ever.
      const floor = 8e-15 * (Math.abs(fine) + variation);
      values[place + c] = fine;
      values[place + size + c] = Math.max(e, floor);
      if (e > floor) miss = Math.max(miss, e / (tolerance[c] as number));
    }
    return miss;
  }
}
