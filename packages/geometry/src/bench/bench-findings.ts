import { useOf } from "../blade/judging.js";
import type { Knife } from "../blade/knife.js";
import { count, type Finding, length, share } from "../errors/issue.js";
import type { Limit } from "../limits/limit.js";
import type { Drill } from "../stock/bench-tools.js";
import type { ShopSpec } from "../stock/shop.js";
import type { BenchSetUp } from "./bench-setup.js";
import { handleStockFindings } from "./handle-stock-findings.js";
import { hardeningFindings } from "./hardening-findings.js";
import { type HoleSetUp, handleDrill } from "./holes.js";

type Made = Omit<BenchSetUp, "findings">;

/**
 * What is legal but unwise about what is set at the bench: edge thin for the quench, bevel line that droops, wedge behind
 * the edge, wide sharpening bevel, holes that need a shim or a drill, loose pins, guard that shows its slot, little oil.
 *
 * @param made - The set-ups of the same knife.
 * @param sold - Drills that can be bought where none in hand fits.
 *
 * @example
 * benchFindings(knife, benchSetUp(knife, DEFAULT_SHOP), DEFAULT_SHOP).map(({ code }) => code); // ["bevel-line-droops"]
 */
export function benchFindings(
  knife: Knife,
  made: Made,
  shop: ShopSpec,
  sold: readonly Drill[] = [],
): Finding[] {
  return [
    ...hardeningFindings(knife, made.bevels),
    ...droop(knife, made),
    ...edge(knife, made),
    ...holes(knife, made, shop, sold),
    ...guard(made),
    ...handleStockFindings(knife, shop),
    ...oil(knife, made),
  ];
}

function droop({ limits }: Knife, { bevels }: Made): Finding[] {
  const { value, basis } = limits.droop;
  return bevels.flatMap(({ droop: left, side, form }): Finding[] =>
    left === undefined || left >= value || form !== "flat"
      ? []
      : [
          {
            code: "bevel-line-droops",
            severity: "note",
            path: side === "both" ? "blade.bevel.height" : `blade.bevel.${side}.height`,
            text: "A jig that keeps one angle from the heel on brings the bevel to {share} of its drawn height where the blade is thinner. Set the angle of each station, or grind the line by eye.",
            values: { share: share(left) },
            basis,
          },
        ],
  );
}

function edge(knife: Knife, { edge: faces }: Made): Finding[] {
  const kitchen = useOf(knife) === "kitchen";
  const widest = Math.max(...faces.map(({ stations }) => stations[0]?.width ?? 0), 0);
  const wedge = faces[0]?.stations[0]?.oneAbove ?? 0;
  const { kitchenWedge, kitchenEdgeWidth, edgeWidth } = knife.limits;
  const width = kitchen ? kitchenEdgeWidth : edgeWidth;
  const findings: Finding[] = [];
  if (kitchen && wedge > kitchenWedge.value + 1e-9)
    findings.push({
      code: "thick-above-edge",
      // The outline alone does not say for sure that it is for a kitchen.
      severity: knife.typeStated ? "warn" : "note",
      path: "blade.bevel.edgeThickness",
      text: "1 mm above the edge the blade is {thickness} thick at the heel; on a kitchen knife more than {limit} wedges in what it cuts. Grind the edge thinner or the bevel higher.",
      values: { thickness: length(wedge), limit: length(kitchenWedge.value) },
      basis: kitchenWedge.basis,
    });
  if (widest > width.value + 1e-9)
    findings.push({
      code: "edge-bevel-wide",
      severity: "note",
      path: "blade.edgeAngle",
      text: "The sharpening bevel comes out {width} wide at the heel, more than {limit}. Grind the edge thinner before sharpening, or sharpen steeper.",
      values: { width: length(widest), limit: length(width.value) },
      basis: width.basis,
    });
  return findings;
}

function holes(
  { limits }: Knife,
  { holes: all }: Made,
  { drills = [] }: ShopSpec,
  sold: readonly Drill[],
): Finding[] {
  const missing = drills.length === 0 ? [] : all.filter(({ steel }) => steel === undefined);
  const worst = all
    .flatMap(({ path, lean }) => (lean?.needsShim === true ? [{ path, lean }] : []))
    .sort((a, b) => b.lean.mismatch - a.lean.mismatch)[0];
  return [
    ...all.flatMap((hole) => loosePin(hole, limits.pinPlay, sold)),
    ...missing.map(
      ({ path, diameter }): Finding => ({
        code: "no-drill",
        severity: "note",
        path,
        text: "None of the shop's drills is large enough for a hole of {diameter}.",
        values: { diameter: length(diameter) },
        basis: "the drills of the shop file",
      }),
    ),
    ...(worst === undefined
      ? []
      : [
          {
            code: "drilling-needs-shim" as const,
            severity: "note" as const,
            path: worst.path,
            text: "Drilled square to the faces of the tapered tang, the holes of a pair miss by {mismatch}; they give {clearance}. Shim the tang so that its centre plane is level.",
            values: { mismatch: length(worst.lean.mismatch), clearance: length(worst.lean.clearance) },
            basis: "geometry",
          },
        ]),
  ];
}

function loosePin({ path, pin, handle }: HoleSetUp, pinPlay: Limit, sold: readonly Drill[]): Finding[] {
  if (pin === undefined || handle === undefined || handle.clearance <= pinPlay.value + 1e-9) return [];
  const best = handleDrill(sold, pin);
  const buy = best !== undefined && best.clearance <= pinPlay.value + 1e-9 ? best : undefined;
  return [
    {
      code: "pin-loose",
      severity: "warn",
      path,
      text: `The nearest drill in hand to go through the handle for a pin of {pin} is {drill}: the hole in the handle is {play} too large, more than {limit}. ${
        buy === undefined
          ? "Buy a drill or a pin that fits better."
          : "Buy a drill of {buy}, or a pin that fits better."
      }`,
      values: {
        pin: length(pin),
        drill: handle.drill.name,
        play: length(handle.clearance),
        limit: length(pinPlay.value),
        ...(buy === undefined ? {} : { buy: buy.drill.name }),
      },
      basis: pinPlay.basis,
    },
  ];
}

function guard({ guard: slot }: Made): Finding[] {
  if (slot === undefined || (slot.coverHeight > 0 && slot.coverThickness > 0)) return [];
  const onFaces = slot.coverHeight > 0;
  return [
    {
      code: "guard-slot-shows",
      severity: "note",
      path: "handle.guard",
      text: onFaces
        ? "The tang is as thick as the blade ahead of the guard: nothing covers the long sides of the slot, so it has to fit without a gap."
        : "The tang behind the guard is as high as the blade ahead of it: no shoulder covers the slot. Set the tang off, or fit the slot without a gap.",
      basis: "geometry",
    },
  ];
}

function oil({ limits }: Knife, { quench }: Made): Finding[] {
  const { litres, usualLitres, rise = 0 } = quench;
  if (litres === undefined || litres >= usualLitres) return [];
  return [
    {
      code: "little-oil",
      severity: "note",
      path: "quenchTank.litres",
      text: "{litres} l of oil are little for this blade: {usual} l are usual. By estimate the oil warms by {rise} K; keep it well below its flash point, as its data sheet says, and quench one blade at a time.",
      values: {
        litres: count(litres),
        usual: count(Math.round(usualLitres * 10) / 10),
        rise: count(Math.round(rise)),
      },
      basis: limits.oilPerKilogram.basis,
    },
  ];
}
