import { type Finding, length } from "../errors/issue.js";
import { handleLayout } from "./handle-layout.js";
import type { Knife } from "./knife.js";

/** Rounding of stated places, mm. */
const ROUNDING = 1e-9;

/**
 * A handle that begins where the faces are no longer flat: it gapes there, and that cannot be put right after grinding. Asked
 * only of a knife whose file says where its plunge is, or its ricasso.
 */
export function plungeFindings({ spec, outline, limits }: Knife): Finding[] {
  const { plunge, ricasso } = spec.blade;
  if (plunge === undefined && ricasso === undefined) return [];
  const { fittings } = handleLayout(spec.handle, outline);
  const front = Math.max(outline.handleFront, ...fittings.map(({ block }) => block.front));
  const gap = (plunge?.at ?? 0) - front;
  const { plungeToHandle: least } = limits;
  if (gap >= least.value - ROUNDING) return [];
  return [
    {
      code: "plunge-under-handle",
      severity: "stop",
      path: plunge === undefined ? "blade.ricasso" : "blade.plunge",
      text: "The faces are flat for {gap} only ahead of the handle; with less than {limit} the plunge runs in under its front, and it gapes. Make the ricasso {more} longer, or begin the plunge that much farther forward.",
      values: {
        gap: length(Math.max(0, gap)),
        limit: length(least.value),
        more: length(least.value - gap),
      },
      basis: least.basis,
    },
  ];
}
