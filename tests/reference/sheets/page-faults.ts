// What is wrong with a printed page, as the one who prints it would find it: told from the drawing alone.
import type { Bounds } from "@scantling/geometry";
import {
  checkLayout,
  type Drawing,
  type DrawingItem,
  flattenItems,
  type PaperSize,
  penOf,
  type TextItem,
  textBox,
} from "@scantling/render";
import { boxOfItems, type VisibleItem, visibleItems } from "../../../packages/render/src/box.js";

/** What most printers leave white along the edges of the paper, mm; common practice, no source. */
const WHITE = 5;
/** Rounding of sums of mm. */
const ROUNDING = 1e-9;

/** Lengths of the check bars, mm: 100, and 4 in of 25.4 mm. */
const CHECK_BARS = [
  ["check-mm-across", 100, "x"],
  ["check-in-across", 101.6, "x"],
  ["check-mm-up", 100, "y"],
  ["check-in-up", 101.6, "y"],
] as const;

/** What a sheet has to be. */
export interface WantedPages {
  /** Left out: the page has a size of its own. */
  readonly paper?: PaperSize;
  /** Whether anything on the sheet is measured or traced. */
  readonly trueSize: boolean;
}

/** Everything that is wrong with the pages of a sheet; each fault in a line. */
export function pageFaults(pages: readonly Drawing[], wanted: WantedPages): string[] {
  if (pages.length === 0) return ["no page"];
  return [
    ...lostLettering(pages),
    ...pages.flatMap((page, index) =>
      [
        ...checkLayout(page).map(
          ({ code, text, other, at }) => `${code}: "${text}" and ${other} at ${pair(at)}`,
        ),
        ...wordFaults(page),
        ...sizeFaults(page, wanted.paper),
        ...marginFaults(page),
        ...(wanted.trueSize ? barFaults(page) : []),
      ].map((fault) => `page ${index + 1} of ${pages.length}: ${fault}`),
    ),
  ];
}

const pair = ({ x, y }: { readonly x: number; readonly y: number }): string =>
  `${x.toFixed(2)}, ${y.toFixed(2)}`;

/** Points along a line of lettering at which it is looked for. */
const LOOKS = 40;

/**
 * Lettering of which a part is on no page. What two pages overlap by is narrower than most lettering, so some is cut by the
 * edge of either: it is whole when they are joined. What can stand elsewhere on its line, a figure above all, is whole on
 * one of them, before that is cut along its dashes or covered up to them, and after: parted, smaller, or the joint is
 * elsewhere.
 */
function lostLettering(pages: readonly Drawing[]): string[] {
  const seen = new Map<
    string,
    {
      readonly item: TextItem;
      readonly windows: (Bounds | undefined)[];
      readonly kept: (Bounds | undefined)[];
    }
  >();
  for (const page of pages) {
    const dashes = joinedAlong(page);
    for (const { item, clip } of visibleItems(page.items)) {
      if (item.kind !== "text" || item.text === "") continue;
      const key = JSON.stringify([item.text, item.at.x, item.at.y, item.rotation]);
      const known = seen.get(key) ?? { item, windows: [], kept: [] };
      known.windows.push(clip);
      known.kept.push(clip && keptOf(clip, dashes));
      seen.set(key, known);
    }
  }
  return [...seen.values()].flatMap(({ item, windows, kept }) => {
    if (windows.some((window) => window === undefined)) return [];
    if ((item.slide ?? []).length > 0) {
      const isIn = (boxes: readonly (Bounds | undefined)[]): boolean =>
        boxes.some((box) => box !== undefined && holds(box, textBox(item)));
      if (!isIn(windows)) return [`"${item.text}" is whole on no page, though it may be moved`];
      if (!isIn(kept)) return [`a joint goes through "${item.text}", though it may be moved`];
    }
    const { minX, minY, maxX, maxY } = textBox(item);
    const corners = Array.from({ length: LOOKS + 1 }, (_, step) => step / LOOKS).flatMap((share) =>
      [minY, (minY + maxY) / 2, maxY].map((y) => ({ x: minX + (maxX - minX) * share, y })),
    );
    const lost = corners.some(({ x, y }) =>
      windows.every(
        (window) =>
          window !== undefined && (x < window.minX || x > window.maxX || y < window.minY || y > window.maxY),
      ),
    );
    return lost ? [`a part of "${item.text}" is on no page`] : [];
  });
}

/** Where a page is cut, or covered by the next one: its dashes, upright and level. */
interface Dashes {
  readonly x: readonly number[];
  readonly y: readonly number[];
}

function joinedAlong({ items }: Drawing): Dashes {
  const joints = items.flatMap((item) => (item.kind === "group" && item.name === "joints" ? item.items : []));
  const lines = flattenItems(joints).flatMap((item) =>
    item.kind === "path" && item.role === "fold" ? item.paths : [],
  );
  const ends = lines.flatMap(({ segments }) => segments.map(({ from, to }) => [from, to] as const));
  return {
    x: ends.flatMap(([from, to]) => (from.x === to.x ? [from.x] : [])),
    y: ends.flatMap(([from, to]) => (from.y === to.y ? [from.y] : [])),
  };
}

