import {
  areaMoments,
  gaugeSet,
  type KnifeSpec,
  makeKnife,
  type Path,
  pathBounds,
  type Segment,
} from "@scantling/geometry";
import { describe, expect, it } from "vitest";
import { convexByDefault, hollow, singleBevel, twoFaces } from "../../../../tests/reference/form-blades.js";
import { handleKnives } from "../../../../tests/reference/handle-knives.js";
import { contouredSlabs, filletedSlabs } from "../../../../tests/reference/slab-knives.js";
import {
  checkLayout,
  type Drawing,
  type DrawingItem,
  flattenItems,
  type GaugesModel,
  gaugesContents,
  layOutSheet,
  paperNamed,
  papersFor,
} from "../../src/index.js";
import { handledKnife } from "./random-handles.js";

const head = { code: "T-1", title: "A trial", units: "mm" as const };
const modelOf = (spec: KnifeSpec): GaugesModel => ({ ...head, gauges: gaugeSet(makeKnife(spec)) });
const pagesOf = (model: GaugesModel): Drawing[] =>
  layOutSheet(gaugesContents(model), { kind: "smallest", papers: papersFor(model.units) });

/** The cut line of a card by its name. */
function cutOf(pages: readonly Drawing[], name: string): Path {
  const items: DrawingItem[] = pages.flatMap((page) => flattenItems(page.items));
  const found = items.flatMap((item) =>
    item.kind === "path" && item.name === `${name}-cut` ? item.paths : [],
  );
  expect(found, name).toHaveLength(1);
  return found[0] ?? { segments: [], closed: true };
}

const arcsOf = ({ segments }: Path): Extract<Segment, { kind: "arc" }>[] =>
  segments.filter((segment) => segment.kind === "arc");

const closesUp = ({ segments }: Path): void => {
  for (const [i, segment] of segments.entries()) {
    const next = segments[(i + 1) % segments.length];
    expect(Math.hypot((next?.from.x ?? 0) - segment.to.x, (next?.from.y ?? 0) - segment.to.y)).toBeLessThan(
      1e-6,
    );
  }
};

const withHandles = [...handleKnives(), filletedSlabs(), contouredSlabs()];

describe.each(withHandles)("cards of the handle: $name", ({ spec }) => {
  const model = modelOf(spec);
  const pages = pagesOf(model);

  it("leave open just the half section of the geometry", () => {
    expect(model.gauges.handle.length).toBeGreaterThan(0);
    for (const [index, gauge] of model.gauges.handle.entries()) {
      const cut = cutOf(pages, `handle-gauge-${index + 1}`);
      closesUp(cut);
      const box = pathBounds(cut);
      const whole = (box.maxX - box.minX) * (box.maxY - box.minY);
      expect(2 * (whole - Math.abs(areaMoments(cut).area))).toBeCloseTo(gauge.area, 6);
    }
  });
});

/** Angle of a straight piece against the upright, rad. */
const lean = ({ from, to }: Segment): number => Math.atan2(Math.abs(to.x - from.x), Math.abs(to.y - from.y));

