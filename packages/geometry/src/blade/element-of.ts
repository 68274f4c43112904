import type { Segment } from "../plane/segment.js";
import { CubicElement } from "./cubic-element.js";
import type { EdgeElement } from "./edge-element.js";
import { RoundElement } from "./round-element.js";
import { StraightElement } from "./straight-element.js";

/** Elements of a segment that is monotone in x. */
export function elementOf(segment: Segment): EdgeElement {
  switch (segment.kind) {
    case "line": {
      const dx = segment.to.x - segment.from.x;
      const dy = segment.to.y - segment.from.y;
      const n = Math.hypot(dx, dy);
      return new StraightElement(segment.from, { x: dx / n, y: dy / n }, 0, n);
    }
    case "arc":
      return RoundElement.ofArc(segment);
    case "cubic":
      return new CubicElement(segment);
  }
}
