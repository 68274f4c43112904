/**
 * Adaptive Gauss–Kronrod quadrature of a vector-valued function over pieces that are smooth inside.
 *
 * Source of nodes and weights: R. Piessens et al., QUADPACK (Springer 1983), rule qk15 (7 and 15 points); the
 * error estimate follows the same book: (200·|K − G| / variation)^1.5 · variation.
 */

const KRONROD_NODES = [
  0.9914553711208126, 0.9491079123427585, 0.8648644233597691, 0.7415311855993945, 0.5860872354676911,
  0.4058451513773972, 0.20778495500789848, 0,
] as const;
const KRONROD_WEIGHTS = [
  0.022935322010529224, 0.06309209262997856, 0.10479001032225019, 0.14065325971552592, 0.1690047266392679,
  0.19035057806478542, 0.20443294007529889, 0.20948214108472782,
] as const;
const GAUSS_WEIGHTS = [
  0.1294849661688697, 0.27970539148927664, 0.3818300505051189, 0.4179591836734694,
] as const;

const NODES = new Float64Array(15);
const KRONROD = new Float64Array(15);
const GAUSS = new Float64Array(15);
for (let i = 0; i < 8; i++) {
  const node = KRONROD_NODES[i] as number;
  NODES[i] = -node;
  NODES[14 - i] = node;
  KRONROD[i] = KRONROD[14 - i] = KRONROD_WEIGHTS[i] as number;
  if (i % 2 === 1) GAUSS[i] = GAUSS[14 - i] = GAUSS_WEIGHTS[(i - 1) / 2] as number;
}

export interface Piece {
  readonly from: number;
  readonly to: number;
}

export interface AdaptiveOptions {
  /** Absolute error aimed at, for each component. */
  readonly tolerance: Float64Array;
  /** Most pieces that may be looked at; where it is reached the error estimate says what is missing. */
  readonly maxPieces?: number;
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
  readonly value: Float64Array;
  readonly error: Float64Array;
  /** How far this piece alone misses the aim, as a multiple of it; 0 when dividing it can gain nothing. */
  readonly miss: number;
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
  const samples = new Float64Array(15 * size);
  const out = new Float64Array(size);
  const look = (from: number, to: number, depth: number): Looked => {
    const half = (to - from) / 2;
    const centre = (to + from) / 2;
    for (let i = 0; i < 15; i++) {
      f(centre + half * (NODES[i] as number), out);
      samples.set(out, i * size);
    }
    const value = new Float64Array(size);
    const error = new Float64Array(size);
    let miss = 0;
    for (let c = 0; c < size; c++)
      miss = Math.max(miss, rule(samples, size, c, half, value, error, tolerance));
    return { from, to, depth, value, error, miss: depth >= 48 ? 0 : miss };
  };
  const looked: Looked[] = [];
  for (const piece of pieces) if (piece.to > piece.from) looked.push(look(piece.from, piece.to, 0));
  let evaluations = 15 * looked.length;
  const error = new Float64Array(size);
  for (const piece of looked) add(error, piece.error, 1);
  while (looked.length < maxPieces && exceeds(error, tolerance)) {
    let worst = 0;
    for (let i = 1; i < looked.length; i++) {
      if ((looked[i] as Looked).miss > (looked[worst] as Looked).miss) worst = i;
    }
    const piece = looked[worst];
    if (piece === undefined || piece.miss === 0) break;
    const centre = (piece.from + piece.to) / 2;
    const left = look(piece.from, centre, piece.depth + 1);
    const right = look(centre, piece.to, piece.depth + 1);
    evaluations += 30;
    add(error, piece.error, -1);
    add(error, left.error, 1);
    add(error, right.error, 1);
    looked[worst] = left;
    looked.push(right);
  }
  // Summed once more from the start: the running sum has lost digits where a large error was taken away.
  const value = new Float64Array(size);
  error.fill(0);
  for (const piece of looked) {
    add(value, piece.value, 1);
    add(error, piece.error, 1);
  }
  return { value, error, evaluations };
}

function add(sum: Float64Array, part: Float64Array, sign: 1 | -1): void {
  for (let c = 0; c < sum.length; c++) sum[c] = (sum[c] as number) + sign * (part[c] as number);
}

function exceeds(error: Float64Array, tolerance: Float64Array): boolean {
  for (let c = 0; c < error.length; c++) if ((error[c] as number) > (tolerance[c] as number)) return true;
  return false;
}

/** Applies both rules to component c; returns by how much it misses the tolerance, 0 where only rounding is left. */
function rule(
  samples: Float64Array,
  size: number,
  c: number,
  half: number,
  value: Float64Array,
  error: Float64Array,
  tolerance: Float64Array,
): number {
  let kronrod = 0;
  let gauss = 0;
  for (let i = 0; i < 15; i++) {
    const s = samples[i * size + c] as number;
    kronrod += (KRONROD[i] as number) * s;
    gauss += (GAUSS[i] as number) * s;
  }
  const mean = kronrod / 2;
  let variation = 0;
  for (let i = 0; i < 15; i++) {
    variation += (KRONROD[i] as number) * Math.abs((samples[i * size + c] as number) - mean);
  }
  kronrod *= half;
  variation *= Math.abs(half);
  let e = Math.abs(kronrod - gauss * half);
  if (variation > 0 && e > 0) e = variation * Math.min(1, ((200 * e) / variation) ** 1.5);
  // Rounding alone leaves this much; asking for less would divide for ever.
  const floor = 8e-15 * (Math.abs(kronrod) + variation);
  value[c] = kronrod;
  error[c] = Math.max(e, floor);
  return e > floor ? e / (tolerance[c] as number) : 0;
}