describe.each([convexByDefault(), hollow(), singleBevel(), twoFaces()])(
  "cards of bevel and edge: $name",
  ({ spec }) => {
    const model = modelOf(spec);
    const pages = pagesOf(model);
    const { bevels, radii, edges } = model.gauges;

    it("have the bevel's own curves", () => {
      expect(bevels.length).toBeGreaterThan(0);
      for (const [index, { right, left, height, bevelLine }] of bevels.entries()) {
        const cut = cutOf(pages, `bevel-gauge-${index + 1}`);
        closesUp(cut);
        const [reversedLeft, ...rest] = cut.segments;
        const drawn = rest.find((segment) => Math.abs(segment.to.y - segment.from.y - height) < 1e-9);
        if (reversedLeft === undefined || drawn === undefined) throw new Error("both sides are drawn");
        expect(drawn.kind).toBe(right.profile.kind);
        expect(reversedLeft.kind).toBe(left.profile.kind);
        if (drawn.kind === "arc" && right.profile.kind === "arc")
          expect(drawn.radius).toBe(right.profile.radius);
        expect(lean(drawn)).toBeCloseTo(Math.abs(right.angle), 9);
        expect(lean(reversedLeft)).toBeCloseTo(Math.abs(left.angle), 9);
        expect(drawn.to.x - reversedLeft.from.x).toBeCloseTo(bevelLine, 9);
      }
    });

    it("have the radii", () => {
      for (const [index, { radius, use, chord }] of radii.entries()) {
        const cut = cutOf(pages, `radius-gauge-${index + 1}`);
        closesUp(cut);
        const arcs = arcsOf(cut);
        expect(arcs.map((arc) => arc.radius)).toEqual(arcs.map(() => radius));
        expect(arcs).toHaveLength(use === "convex" || use === "hollow" ? 1 : 2);
        const [arc] = arcs;
        if (arcs.length === 1 && arc !== undefined) {
          expect(arc.to.x - arc.from.x).toBeCloseTo(chord, 9);
          // Laid into a hollow it stands out, over a bulge it is cut in: its centre lies below or above.
          expect(Math.sign(arc.centre.y - arc.from.y)).toBe(use === "hollow" ? -1 : 1);
        }
      }
    });

    it("have the edge's angles on their sides", () => {
      expect(edges.length).toBeGreaterThan(0);
      for (const [index, edge] of edges.entries()) {
        const cut = cutOf(pages, `edge-gauge-${index + 1}`);
        closesUp(cut);
        const [left, right] = cut.segments;
        if (left === undefined || right === undefined) throw new Error("a notch has two sides");
        expect(lean(left)).toBeCloseTo(edge.left, 12);
        expect(lean(right)).toBeCloseTo(edge.right, 12);
        expect(left.to).toEqual(right.from);
      }
    });
  },
);

it("a face too flat for a card is told in words, with what a straight edge shows: no line to cut", () => {
  const { spec } = convexByDefault();
  const flat = {
    ...spec,
    blade: { ...spec.blade, bevel: { form: "convex", height: 20, edgeThickness: 2.6 } },
  } as const;
  const model = modelOf(flat);
  const [face] = model.gauges.flatFaces;
  if (face === undefined) throw new Error("a convex face that hardly rises is flat");
  expect(model.gauges.radii.filter(({ use }) => use === "convex")).toEqual([]);
  const items = pagesOf(model).flatMap((page) => flattenItems(page.items));
  const texts = items.flatMap((item) => (item.kind === "text" ? [item.text] : []));
  expect(texts).toContain("Too flat for a card to cut: straight edge and feeler");
  expect(texts).toContain("Convex: on the middle; light at both ends, alike.");
  expect(texts).toContain(`${Number(face.light.toFixed(2))} mm`);
  const cards = items.filter((item) => item.kind === "path" && item.name?.startsWith("radius-gauge"));
  expect(cards).toHaveLength(model.gauges.radii.length);
});

it("a knife without anything to gauge has no such sheet", () => {
  expect(
    gaugesContents({ ...head, gauges: { handle: [], bevels: [], radii: [], flatFaces: [], edges: [] } }),
  ).toEqual([]);
});

it("nothing overlaps on the sheets of 60 random knives, on one page and packed on A4", () => {
  for (let index = 0; index < 60; index++) {
    const { name, knife, head: words } = handledKnife(index);
    const contents = gaugesContents({ ...words, gauges: gaugeSet(knife) });
    if (contents.length === 0) continue;
    const one = layOutSheet(contents, { kind: "smallest", papers: papersFor(words.units) });
    const packed = layOutSheet(contents, { kind: "paper", paper: paperNamed("A4") });
    for (const page of [...one, ...packed]) expect(checkLayout(page), name).toEqual([]);
  }
});
