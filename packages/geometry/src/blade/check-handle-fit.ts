import { type Finding, type Issue, length } from "../errors/issue.js";
import { BLADE_LIMITS } from "../limits/blade-limits.js";
import type { Limit } from "../limits/limit.js";
import { type HandleLayout, handleLayout, type PlacedBlock } from "./handle-layout.js";
import { mortiseOf } from "./handle-mortise.js";
import { tangStation } from "./knife-laws.js";
import type { Outline } from "./outline.js";
import type { SlabLaw } from "./slab-law.js";
import type { KnifeSpec, LawSpec } from "./spec.js";

/** Rounding of stated places, mm. */
const ROUNDING = 1e-9;

/**
 * Checks what needs the built outline: that blocks stand on steel, do not run into one another, and have the tang inside.
 *
 * @param steel - thickness of the finished steel along x.
 *
 * @example
 * checkHandleFit(spec, outline, knife.body("finished").slab); // []
 */
export function checkHandleFit(spec: KnifeSpec, outline: Outline, steel: SlabLaw): Issue[] {
  const { handle } = spec;
  if (handle === undefined) return [];
  const issues = checkStations(spec, outline);
  if (issues.length > 0) return issues;
  const layout = handleLayout(handle, outline);
  return [
    ...checkLength(spec, outline, layout),
    ...checkPlaces(spec, outline, layout),
    ...checkOverlaps(layout),
    ...checkSlots(spec, steel, layout),
  ];
}

/**
 * What is legal but unwise about the handle.
 *
 * @param least - Wood to leave beside a hidden tang, mm.
 *
 * @example
 * handleFindings(spec, outline, knife.body("finished").slab); // []
 */
export function handleFindings(
  spec: KnifeSpec,
  outline: Outline,
  steel: SlabLaw,
  least: Limit = BLADE_LIMITS.mortiseWall,
): Finding[] {
  const { handle, footprint } = handleLayout(spec.handle, outline);
  if (handle === undefined) return [];
  const { wall, at } = mortiseOf(handle.block, { footprint, slab: steel });
  if (!(wall < least.value - ROUNDING)) return [];
  return [
    {
      code: "mortise-wall-thin",
      severity: "warn",
      path: handle.path,
      text: "Only {wall} of the handle is left beside the tang, {back} behind its front; {limit} is good. Make the tang smaller or the handle larger.",
      values: {
        wall: length(wall),
        back: length(handle.block.front - at),
        limit: length(least.value),
      },
      basis: least.basis,
    },
  ];
}

function checkStations({ handle }: KnifeSpec, outline: Outline): Issue[] {
  const tang = outline.handleFront - outline.butt;
  const { slabs, block } = handle ?? {};
  const laws: readonly (readonly [string, LawSpec | undefined, number])[] = [
    ["handle.slabs.thickness", slabs?.thickness, tang],
    ["handle.block.height", block?.height, block?.length ?? 0],
    ["handle.block.width", block?.width, block?.length ?? 0],
  ];
  return laws.flatMap(([path, law, most]) => {
    if (law === undefined || typeof law === "number") return [];
    const places = law.map(({ at }) => tangStation(at, most));
    return places.flatMap((at, i): Issue[] => {
      const place = `${path}[${i}].at`;
      const word = law[i]?.at.kind;
      if (word === "heel" || word === "tip") {
        const text =
          "{word} is no station of a handle: its stations run from its front to its rear. Write handle, butt, or a distance.";
        return [{ code: "station-outside", path: place, text, values: { word } }];
      }
      if (!(at >= -ROUNDING && at <= most + ROUNDING)) {
        const text = "A station at {at} lies outside: this law runs from 0 to {most}.";
        return [
          { code: "station-outside", path: place, text, values: { at: length(at), most: length(most) } },
        ];
      }
      if (!places.slice(0, i).some((other) => Math.abs(other - at) < 1e-6)) return [];
      const text = "There are two stations at {at}. Keep one of them.";
      return [{ code: "station-twice", path: place, text, values: { at: length(at) } }];
    });
  });
}

