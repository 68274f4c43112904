import { describe, expect, test } from "vitest";
import { forgedOutline } from "../../../src/blade/forged-outline.js";
import { makeKnife } from "../../../src/blade/knife.js";
import { ledgerBodies } from "../../../src/blade/ledger-bodies.js";
import { crossingsAtX } from "../../../src/plane/at-x.js";
import { signedArea } from "../../../src/plane/measure.js";
import { validateOutline } from "../../../src/plane/validate.js";
import { DEFAULT_SHOP } from "../../../src/stock/defaults.js";
import { type FlatSection, flatPreform, pointDrop } from "../../../src/stock/forge/flat-preform.js";
import { type CardStack, forgeCard } from "../../../src/stock/forge/forge-card.js";
import { forgedProfile } from "../../../src/stock/forge/forged-profile.js";
import { makePreform, preformAt } from "../../../src/stock/forge/preform.js";
import { FULL, HIDDEN } from "./forge-knife.js";

const STACK: CardStack = { bars: 4, width: 50, thickness: 6, cutLength: 160, layers: "flat" };

/** Volume as the card counts it: areas straight between sections. */
const volumeOf = (sections: readonly FlatSection[]): number => {
  const area = ({ top, bottom, thickness }: FlatSection): number => (top - bottom) * thickness;
  return sections.slice(1).reduce((sum, b, i) => {
    const a = sections[i] as FlatSection;
    return sum + ((b.along - a.along) * (area(a) + area(b))) / 2;
  }, 0);
};

describe.each([
  ["a hidden tang", HIDDEN],
  ["a full tang", FULL],
])("the flat preform of a blade with %s", (_, spec) => {
  const knife = makeKnife(spec);
  const bodies = ledgerBodies(knife);
  const profile = forgedProfile(knife);
  const { preform, tang } = forgeCard(knife, bodies, DEFAULT_SHOP, STACK);
  const flat = flatPreform(profile, preform);

  test("holds the steel of the forged blade", () => {
    const { finished, sharpening, finishGrinding, drilling, bevelGrinding, tangGrinding } = bodies;
    const { faceGrinding, profileTrimming } = bodies;
    const ground = drilling + bevelGrinding + tangGrinding + faceGrinding + profileTrimming;
    const forged = finished + sharpening + finishGrinding + ground;
    // The card's sections have areas straight between them; the forged volume is the integral itself. What the hardening
    // heat burns off later is in no section.
    expect(Math.abs(volumeOf(flat.sections) / forged - 1)).toBeLessThan(2e-4);
  });

  test("is a sound outline through the card's sections, straight between them", () => {
    expect(validateOutline(flat.outline)).toEqual([]);
    const strips = flat.sections.slice(1).reduce((sum, b, i) => {
      const a = flat.sections[i] as FlatSection;
      return sum + ((b.along - a.along) * (a.top - a.bottom + b.top - b.bottom)) / 2;
    }, 0);
    expect(signedArea(flat.outline)).toBeCloseTo(strips, 3);
    for (const at of [0.3, 11, 40, 77.7]) {
      const station = preformAt(preform, at);
      const next = flat.sections.findIndex(({ along }) => along >= flat.shoulder + at);
      const [a, b] = [flat.sections[next - 1], flat.sections[next]];
      const u = a === undefined || b === undefined ? 0 : (flat.shoulder + at - a.along) / (b.along - a.along);
      const [low, high] = [a, b].map((section) => (section === undefined ? 0 : section.top - section.bottom));
      const height = (low ?? 0) * (1 - u) + (high ?? 0) * u;
      expect(height).toBeCloseTo(station.height, 9);
    }
  });

  test("has the handle of the card behind the shoulder, and ends where the card's preform ends", () => {
    expect(flat.shoulder).toBeCloseTo(tang.length, 9);
    expect(flat.length).toBeCloseTo(tang.length + (preform.at(-1)?.at ?? 0), 9);
    const [butt] = flat.sections;
    expect((butt?.top ?? 0) - (butt?.bottom ?? 0)).toBeCloseTo(tang.butt.height, 9);
  });
});

