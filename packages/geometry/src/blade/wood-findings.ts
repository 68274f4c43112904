import { type Finding, length, share } from "../errors/issue.js";
import { handleLayout } from "./handle-layout.js";
import { handleMaterials } from "./handle-materials.js";
import type { Knife } from "./knife.js";

/** Rounding of stated shares. */
const ROUNDING = 1e-9;

/** Wood's change across the grain for a percentage point of moisture, radial to tangential; from memory, unconfirmed. */
export const WOOD_MOVEMENT = { least: 0.0015, most: 0.0035 } as const;

/** Wood whose moisture the file gives: too green for anything, or not dry enough to be fitted. */
export function woodFindings(knife: Knife): Finding[] {
  const { greenMoisture, dryMoisture } = knife.limits;
  return handleMaterials(knife.spec.handle).flatMap(([path, { moisture = 0 }]): Finding[] => {
    if (moisture <= dryMoisture.value + ROUNDING) return [];
    const green = moisture > greenMoisture.value + ROUNDING;
    const height = heightOf(knife, path);
    const points = (moisture - dryMoisture.value) * 100;
    const values = {
      moisture: share(moisture),
      limit: share(green ? greenMoisture.value : dryMoisture.value),
      dry: share(dryMoisture.value),
      height: length(Math.round(height)),
      least: length(Math.round(100 * height * points * WOOD_MOVEMENT.least) / 100),
      most: length(Math.round(100 * height * points * WOOD_MOVEMENT.most) / 100),
    };
    return [
      green
        ? {
            code: "wood-green",
            severity: "warn",
            path: `${path}.moisture`,
            text: "Wood of {moisture} moisture is green: above {limit} it holds free water, and it shrinks and cracks as it dries. Handles are made of wood of {dry} or less.",
            values,
            basis: greenMoisture.basis,
          }
        : {
            code: "wood-not-dry",
            severity: "warn",
            path: `${path}.moisture`,
            text: "Wood of {moisture} moisture is fitted at {limit} or less: a handle {height} high of it shrinks by {least} to {most} as it dries to that, and the steel stands proud. Let it dry, or take stabilised wood.",
            values,
            basis: `${dryMoisture.basis}; shrinkage from memory, unconfirmed`,
          },
    ];
  });
}

/** Greatest height of the part across its grain, mm: of the block, or of the tang that slabs follow. */
function heightOf({ spec, outline, body }: Knife, path: string): number {
  const { handle, fittings, footprint } = handleLayout(spec.handle, outline);
  const placed = [handle, ...fittings].find((each) => each !== undefined && path.startsWith(each.path));
  if (placed !== undefined) {
    const { front, rear } = placed.block;
    return Math.max(
      ...[0, 0.5, 1].map((t) => 2 * placed.block.sectionAt(front + t * (rear - front)).halfHeight),
    );
  }
  const { minX } = body("finished").footprint;
  const places = [0.02, 0.25, 0.5, 0.75, 0.98].map(
    (t) => outline.handleFront + t * (minX - outline.handleFront),
  );
  return Math.max(...places.map((x) => footprint.heightAt(x)));
}
