import type { Path, Vec2 } from "@scantling/geometry";
import type { DrawingItem } from "../../drawing.js";
import { centreLine } from "../../hole-mark.js";
import type { SectionStation } from "../../models/sections-model.js";
import { breakLine } from "./break-line.js";
import { cutBelow } from "./cut-level.js";
import { hatch } from "./hatch.js";
import { boundsOf, layerItem, layersOf } from "./layers.js";
import { similarPath, similarPoint } from "./similar.js";

/** How far the centre plane's line runs past the section, mm. */
const PAST = 3;
/** A centre plane farther than this beside what is drawn is left out, mm on paper. */
const NEAR = 3;

/** A section drawn at a ratio: its centre plane at x = 0, its lowest finished point at y = 0; mm on paper. */
export interface SectionView {
  readonly items: readonly DrawingItem[];
  readonly ratio: number;
  /** From the section's own mm to those on paper. */
  readonly toPaper: (p: Vec2) => Vec2;
  /** What is seen of the finished section, on paper. */
  readonly seen: readonly Path[];
  /** Half the width that is taken to the left and to the right, and the height from lowest to highest, on paper. */
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
  /** Whether its upper part is left out. */
  readonly isCut: boolean;
}

/**
 * A section with its earlier states around it and its centre plane.
 *
 * @param view.upTo - height above its lowest point where it is broken off, mm; left out: all of it.
 * @param view.states - the earlier states that may be shown.
 */
export function sectionView(
  station: SectionStation,
  view: {
    readonly ratio: number;
    readonly upTo?: number;
    readonly hatched: boolean;
    readonly states: readonly ("ready" | "forged")[];
  },
): SectionView {
  const { ratio, upTo } = view;
  const { low } = station.marks;
  const change = { factor: ratio, dy: -low * ratio };
  const level = upTo === undefined ? undefined : upTo * ratio;
  const shown = (paths: readonly Path[]): { open: readonly Path[]; region: readonly Path[] } => {
    const enlarged = paths.map((path) => similarPath(path, change));
    return level === undefined ? { open: enlarged, region: enlarged } : cutBelow(enlarged, level);
  };
  const finished = shown(station.finished);
  const layers = layersOf(station, ratio)
    .filter(({ state }) => view.states.includes(state))
    .map((layer) => ({ layer, ...shown(layer.paths) }));
  const box = boundsOf([...finished.region, ...layers.flatMap(({ region }) => region)]);
  const foot = { x: 0, y: box.minY - PAST };
  const head = { x: 0, y: (level ?? box.maxY) + (level === undefined ? PAST : 0) };
  return {
    items: [
      ...(view.hatched ? hatch(finished.region) : []),
      ...layers.map(({ layer, open }) => layerItem(layer, open)),
      { kind: "path", role: "outline", paths: finished.open },
      ...(box.minX <= NEAR && box.maxX >= -NEAR
        ? [centreLine(foot, head, { x: 0, y: (foot.y + head.y) / 2 })]
        : []),
      ...(level === undefined ? [] : [breakLine(box.minX, box.maxX, level)]),
    ],
    ratio,
    toPaper: (p) => similarPoint(p, change),
    seen: finished.region,
    left: box.minX,
    right: box.maxX,
    bottom: foot.y,
    top: level === undefined ? head.y : level + PAST,
    isCut: level !== undefined,
  };
}