test.each([
  ["full", FULL],
  ["hidden", HIDDEN],
])("a %s tang lies below the spine where the forged outline has it, front to butt", (_, spec) => {
  const knife = makeKnife(spec);
  const profile = forgedProfile(knife);
  const { preform } = forgeCard(knife, ledgerBodies(knife), DEFAULT_SHOP, STACK);
  const { sections, shoulder } = flatPreform(profile, preform);
  const forged = forgedOutline(knife.outline, knife.allowances);
  const highest = (x: number): number =>
    Math.max(...crossingsAtX(forged.path, x).map(({ point }) => point.y));
  const lowest = (x: number): number => Math.min(...crossingsAtX(forged.path, x).map(({ point }) => point.y));
  const heel = highest(1e-3);
  const behind = sections.filter(({ along }) => along > 10 && along < shoulder - 8);
  expect(behind.length).toBeGreaterThan(50);
  for (const { along, top, bottom } of behind) {
    const x = profile.shoulder - shoulder + along;
    // The forged outline is offset square to itself, the card's sections upright.
    expect(Math.abs(highest(x) - heel - top)).toBeLessThan(0.05);
    expect(Math.abs(lowest(x) - heel - bottom)).toBeLessThan(0.05);
  }
});

test("the spine side is that of the forged blade, its end as low as the finished point", () => {
  const knife = makeKnife(FULL);
  const profile = forgedProfile(knife);
  const { preform, pointDrop: drop } = forgeCard(knife, ledgerBodies(knife), DEFAULT_SHOP, STACK);
  const { sections } = flatPreform(profile, preform);
  const spine = (x: number): number =>
    Math.max(...crossingsAtX(knife.outline.path, x).map(({ point }) => point.y));
  for (const { x, at } of preform.filter((station) => station.x > 1 && station.x < 150)) {
    const section = sections.find(
      ({ along }) => Math.abs(along - (profile.shoulder - (profile.stations[0]?.x ?? 0)) - at) < 1e-9,
    );
    expect(section?.top).toBeCloseTo(spine(x) - spine(1e-6), 6);
  }
  expect(sections.at(-1)?.top).toBeCloseTo(-drop, 9);
  const end = Math.max(knife.outline.runs.edge.at(-1)?.to.y ?? 0, knife.outline.runs.spine[0]?.from.y ?? 0);
  expect(drop).toBeCloseTo(spine(1e-6) - end, 5);
  expect(pointDrop(profile)).toBe(drop);
});

test("a hidden tang that begins right at the heel, lower than the spine, does not lower the heel that the point is held against", () => {
  const { ricasso: _, ...blade } = HIDDEN.blade;
  const knife = makeKnife({ ...HIDDEN, blade });
  const profile = forgedProfile(knife);
  const spine = (x: number): number =>
    Math.max(...crossingsAtX(knife.outline.path, x).map(({ point }) => point.y));
  // The step that would have been halved.
  expect(spine(1e-5) - spine(-1e-5)).toBeGreaterThan(2);
  const end = Math.max(knife.outline.runs.edge.at(-1)?.to.y ?? 0, knife.outline.runs.spine[0]?.from.y ?? 0);
  expect(pointDrop(profile)).toBeCloseTo(spine(1e-5) - end, 4);
  const { preform } = forgeCard(knife, ledgerBodies(knife), DEFAULT_SHOP, STACK);
  const { sections } = flatPreform(profile, preform);
  // The line that the drop is told from runs along the heel's own spine side.
  expect(Math.max(...sections.map(({ top }) => top))).toBeCloseTo(0, 1);
  expect(sections.at(-1)?.top).toBeCloseTo(-pointDrop(profile), 9);
});

test("a bar of even section is a rectangle, and its heel lies where the ricasso ends", () => {
  const section = { height: 30, area: 150, thickness: 5 };
  const stations = [-40, -10, 0, 50].map((x) => ({ x, ...section }));
  const even = { stations, handleFront: -10, shoulder: -10, behind: stations[1], ahead: stations[1] };
  const flat = flatPreform(
    { ...even, steps: { spineSide: 0, edgeSide: 0 } } as unknown as Parameters<typeof flatPreform>[0],
    makePreform(stations.slice(1), 0.4, -10),
  );
  expect(flat).toMatchObject({ shoulder: 30, heel: 40, length: 90 });
  expect(signedArea(flat.outline)).toBeCloseTo(90 * 30, 9);
  expect(flat.outline.segments).toHaveLength(4);
});
