// A pointed blade on a full tang from a few sizes.
import type { BladeSpec, Outline, Segment, TangSpec } from "@scantling/geometry";
import { outlineOf, p, polyline, type ReferenceKnife, runsSpec } from "./outlines.js";

interface PointedOutline {
  readonly length: number;
  readonly height: number;
  /** Straight edge before the belly, and where the spine leaves its level. */
  readonly straight: number;
  readonly spineBreak: number;
  /** y of the tip. */
  readonly tip: number;
  readonly ricasso: number;
  /** Butt, and the tang's heights below a level top: at the handle front and at the butt. */
  readonly butt: number;
  readonly front: number;
  readonly rear: number;
}

/** Level spine and straight edge, each leaving for the tip in a cubic that starts level; full tang, straight sides. */
export function pointed({
  length,
  height,
  straight,
  spineBreak,
  tip,
  ricasso,
  butt,
  front,
  rear,
}: PointedOutline): Outline {
  const w = length - straight;
  const fall = height - tip;
  const bow = length - spineBreak;
  const belly: Segment = {
    kind: "cubic",
    from: p(straight, 0),
    control1: p(straight + 0.36 * w, 0),
    control2: p(length - 0.3 * w, 0.45 * tip),
    to: p(length, tip),
  };
  const drop: Segment = {
    kind: "cubic",
    from: p(length, tip),
    control1: p(length - 0.3 * bow, tip + 0.5 * fall),
    control2: p(spineBreak + 0.4 * bow, height),
    to: p(spineBreak, height),
  };
  const low = height - front;
  return outlineOf(
    {
      edge: [...polyline(p(0, 0), p(straight, 0)), belly],
      spine: [drop, ...polyline(p(spineBreak, height), p(-ricasso, height))],
      tangTop: polyline(p(-ricasso, height), p(butt, height)),
      butt: polyline(p(butt, height), p(butt, height - rear)),
      tangBottom: polyline(p(butt, height - rear), p(-ricasso, low)),
      heelFace: polyline(p(-ricasso, low), p(0, low), p(0, 0)),
    },
    length,
    ricasso,
    butt,
  );
}

/** A knife of plain carbon steel on an outline given by runs. */
export function formKnife(
  name: string,
  outline: Outline,
  blade: Omit<BladeSpec, "outline" | "ricasso">,
  tang: TangSpec = { form: "full" },
): ReferenceKnife {
  const { ricasso } = outline;
  return {
    name,
    outline,
    spec: {
      steel: { name: "1084", density: 0.00785 },
      blade: { outline: runsSpec(outline), ricasso, ...blade },
      tang,
    },
  };
}
