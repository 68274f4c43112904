import type { BlockSpec, KnifeSpec } from "./spec.js";

/** The same knife with everything that is put on its tang moved along x, mm: it goes with the handle front. */
export function withHandleMoved(spec: KnifeSpec, by: number): KnifeSpec {
  const { handle } = spec;
  if (handle === undefined || by === 0) return spec;
  const { bolsters, guard, pommel, parts } = handle;
  const moved = (block: BlockSpec): BlockSpec => ({ ...block, at: block.at + by });
  return {
    ...spec,
    handle: {
      ...handle,
      ...(bolsters === undefined ? {} : { bolsters: bolsters.map(moved) }),
      ...(guard === undefined ? {} : { guard: moved(guard) }),
      ...(pommel === undefined ? {} : { pommel: moved(pommel) }),
      ...(parts === undefined
        ? {}
        : { parts: parts.map((part) => ({ ...part, at: { ...part.at, x: part.at.x + by } })) }),
    },
  };
}
