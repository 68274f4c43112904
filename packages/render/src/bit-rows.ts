/** Bits in a word. */
const WORD = 32;

/**
 * Rows of cells that are free or taken, a bit each: 32 cells of a row are looked at in one step. What lies beyond the last
 * column of a row counts as taken.
 */
export class BitRows {
  readonly columns: number;
  readonly rows: number;
  private readonly words: Uint32Array;
  /** Words of a row; the last of them ends in taken cells. */
  private readonly stride: number;

  constructor(columns: number, rows: number) {
    this.columns = columns;
    this.rows = rows;
    this.stride = Math.floor(columns / WORD) + 1;
    this.words = new Uint32Array(rows * this.stride);
    const beyond = -1 << (columns % WORD);
    for (let last = this.stride - 1; last < this.words.length; last += this.stride) this.words[last] = beyond;
  }

  copy(): BitRows {
    const rows = new BitRows(this.columns, this.rows);
    rows.words.set(this.words);
    return rows;
  }

  /** Takes the cells of these columns and rows, the ends left out. */
  take(fromX: number, toX: number, fromY: number, toY: number): void {
    const { words, stride } = this;
    for (let word = fromX >> 5; word <= (toX - 1) >> 5; word++) {
      const mask = maskOf(word, fromX, toX);
      for (let y = fromY; y < toY; y++) words[y * stride + word] = (words[y * stride + word] ?? 0) | mask;
    }
  }

  /** Whether all cells of these columns and rows are free. */
  areFree(fromX: number, toX: number, fromY: number, toY: number): boolean {
    const { words, stride } = this;
    for (let word = fromX >> 5; word <= (toX - 1) >> 5; word++) {
      const mask = maskOf(word, fromX, toX);
      for (let y = fromY; y < toY; y++) if (((words[y * stride + word] ?? 0) & mask) !== 0) return false;
    }
    return true;
  }

  /** How many cells are free. */
  countFree(): number {
    let free = 0;
    for (let word of this.words) {
      // Each step strikes the last free cell off.
      for (word = ~word; word !== 0; word &= word - 1) free++;
    }
    return free;
  }

  /** The runs of so many rows one above the other, see {@link RowRuns}. */
  runsOf(height: number): RowRuns {
    return new RowRuns(this.words, this.stride, this.columns, height);
  }
}

/**
 * Runs of rows one above the other, each as one row with the cells that are taken in any of them; the run that begins with
 * row y is row y. In blocks of that height a run is the end of one block and the beginning of the next: both are made for
 * a block when they are first asked for, a word a row.
 */
export class RowRuns {
  readonly columns: number;
  /** How many there are. */
  readonly count: number;
  private readonly words: Uint32Array;
  private readonly stride: number;
  private readonly height: number;
  /** For each row what is taken from it to the end of its block, and from the beginning of its block to it. */
  private readonly toEnd: Uint32Array;
  private readonly fromStart: Uint32Array;
  private readonly made: boolean[] = [];

  constructor(words: Uint32Array, stride: number, columns: number, height: number) {
    this.words = words;
    this.stride = stride;
    this.columns = columns;
    this.height = height;
    this.count = words.length / stride - height + 1;
    this.toEnd = new Uint32Array(words.length);
    this.fromStart = new Uint32Array(words.length);
  }

  /** The first column, `last` at most, from which so many cells of a run are free; undefined where there is none. */
  firstFree(run: number, width: number, last: number): number | undefined {
    this.makeBlock(Math.floor(run / this.height));
    this.makeBlock(Math.floor((run + this.height - 1) / this.height));
    let x = this.next(run, 0, TURNED);
    while (x <= last) {
      const end = this.next(run, x, AS_IT_IS);
      if (end - x >= width) return x;
      x = this.next(run, end, TURNED);
    }
    return undefined;
  }

  private makeBlock(block: number): void {
    if (this.made[block] === true) return;
    this.made[block] = true;
    const { words, stride, height, toEnd, fromStart } = this;
    const from = block * height * stride;
    const to = Math.min(from + height * stride, words.length);
    for (let at = from; at < to; at++)
      fromStart[at] = (words[at] ?? 0) | (at < from + stride ? 0 : (fromStart[at - stride] ?? 0));
    for (let at = to - 1; at >= from; at--)
      toEnd[at] = (words[at] ?? 0) | (at >= to - stride ? 0 : (toEnd[at + stride] ?? 0));
  }

  /** The next taken cell of a run from x on, or with the run turned over the next free one; past the end where there is none. */
  private next(run: number, x: number, turn: typeof TURNED | typeof AS_IT_IS): number {
    let word = x >> 5;
    let bits = (this.wordOf(run, word) ^ turn) & (-1 << (x % WORD));
    while (bits === 0) {
      word++;
      if (word >= this.stride) return word * WORD;
      bits = this.wordOf(run, word) ^ turn;
    }
    return word * WORD + WORD - 1 - Math.clz32(bits & -bits);
  }

  private wordOf(run: number, word: number): number {
    const last = run + this.height - 1;
    return (this.toEnd[run * this.stride + word] ?? 0) | (this.fromStart[last * this.stride + word] ?? 0);
  }
}

/** What a word is compared with: all ones turn it over. */
const TURNED = -1;
const AS_IT_IS = 0;

/** The bits of a word that stand for columns from one to another, the end left out. */
function maskOf(word: number, fromX: number, toX: number): number {
  const from = Math.max(0, fromX - word * WORD);
  const to = Math.min(WORD, toX - word * WORD);
  return (to === WORD ? -1 : (1 << to) - 1) & (-1 << from);
}
