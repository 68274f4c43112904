import fc from "fast-check";
import { FAMILIES } from "../../src/blade/families.js";
import type { FamilyName, LandmarkOutlineSpec, TangSpec } from "../../src/blade/spec.js";

/** Everything that `outlineFromLandmarks` takes. */
export interface OutlineInput {
  readonly spec: LandmarkOutlineSpec;
  readonly ricasso: number;
  readonly tang: TangSpec;
  readonly choil: { readonly radius: number } | undefined;
}

/** Even over the range, with its ends and round shares among the values. */
const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: 1_000_000 }).map((i) => min + ((max - min) * i) / 1_000_000);

const share = between(0, 1);
const maybe = (value: fc.Arbitrary<number>): fc.Arbitrary<number | undefined> =>
  fc.oneof(fc.constant(undefined), value);

const shares = fc.record({
  edgeLength: between(20, 400),
  slimness: between(0.05, 1.5),
  straight: share,
  tip: share,
  spineBreak: share,
  ricasso: fc.oneof(fc.constant(0), between(0.1, 30)),
  tangLength: between(5, 200),
  heights: fc.tuple(share, share, share),
  drop: maybe(fc.oneof(fc.constant(0), between(0.001, 0.999))),
  fillet: maybe(between(0.01, 1)),
  choil: maybe(between(0.05, 1)),
});
type Shares = typeof shares extends fc.Arbitrary<infer S> ? S : never;

/** Sound proportions of a family with a form of tang, from slivers to squares, by rules worked out anew here. */
export const anyOutline = (family: FamilyName, form: TangSpec["form"]): fc.Arbitrary<OutlineInput> =>
  shares.map((r) => {
    const spec = anyBlade(family, r);
    const tang = anyTang(spec.heelHeight, form, r);
    return { spec, ricasso: r.ricasso, tang, choil: anyChoil(spec.heelHeight, tang, r) };
  });

function anyBlade(family: FamilyName, r: Shares): LandmarkOutlineSpec {
  const heelHeight = r.edgeLength * r.slimness;
  const straightEdge = r.straight * r.edgeLength * 0.98;
  const base = { family, edgeLength: r.edgeLength, heelHeight, straightEdge };
  const spineBreak = 0.99 * r.spineBreak * r.edgeLength;
  const belly = r.edgeLength - straightEdge;
  if (FAMILIES[family].front === "square") {
    return { ...base, tipHeight: heelHeight - r.tip * Math.min(belly, 0.98 * heelHeight) };
  }
  // A spine that rises from no later than the edge does, and by no more than the blade is high, stays above the edge.
  return family === "trailing-point"
    ? { ...base, tipHeight: heelHeight * (1 + r.tip), spineBreak: Math.min(spineBreak, straightEdge) }
    : { ...base, tipHeight: heelHeight * r.tip, spineBreak };
}

function anyTang(heelHeight: number, form: TangSpec["form"], r: Shares): TangSpec {
  const [front, middle, butt] = r.heights.map((s) => heelHeight * (0.05 + 0.9 * s)) as [
    number,
    number,
    number,
  ];
  const tang = { form, length: r.tangLength, heights: { front, middle, butt } };
  if (form === "full") return r.drop === undefined ? tang : { ...tang, drop: 0.3 * r.drop * heelHeight };
  const room = heelHeight - front;
  const drop = r.drop === undefined ? undefined : r.drop * room;
  const shoulders = [drop ?? room / 2, room - (drop ?? room / 2)].filter((depth) => depth > 1e-6);
  // The tang's side leans from level by this much, so a fillet turns through that and a quarter turn.
  const half = r.tangLength / 2;
  const lean = Math.atan2((middle - front) / 2, half);
  const side = Math.hypot(half, (middle - front) / 2);
  const most = Math.min(side, ...shoulders) / Math.tan((Math.PI / 2 + lean) / 2);
  return {
    ...tang,
    ...(drop === undefined ? {} : { drop }),
    ...(r.fillet === undefined ? {} : { shoulderRadius: 0.9 * r.fillet * most }),
  };
}

function anyChoil(heelHeight: number, tang: TangSpec, r: Shares): { readonly radius: number } | undefined {
  const bottom = tang.form === "full" ? heelHeight - (tang.drop ?? 0) - (tang.heights?.front ?? 0) : 0;
  if (r.choil === undefined || r.ricasso === 0 || bottom < 0) return undefined;
  return { radius: 0.99 * r.choil * Math.min(r.ricasso / 2, heelHeight - bottom) };
}
