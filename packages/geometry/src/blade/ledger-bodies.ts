import { BevelMoments } from "./bevel-moments.js";
import { measureSurface } from "./body-surface.js";
import { distinct } from "./footprint.js";
import type { Knife } from "./knife.js";
import { measureBody } from "./measure-body.js";
import { VOLUME } from "./moments.js";
import { profileStrips } from "./profile-strips.js";
import { sectionArea } from "./section-area.js";
import { SIZE_STATES, type SizeState } from "./size-states.js";
import type { SteelBody } from "./steel-body.js";

/** A station of the forged blade; mm, mm². */
export interface ForgedStation {
  /** mm from the heel, negative in the tang. */
  readonly x: number;
  readonly height: number;
  readonly area: number;
  /** Greatest thickness of the section, mm; left out: the mean thickness (area ÷ height) stands in for it. */
  readonly thickness?: number;
  /** y of its spine side, mm; left out: 0. */
  readonly top?: number;
}

/** Volumes of the bodies between the finished blade and the forging, as differences; mm³, mm². */
export interface LedgerBodies {
  /** g/mm³ */
  readonly density: number;
  readonly finished: number;
  /** Surface of the piece that goes into the quench, mm². */
  readonly readySurface: number;
  readonly sharpening: number;
  readonly finishGrinding: number;
  readonly drilling: number;
  readonly bevelGrinding: number;
  readonly tangGrinding: number;
  readonly faceGrinding: number;
  readonly profileTrimming: number;
  /** Surface of the forged blade, mm². */
  readonly forgedSurface: number;
  /** Sections of the forged blade, in order of x. */
  readonly stations: readonly ForgedStation[];
}

/** Spacing of the stations that are handed on, mm; wider on a piece so long that they would be more than MOST. */
const SPACING = 1;
const MOST = 2000;

/** Relative error at which the states between finished and forged are weighed: a microgram. */
const STATE_AIM = 1e-9;

/**
 * Measures every size state of a knife, for the steel ledger.
 *
 * @example
 * const { finished, sharpening } = ledgerBodies(knife);
 * finished; // mm³ of the blade and tang as delivered
 * sharpening; // mm³ that the sharpening planes take
 */
export function ledgerBodies(knife: Knife): LedgerBodies {
  const volumes = new Map<SizeState, number>(
    SIZE_STATES.map((state) => [state, measureBody(knife.body(state), STATE_AIM).value[VOLUME] as number]),
  );
  const volume = (state: SizeState): number => volumes.get(state) as number;
  const forged = knife.body("forged");
  const { allowances } = knife;
  const strips = profileStrips(forged, knife.outline, allowances);
  return {
    density: knife.steelDensity,
    finished: volume("finished"),
    readySurface: measureSurface(knife.body("ready")),
    sharpening: volume("unsharpened") - volume("finished"),
    finishGrinding: volume("ready") - volume("unsharpened"),
    drilling: volume("undrilled") - volume("ready"),
    bevelGrinding: volume("hammered") - volume("undrilled"),
    tangGrinding: volume("tang-forged") - volume("hammered"),
    faceGrinding: volume("forged") - volume("tang-forged"),
    profileTrimming: strips.value[VOLUME] as number,
    forgedSurface: measureSurface(forged) + strips.surface,
    stations: forgedStations(forged, allowances.outline),
  };
}

/**
 * Height and area of the forged sections, the profile allowance included. Where height or thickness steps there is one
 * on either side, so that areas may be taken as straight between them.
 *
 * @example
 * forgedStations(knife.body("forged"), knife.allowances.outline)[0]?.x; // -115
 */
export function forgedStations(body: SteelBody, outlineAllowance: number): ForgedStation[] {
  const { minX, maxX, intervals } = body.footprint;
  const beside = 1e-9 * (maxX - minX);
  const steps = [...intervals.map(({ x0 }) => x0), body.input.plunge.at, body.slab.handleFront, maxX].filter(
    (x) => x >= minX && x <= maxX,
  );
  const count = Math.min(MOST, Math.max(2, Math.ceil((maxX - minX) / SPACING)));
  const xs = steps.flatMap((x) => [x - beside, x + beside]);
  for (let i = 0; i <= count; i++) {
    const x = minX + ((maxX - minX) * i) / count;
    if (!steps.some((step) => Math.abs(step - x) <= beside)) xs.push(x);
  }
  const bevels = new BevelMoments(body);
  return distinct(xs)
    .filter((x) => x > minX && x < maxX)
    .map((x) => forgedStation(body, bevels, x, outlineAllowance));
}

function forgedStation(body: SteelBody, bevels: BevelMoments, x: number, allowance: number): ForgedStation {
  const spans = body.footprint.spansAt(x);
  const height = spans.reduce((sum, [low, high]) => sum + high - low, 0);
  const low = spans[0]?.[0] ?? 0;
  const high = spans[spans.length - 1]?.[1] ?? 0;
  const rims = body.thicknessIgnoringOutline({ x, y: low }) + body.thicknessIgnoringOutline({ x, y: high });
  return {
    x,
    height: height + 2 * allowance,
    area: sectionArea(body, bevels, x) + allowance * rims,
    top: high + allowance,
    thickness: Math.max(body.slab.thicknessAt(x), body.thicknessIgnoringOutline({ x, y: low })),
  };
}