/** What is seen of a page when it is joined: from dashes to dashes, and to its edge where nothing is joined to it. */
function keptOf({ minX, maxX, minY, maxY }: Bounds, { x, y }: Dashes): Bounds {
  const within = (low: number, high: number, dashes: readonly number[]): readonly [number, number] => {
    const middle = (low + high) / 2;
    return [
      Math.max(low, ...dashes.filter((at) => at < middle)),
      Math.min(high, ...dashes.filter((at) => at > middle)),
    ];
  };
  const across = within(minX, maxX, x);
  const up = within(minY, maxY, y);
  return { minX: across[0], maxX: across[1], minY: up[0], maxY: up[1] };
}

/** Words that were cut off for want of room, and end in dots: to be found on no sheet whose order is of usual length. */
export const shortenedWords = (pages: readonly Drawing[]): string[] =>
  pages.flatMap(({ items }, index) =>
    visibleItems(items).flatMap(({ item }) =>
      item.kind === "text" && /(?:\.\.\.|…)$/u.test(item.text)
        ? [`page ${index + 1} of ${pages.length}: "${item.text}" is cut off`]
        : [],
    ),
  );

const holds = (window: Bounds, box: Bounds): boolean =>
  box.minX >= window.minX && box.maxX <= window.maxX && box.minY >= window.minY && box.maxY <= window.maxY;

function wordFaults({ title, description }: Drawing): string[] {
  return [
    ...(title.trim() === "" ? ["no title"] : []),
    ...(description.trim().length < 10 ? [`no description: "${description}"`] : []),
  ];
}

/** The page is the paper, lying or standing. */
function sizeFaults({ width, height }: Drawing, paper: PaperSize | undefined): string[] {
  if (paper === undefined) return [];
  const same = (a: number, b: number): boolean => Math.abs(a - b) < ROUNDING;
  const lying = same(width, paper.width) && same(height, paper.height);
  const standing = same(width, paper.height) && same(height, paper.width);
  return lying || standing ? [] : [`${width} × ${height} mm on paper of ${paper.width} × ${paper.height} mm`];
}

/** Nothing is drawn where a printer leaves the paper white. */
function marginFaults({ width, height, origin, items }: Drawing): string[] {
  return visibleItems(items).flatMap((seen) => {
    const box = boxOfItems([clipped(seen)]);
    if (box === undefined) return [];
    const reach = reachOf(seen);
    const left = box.minX + origin.x - reach;
    const foot = box.minY + origin.y - reach;
    const right = width - (box.maxX + origin.x + reach);
    const head = height - (box.maxY + origin.y + reach);
    const least = Math.min(left, foot, right, head);
    return least < WHITE - ROUNDING ? [`${wordsOf(seen)} is ${least.toFixed(2)} mm from the edge`] : [];
  });
}

const clipped = ({ item, clip }: VisibleItem) =>
  clip === undefined ? item : ({ kind: "group", clip, items: [item] } as const);

/** Half of a line's width stands beyond it; lettering and areas have none, and a clip cuts the line too. */
function reachOf({ item, clip }: VisibleItem): number {
  if (clip !== undefined || item.kind === "text") return 0;
  return item.kind === "path" && item.fill !== undefined ? 0 : penOf(item.role).width / 2;
}

const wordsOf = ({ item }: VisibleItem): string =>
  item.kind === "text" ? `"${item.text}"` : (item.name ?? `a line of role ${item.role}`);

/**
 * Whether anything on a page is measured, traced or cut: what belongs to the paper (tables, title block, map of the pages,
 * joints) and the frame are not, words are not.
 */
export const holdsTrueSize = (items: readonly DrawingItem[]): boolean =>
  items.some((item) => {
    if (item.kind === "group") return item.ofPaper !== true && holdsTrueSize(item.items);
    return item.kind !== "text" && item.role !== "frame";
  });

/** A page on which anything is at true size has both check bars both ways, once each and exact. */
export function barFaults({ items }: Drawing): string[] {
  if (!holdsTrueSize(items)) return [];
  const all = flattenItems(items);
  return CHECK_BARS.flatMap(([name, length, axis]) => {
    const bars = all.filter((item) => item.kind === "path" && item.name === name);
    const [bar] = bars;
    if (bar?.kind !== "path" || bars.length > 1) return [`${bars.length} of ${name}`];
    const [segment, ...more] = bar.paths.flatMap(({ segments }) => segments);
    if (segment === undefined || more.length > 0) return [`${name} is no line`];
    const across = Math.abs(segment.to.x - segment.from.x);
    const up = Math.abs(segment.to.y - segment.from.y);
    const [along, square] = axis === "x" ? [across, up] : [up, across];
    const exact = Math.abs(along - length) < ROUNDING && square < ROUNDING;
    return exact ? [] : [`${name}: ${along} mm, ${square} mm square to it`];
  });
}
