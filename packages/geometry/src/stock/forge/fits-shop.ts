import type { Knife } from "../../blade/knife.js";
import { type Finding, length } from "../../errors/issue.js";
import type { ShopSpec } from "../shop.js";
import { FORGE_DEFAULTS, forgeBasis, forgeLimits } from "./forge-limits.js";
import { hotSize } from "./thermal-elongation.js";

/** What of the knife has to go where; mm at 20 °C but `hotLength` and `hotHeight`. */
export interface HardeningSizes {
  /** Blade and tang in one, as it lies in the oven. */
  readonly length: number;
  readonly hotLength: number;
  readonly hotHeight: number;
  /** What is quenched at the least: the blade ahead of the handle. */
  readonly hardenedLength: number;
}

/**
 * Sizes of a knife in the oven and the quench.
 *
 * @param celsius - Temperature that it is hardened from, 20 to 1200 °C.
 *
 * @example
 * hardeningSizes(knife, 850).hardenedLength; // 110, edge and ricasso
 */
export function hardeningSizes(knife: Knife, celsius: number): HardeningSizes {
  const { minX, maxX, minY, maxY } = knife.body("ready").footprint;
  return {
    length: maxX - minX,
    hotLength: hotSize(maxX - minX, celsius),
    hotHeight: hotSize(maxY - minY, celsius),
    hardenedLength: maxX - knife.outline.handleFront,
  };
}

/**
 * What of a knife does not fit the shop: oven, quench tank, forge. Nothing is said of what the shop does not give. What
 * a stack needs of press and forge is judged with the plans.
 *
 * @example
 * fitsShop(knife, { ...DEFAULT_SHOP, oven: { length: 200 } })[0]?.code; // "longer-than-oven"
 */
export function fitsShop(knife: Knife, shop: ShopSpec): Finding[] {
  const { oven = {}, quenchTank = {}, press } = shop;
  const limits = forgeLimits(shop.limits.forge);
  const celsius = oven.temperature ?? FORGE_DEFAULTS.ovenTemperature.value;
  const sizes = hardeningSizes(knife, celsius);
  const findings: Finding[] = [];
  if (oven.length !== undefined && sizes.hotLength > oven.length - limits.ovenClearance)
    findings.push({
      code: "longer-than-oven",
      path: "oven.length",
      severity: "stop",
      text: "Hot, the blade with its tang is {hot} long; an oven of {oven} takes {most}, with {clearance} left over so that it heats evenly. Shorten it, harden it in the forge, or have it hardened.",
      values: {
        hot: length(sizes.hotLength),
        oven: length(oven.length),
        most: length(oven.length - limits.ovenClearance),
        clearance: length(limits.ovenClearance),
      },
      basis: forgeBasis("ovenClearance", limits.ovenClearance),
    });
  if (oven.height !== undefined && sizes.hotHeight > oven.height)
    findings.push({
      code: "higher-than-oven",
      path: "oven.height",
      severity: "warn",
      text: "Hot, the blade is {hot} high and cannot stand on its back in an oven {oven} high. Lay it flat on a true support, or it bends under its own weight.",
      values: { hot: length(sizes.hotHeight), oven: length(oven.height) },
      basis: "the inside of the oven, from the shop file",
    });
  if (quenchTank.depth !== undefined && sizes.hardenedLength + limits.tankClearance > quenchTank.depth)
    findings.push({
      code: "longer-than-tank",
      path: "quenchTank.depth",
      severity: "stop",
      text: "The blade ahead of the handle is {blade} long and wants a quench {needed} deep, with {clearance} left below its point; the tank has {depth}. Take a deeper tank, shorten the blade, or have it hardened.",
      values: {
        blade: length(sizes.hardenedLength),
        needed: length(sizes.hardenedLength + limits.tankClearance),
        clearance: length(limits.tankClearance),
        depth: length(quenchTank.depth),
      },
      basis: forgeBasis("tankClearance", limits.tankClearance),
    });
  const forged = forgedLength(knife);
  if (press.forgeLength !== undefined && forged > press.forgeLength)
    findings.push({
      code: "forged-longer-than-forge",
      path: "press.forgeLength",
      severity: "note",
      text: "The forged blade is {forged} long, more than the forge heats at once ({forge}): work it half by half, and count the heats for that.",
      values: { forged: length(forged), forge: length(press.forgeLength) },
      basis: "the length of the forge, from the shop file",
    });
  return findings;
}

function forgedLength(knife: Knife): number {
  const { minX, maxX } = knife.body("forged").footprint;
  return maxX - minX + knife.allowances.tip + knife.allowances.butt;
}