/** A hidden tang ends inside its handle, a through tang comes out of it. */
function checkLength(spec: KnifeSpec, outline: Outline, { handle }: HandleLayout): Issue[] {
  if (handle === undefined || spec.handle?.block === undefined) return [];
  const { front, rear } = handle.block;
  const values = {
    handle: length(spec.handle.block.length),
    tang: length(front - outline.butt),
  };
  const path = "handle.block.length";
  if (spec.tang.form === "hidden" && rear > outline.butt + ROUNDING) {
    const text =
      "The handle is {handle} long, but the hidden tang reaches {tang} into it. Make the handle longer or the tang shorter.";
    return [{ code: "handle-shorter-than-tang", path, text, values }];
  }
  if (spec.tang.form === "through" && rear < outline.butt - ROUNDING) {
    const text =
      "The handle is {handle} long, but the tang reaches only {tang} into it, so it does not come through. Make the tang longer, or call it hidden.";
    return [{ code: "tang-not-through", path, text, values }];
  }
  return [];
}

/** Blocks stand on unground steel; a pommel may sit behind the end of the tang. */
function checkPlaces(spec: KnifeSpec, outline: Outline, { fittings }: HandleLayout): Issue[] {
  const ahead = spec.blade.plunge?.at ?? 0;
  return fittings.flatMap(({ path, block }): Issue[] => {
    if (block.front > ahead + ROUNDING) {
      return [
        {
          code: "block-on-bevel",
          path: `${path}.at`,
          text: "Its front face at x = {at} lies on the ground blade, which begins at x = {most}. Move it back.",
          values: { at: length(block.front), most: length(ahead) },
        },
      ];
    }
    const loose = path === "handle.pommel" ? block.front > outline.handleFront : block.rear < outline.butt;
    if (!loose) return [];
    return [
      {
        code: "block-off-tang",
        path: `${path}.at`,
        text: "It runs from x = {at} back to x = {rear}, but the tang from {front} to {butt}. Move it onto the tang.",
        values: {
          at: length(block.front),
          rear: length(block.rear),
          front: length(outline.handleFront),
          butt: length(outline.butt),
        },
      },
    ];
  });
}

function checkOverlaps({ handle, fittings }: HandleLayout): Issue[] {
  const all = [...(handle === undefined ? [] : [handle]), ...fittings];
  return all.flatMap((one, i) =>
    all.slice(0, i).flatMap((other): Issue[] => {
      const shared =
        Math.min(one.block.front, other.block.front) - Math.max(one.block.rear, other.block.rear);
      if (!(shared > ROUNDING)) return [];
      return [
        {
          code: "handle-blocks-overlap",
          path: `${one.path}.at`,
          text: "It runs into {other} by {shared}. Move one of them, or make it shorter.",
          values: { other: other.path, shared: length(shared) },
        },
      ];
    }),
  );
}

function checkSlots({ tang }: KnifeSpec, slab: SlabLaw, layout: HandleLayout): Issue[] {
  const steel = { footprint: layout.footprint, slab };
  const around = (placed: PlacedBlock, code: string, text: string): Issue[] => {
    const { wall, at } = mortiseOf(placed.block, steel);
    if (!(wall < -ROUNDING)) return [];
    const values = { by: length(-wall), at: length(at) };
    return [{ code, path: placed.path, text, values }];
  };
  const handleIssues =
    layout.handle === undefined
      ? []
      : around(
          layout.handle,
          "tang-outside-handle",
          "At x = {at} the tang stands out of the handle by {by}. Make the handle higher or wider, or the tang smaller.",
        );
  return [
    ...handleIssues,
    ...layout.fittings.flatMap((placed) => {
      // A bolster pair may be flush with a full tang or lower: only its faces have to stand out.
      if (placed.path.startsWith("handle.bolsters") && tang.form === "full") return checkPair(placed, slab);
      return around(
        placed,
        "slot-outside-block",
        "At x = {at} the steel stands out of it by {by}, so there is no slot that holds it. Make it higher or wider, or move it.",
      );
    }),
  ];
}

function checkPair({ path, block }: PlacedBlock, slab: SlabLaw): Issue[] {
  const thickest = Math.max(
    ...[block.front, block.rear, ...slab.breaks.filter((x) => x > block.rear && x < block.front)].map((x) =>
      slab.thicknessAt(x),
    ),
  );
  const width = 2 * block.sectionAt(block.rear).halfWidth;
  if (width > thickest + ROUNDING) return [];
  return [
    {
      code: "bolster-inside-tang",
      path: `${path}.width`,
      text: "A pair of bolsters {width} wide over all leaves nothing beside a tang of {tang}. Make it wider.",
      values: { width: length(width), tang: length(thickest) },
    },
  ];
}
