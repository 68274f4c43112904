// The finished steel as two faces over its outline, for what is laid out in blocks: the thickness of docs/model.md point by
// point, each point with the name of the smooth strip it lies on.
import type { KnifeSpec, Outline } from "@scantling/geometry";
import type { Faced, Side } from "./layout.js";
import { type GroundFace, stripModel } from "./strips/model.js";

const PIECES = ["bevel", "flank", "beyond", "plane", "microbevel"];

/** Both faces of a knife without holes and fullers, its edge without ridges. */
export function facesOf(spec: KnifeSpec, outline: Outline): Faced {
  const model = stripModel(spec, outline);
  const { field, cutter, crest, plunge, handleFront } = model;
  const eased = spec.blade.easedSpine ?? 0;
  if (eased > 0 && spec.blade.swedge) throw new Error("either the spine is eased or it has a swedge");
  const of: Record<Side, GroundFace> = { right: model.right, left: model.left ?? model.right };

  let station = { x: Number.NaN, top: 0, slab: 0, share: 0 };
  const stand = (x: number): typeof station => {
    if (station.x === x) return station;
    const top = cutter.cut(x).at(-1) ?? 0;
    const thickness = x < handleFront ? model.tang.at(handleFront - x) : model.thickness.at(Math.max(0, x));
    const u = plunge.length > 0 ? Math.min(1, (x - plunge.at) / plunge.length) : 1;
    const share = x < plunge.at ? 0 : u * u * (3 - 2 * u);
    crest.stand(x, thickness);
    if (share > 0) {
      const toTop = field.nearest(x, top);
      for (const { face, height, crown, crownIsShare } of Object.values(of)) {
        const asked = crown?.at(x) ?? Number.NaN;
        face.stand({
          top: toTop,
          bevel: height.at(x),
          thickness,
          flank: model.flank.at(x),
          edge: model.edge.at(x),
          crown: crownIsShare ? Number.NaN : asked,
          crownShare: crownIsShare ? asked : Number.NaN,
        });
      }
    }
    station = { x, top, slab: thickness / 2, share };
    return station;
  };

  const at = (x: number, y: number, side: Side): { readonly height: number; readonly strip: string } => {
    const { top, slab, share } = stand(x);
    const depth = Math.max(0, top - y);
    const most = crest.active ? crest.at(depth) : slab;
    let height = slab;
    let strip = x < handleFront ? "tang" : "unground";
    if (share > 0) {
      const v = field.nearest(x, y);
      const { face } = of[side];
      height = slab - share * (slab - face.at(v));
      // Where the model's choices change, so does the law of the section.
      strip = `${PIECES[face.piece(v)]} ${face.choices}`;
    }
    return most < height ? { height: most, strip: depth < eased ? "eased" : "swedge" } : { height, strip };
  };

  return {
    face: (x, y, side) => at(x, y, side).height,
    strip: (x, y, side) => at(x, y, side).strip,
    crossings: (x) => [...cutter.cut(x)],
    breaks: model.breaks,
  };
}
