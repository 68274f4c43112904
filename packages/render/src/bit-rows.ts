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
  private readonly blocks: (Block | undefined)[] = [];
  /** The run that is looked at. */
  private readonly row: Uint32Array;

  constructor(words: Uint32Array, stride: number, columns: number, height: number) {
    this.words = words;
    this.stride = stride;
    this.columns = columns;
    this.height = height;
    this.count = words.length / stride - height + 1;
    this.row = new Uint32Array(stride);
  }

  /** The first column, `last` at most, from which so many cells of a run are free; undefined where there is none. */
  firstFree(run: number, width: number, last: number): number | undefined {
    const row = this.rowOf(run);
    let x = nextBit(row, 0, TURNED);
    while (x <= last) {
      const end = nextBit(row, x, AS_IT_IS);
      if (end - x >= width) return x;
      x = nextBit(row, end, TURNED);
    }
    return undefined;
  }

  /** What is taken in a run. */
  private rowOf(run: number): Uint32Array {
    const { height, stride, row } = this;
    const first = this.block(Math.floor(run / height)).toEnd;
    const last = run + height - 1;
    const second = this.block(Math.floor(last / height)).fromStart;
    const from = (run % height) * stride;
    const to = (last % height) * stride;
    for (let word = 0; word < stride; word++)
      row[word] = (first[from + word] ?? 0) | (second[to + word] ?? 0);
    return row;
  }

  private block(index: number): Block {
    const before = this.blocks[index];
    if (before !== undefined) return before;
    const { words, stride, height } = this;
    const from = index * height * stride;
    const fromStart = words.slice(from, from + height * stride);
    const toEnd = fromStart.slice();
    for (let at = stride; at < fromStart.length; at++)
      fromStart[at] = (fromStart[at] ?? 0) | (fromStart[at - stride] ?? 0);
    for (let at = toEnd.length - stride - 1; at >= 0; at--)
      toEnd[at] = (toEnd[at] ?? 0) | (toEnd[at + stride] ?? 0);
    const made = { toEnd, fromStart };
    this.blocks[index] = made;
    return made;
  }
}

/** For each row of a block what is taken from it to the end of the block, and from the beginning of the block to it. */
interface Block {
  readonly toEnd: Uint32Array;
  readonly fromStart: Uint32Array;
}

/** The next taken cell of a row from x on, or with the row turned over the next free one; past the end where there is none. */
function nextBit(row: Uint32Array, x: number, turn: typeof TURNED | typeof AS_IT_IS): number {
  let word = x >> 5;
  let bits = ((row[word] ?? 0) ^ turn) & (-1 << (x % WORD));
  while (bits === 0) {
    word++;
    if (word >= row.length) return word * WORD;
    bits = (row[word] ?? 0) ^ turn;
  }
  return word * WORD + WORD - 1 - Math.clz32(bits & -bits);
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
