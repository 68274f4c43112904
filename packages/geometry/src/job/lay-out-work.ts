import { placeForward, type TimeSlot, type WorkCalendar } from "./calendar.js";
import { slotsOf, type WorkBlock } from "./work-block.js";

/** Whose hands do the work: one smith's, one thing at a time, or as many as are wanted. */
export type Hands = "one" | "many";

/** Why a block does not begin earlier. */
export type BlockDriver =
  | { readonly kind: "begin" }
  /** The task before it, and what is waited for between the two. */
  | { readonly kind: "task"; readonly id: string }
  /** The hands are busy with this one. */
  | { readonly kind: "hands"; readonly id: string };

/** A block with its place in time. */
export interface PlacedBlock {
  readonly block: WorkBlock;
  readonly slot: TimeSlot;
  readonly driver: BlockDriver;
}

/** Blocks with their places, and when the last of them ends. */
export interface Layout {
  readonly placed: readonly PlacedBlock[];
  readonly finish: number;
  /** Whether no other order ends earlier. */
  readonly proven: boolean;
}

/** Orders that are looked at before the search gives up: far more than a knife has, in no time that anyone waits for. */
const MOST_VISITED = 20_000;

interface Search {
  readonly blocks: readonly WorkBlock[];
  readonly calendar: WorkCalendar;
  readonly begin: number;
  readonly hands: Hands;
  /** By block: the time from its beginning to the end of the job at the least, around the clock. */
  readonly tails: ReadonlyMap<WorkBlock, number>;
}

/**
 * Places blocks so that the last ends as early as can be. Each is put into the first gap of the hands after all that it
 * waits for; the orders in which they are put are searched, that with the longest way to the end first. Every best plan comes
 * of some order (active schedules), so that a search that comes to its end has proven its answer.
 */
export function layOutWork(
  blocks: readonly WorkBlock[],
  calendar: WorkCalendar,
  begin: number,
  hands: Hands,
): Layout {
  const search: Search = { blocks, calendar, begin, hands, tails: tailsOf(blocks) };
  const free = placeInTurn({ ...search, hands: "many" });
  if (hands === "many") return { ...free, proven: true };
  const first = placeInTurn(search);
  // Not even more hands would be done earlier.
  if (first.finish <= free.finish) return { ...first, proven: true };
  return searchOrders(search, first);
}

const idsOf = ({ tasks }: WorkBlock): string[] => tasks.map(({ id }) => id);

/** The longest way from the beginning of each block to the end, minutes of work and waiting. */
function tailsOf(blocks: readonly WorkBlock[]): Map<WorkBlock, number> {
  const tails = new Map<WorkBlock, number>();
  for (const block of [...blocks].reverse()) {
    let before = 0;
    const ways = block.tasks.map(({ id, minutes }) => {
      before += minutes;
      const next = blocks.flatMap((other) =>
        other.after.flatMap((link) => (link.id === id ? [link.waitMinutes + (tails.get(other) ?? 0)] : [])),
      );
      return before + Math.max(0, ...next);
    });
    tails.set(block, Math.max(0, ...ways));
  }
  return tails;
}

/** Always the block with the longest way to the end among those that can be placed. */
function placeInTurn(search: Search): Omit<Layout, "proven"> {
  let placed: readonly PlacedBlock[] = [];
  for (;;) {
    const [next] = placeable(search, placed);
    if (next === undefined) return { placed, finish: finishOf(search, placed) };
    placed = [...placed, place(search, placed, next)];
  }
}

const finishOf = ({ begin }: Search, placed: readonly PlacedBlock[]): number =>
  Math.max(begin, ...placed.map(({ slot }) => slot.end));

/** Blocks whose predecessors all have their places, the longest way to the end first. */
function placeable({ blocks, tails }: Search, placed: readonly PlacedBlock[]): WorkBlock[] {
  const done = new Set(placed.flatMap(({ block }) => idsOf(block)));
  return blocks
    .filter((block) => !done.has(block.tasks[0]?.id ?? "") && block.after.every(({ id }) => done.has(id)))
    .sort((a, b) => (tails.get(b) ?? 0) - (tails.get(a) ?? 0));
}

function place(search: Search, placed: readonly PlacedBlock[], block: WorkBlock): PlacedBlock {
  const { calendar, begin, hands } = search;
  let ready = begin;
  let driver: BlockDriver = { kind: "begin" };
  for (const link of block.after) {
    const end = endOf(placed, link.id) + link.waitMinutes;
    if (end > ready) {
      ready = end;
      driver = { kind: "task", id: link.id };
    } else if (driver.kind === "begin") driver = { kind: "task", id: link.id };
  }
  const busy = hands === "one" ? placed.filter(({ block: other }) => other.minutes > 0) : [];
  for (let from = ready; ; ) {
    const slot = placeForward(calendar, from, block.minutes, block.whole);
    const inTheWay = busy.filter((other) => overlaps(other.slot, slot));
    if (block.minutes === 0 || inTheWay.length === 0) return { block, slot, driver };
    const last = inTheWay.reduce((a, b) => (b.slot.end > a.slot.end ? b : a));
    from = last.slot.end;
    driver = { kind: "hands", id: last.block.tasks.at(-1)?.id ?? "" };
  }
}

const overlaps = (a: TimeSlot, b: TimeSlot): boolean => a.start < b.end && b.start < a.end;

function endOf(placed: readonly PlacedBlock[], id: string): number {
  for (const { block, slot } of placed) {
    const index = block.tasks.findIndex((task) => task.id === id);
    if (index >= 0) return slotsOf(block, slot)[index]?.end ?? slot.end;
  }
  return Number.NEGATIVE_INFINITY;
}

function searchOrders(search: Search, first: Omit<Layout, "proven">): Layout {
  let best = first;
  let visited = 0;
  const visit = (placed: readonly PlacedBlock[]): void => {
    if (++visited > MOST_VISITED) return;
    const next = placeable(search, placed);
    if (next.length === 0) {
      const finish = finishOf(search, placed);
      if (finish < best.finish) best = { placed, finish };
      return;
    }
    for (const block of next) {
      const more = [...placed, place(search, placed, block)];
      if (leastFinish(search, more) < best.finish) visit(more);
    }
  };
  visit([]);
  return { ...best, proven: visited <= MOST_VISITED };
}

/** What the job takes at the least, once these have their places: work and waits around the clock. */
function leastFinish(search: Search, placed: readonly PlacedBlock[]): number {
  const ways = placeable(search, placed).map((block) => {
    const ready = block.after.map(({ id, waitMinutes }) => endOf(placed, id) + waitMinutes);
    return Math.max(search.begin, ...ready) + (search.tails.get(block) ?? 0);
  });
  return Math.max(finishOf(search, placed), ...ways);
}
