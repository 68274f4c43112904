import { type Finding, length } from "../errors/issue.js";
import { handleLayout } from "./handle-layout.js";
import type { Knife } from "./knife.js";
import { namedHoles } from "./named-holes.js";
import type { HoleSpec } from "./spec.js";
import { woodFindings } from "./wood-findings.js";

/** Rounding of stated places, mm. */
const ROUNDING = 1e-9;

/** What does not go together about tang, pins and handle. */
export function fittingFindings(knife: Knife): Finding[] {
  return [
    ...tangThickens(knife),
    ...tangPastHandle(knife),
    ...pinsAndHoles(knife),
    ...pinsAcrossFaces(knife),
    ...woodFindings(knife),
  ];
}

/** A tang thicker behind than at the handle front: usually two numbers changed round. */
function tangThickens({ spec, outline, laws }: Knife): Finding[] {
  if (laws.tang === undefined) return [];
  const front = laws.spine.valueAt(0);
  const most = laws.tang.range.max;
  if (most <= front + ROUNDING) return [];
  return [
    {
      code: "tang-thickens",
      severity: "warn",
      path: spec.tang.buttThickness === undefined ? "tang.thickness" : "tang.buttThickness",
      text: "The tang becomes {most} thick, more than the {front} at the handle front; bars are chosen for that. If it is not meant, give {front} or less.",
      values: { most: length(most), front: length(front), butt: length(outline.butt) },
      basis: "common practice, no source: tangs taper toward the butt",
    },
  ];
}

/** A through tang that stands out of its handle with nothing behind it. */
function tangPastHandle({ spec, outline, limits }: Knife): Finding[] {
  const { handle, fittings } = handleLayout(spec.handle, outline);
  if (spec.tang.form !== "through" || handle === undefined) return [];
  const rear = Math.min(handle.block.rear, ...fittings.map(({ block }) => block.rear));
  const out = rear - outline.butt;
  const { peening } = limits;
  if (out <= peening.value + ROUNDING) return [];
  return [
    {
      code: "tang-past-handle",
      severity: "warn",
      path: "tang.length",
      text: "The tang stands {out} out behind the handle, and nothing is on it there; {limit} is enough to peen. Make the tang shorter or the handle longer, or give the pommel that goes on it.",
      values: { out: length(out), limit: length(peening.value) },
      basis: peening.basis,
    },
  ];
}

const isPin = ({ kind }: HoleSpec): boolean => kind === "pin";

function pinsAndHoles({ spec, holes }: Knife): Finding[] {
  const { pins, slabs, liners, block, bolsters = [], guard, pommel } = spec.handle ?? {};
  const basis = "the knife file";
  if (pins !== undefined && !holes.some(isPin)) {
    return [
      {
        code: "pins-without-holes",
        severity: "warn",
        path: "handle.pins",
        text: "Pins are given, but no hole of kind pin, so none is weighed or drawn. Add them under tang.holes: { kind: pin, at: [x, y], diameter: … }, or leave the pins out.",
        basis,
      },
    ];
  }
  const [first] = namedHoles(spec).filter(([, hole]) => isPin(hole));
  const parts = [slabs, liners, block, guard, pommel, ...bolsters];
  if (pins !== undefined || first === undefined || parts.every((part) => part === undefined)) return [];
  return [
    {
      code: "pin-holes-empty",
      severity: "note",
      path: `${first[0]}.kind`,
      text: "There are pin holes, but no pins: the holes are weighed as empty. Give the pins' material: handle.pins: { material: brass }.",
      basis,
    },
  ];
}

/** A pin half in a bolster or a guard and half beside it is drilled along a joint. */
function pinsAcrossFaces({ spec, outline }: Knife): Finding[] {
  const { fittings } = handleLayout(spec.handle, outline);
  return namedHoles(spec).flatMap(([path, hole]) => {
    if (!isPin(hole)) return [];
    const radius = (hole.pin ?? hole.diameter) / 2;
    return fittings.flatMap(({ name, block }) =>
      (["front", "rear"] as const).flatMap((face): Finding[] => {
        const beside = Math.abs(hole.at.x - block[face]);
        if (beside >= radius - ROUNDING || Math.abs(hole.at.y - block.centre) > reachUp(block)) return [];
        return [
          {
            code: "pin-across-joint",
            severity: "warn",
            path: `${path}.at`,
            text: "This pin lies across the {face} face of the {name}: its centre is {beside} from it, and the pin's radius is {radius}. Move it to one side of the joint.",
            values: { face, name, beside: length(beside), radius: length(radius) },
            basis: "geometry",
          },
        ];
      }),
    );
  });
}

const reachUp = (block: { readonly rear: number; sectionAt(x: number): { halfHeight: number } }): number =>
  block.sectionAt(block.rear).halfHeight;
