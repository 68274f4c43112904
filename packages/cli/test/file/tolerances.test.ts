import { describe, expect, it } from "vitest";
import { readKnifeFile } from "../../src/file/index.js";
import { inputWords } from "../../src/report/input-words.js";
import { measured } from "../support/sample-job.js";

/** Text of a number in a file, and how far off it may be. */
type Sized = readonly [value: string, within: string];

const mm = (value: number): Sized => [`${value} mm`, "0.01 mm"];
const share = (value: number): Sized => [`${value} %`, "0.1 %"];
const degrees = (value: number): Sized => [`${value} deg`, "0.1 deg"];
const density = (value: number): Sized => [`${value} g/cm3`, "0.01 g/cm3"];

/** Every key of a full tang that takes a number, and its path in the knife's description where that differs. */
const SLABS = {
  scantling: 1,
  units: "mm",
  steel: { name: "1084", density: density(7.84) },
  blade: {
    outline: {
      family: "drop-point",
      edgeLength: mm(115),
      heelHeight: mm(31),
      straightEdge: mm(45),
      tipHeight: mm(19),
      spineBreak: mm(62),
    },
    ricasso: mm(12),
    thickness: [
      { at: "heel", is: mm(4) },
      { at: mm(60), is: mm(3.2) },
      { at: share(90), is: mm(1.6) },
    ],
    flankTaper: [
      { at: "heel", is: mm(0.2) },
      { at: share(80), is: mm(0.1) },
    ],
    plunge: { at: mm(2), length: mm(8) },
    bevel: {
      form: "convex",
      height: [
        { at: "heel", is: mm(18) },
        { at: mm(100), is: mm(15) },
      ],
      crown: mm(0.05),
      edgeThickness: mm(0.5),
      left: { height: mm(16), crown: share(2) },
      apex: ["0.1", "0.02"] as Sized,
    },
    edgeAngle: { right: degrees(17), left: degrees(16) },
    microbevel: { height: mm(0.3), angle: degrees(23) },
    swedge: { from: share(60), to: mm(105), angle: degrees(34), thickness: mm(0.8) },
    easedSpine: mm(0.5),
    choil: { radius: mm(4) },
    fullers: [{ from: [mm(20), mm(24)], to: [mm(60), mm(24)], radius: mm(5), depth: mm(0.5) }],
    holes: [{ kind: "hanging", at: [mm(70), mm(15)], to: [mm(74), mm(16)], diameter: mm(4) }],
  },
  tang: {
    form: "full",
    length: mm(115),
    heights: { front: mm(24), middle: mm(22), butt: mm(26) },
    drop: mm(1),
    thickness: [
      { at: "handle", is: mm(4) },
      { at: mm(50), is: mm(3.6) },
      { at: "butt", is: mm(3) },
    ],
    holes: [{ kind: "pin", at: [mm(-40), mm(19)], diameter: mm(6.2), pin: mm(6) }],
  },
  handle: {
    slabs: {
      material: { name: "black walnut", moisture: share(9) },
      thickness: [
        { at: "handle", is: mm(8) },
        { at: share(50), is: mm(9) },
      ],
      edgeRadius: mm(3),
    },
    liners: { material: { name: "G10", density: density(1.85) }, thickness: mm(0.8) },
    pins: { material: { name: "brass", density: density(8.5) } },
    bolsters: [
      { material: "brass", at: mm(-12), length: mm(10), height: mm(27), width: mm(20), centre: mm(19) },
    ],
    parts: [{ name: "bead", mass: ["4 g", "0.1 g"] as Sized, at: [mm(-140), mm(20)] }],
  },
  allowances: { face: mm(0.5) },
} as const;

/** The same of a hidden tang. */
const BLOCK = {
  scantling: 1,
  units: "in",
  steel: "1084",
  blade: {
    outline: { family: "vegetable", edgeLength: mm(170), heelHeight: mm(52) },
    ricasso: mm(8),
    thickness: [{ at: "heel", is: mm(3.2) }],
    bevel: {
      form: "hollow",
      wheelRadius: mm(300),
      height: mm(30),
      edgeThickness: [{ at: "heel", is: mm(0.4) }],
      right: { form: "hollow", wheelRadius: mm(280), height: mm(25) },
    },
    edgeAngle: { included: degrees(31) },
  },
  tang: { form: "hidden", length: mm(95), shoulderRadius: mm(1.5), drop: mm(18), buttThickness: mm(2.4) },
  handle: {
    block: {
      material: { name: "beech", moisture: share(10) },
      section: "rounded",
      length: mm(118),
      height: [
        { at: "handle", is: mm(26) },
        { at: mm(100), is: mm(28) },
      ],
      width: mm(21),
      cornerRadius: mm(5),
      centre: mm(26),
    },
    guard: { material: "brass", at: mm(-8), length: mm(7), height: mm(30), width: mm(18), centre: mm(26) },
    pommel: { material: "brass", at: mm(-133), length: mm(9), height: mm(26), width: mm(20) },
  },
} as const;

const isSized = (node: unknown): node is Sized =>
  Array.isArray(node) && node.length === 2 && node.every((item) => typeof item === "string");

/** The file's text, each number written as told, and how many there are. */
function written(
  tree: unknown,
  write: (sized: Sized, index: number) => string,
): { text: string; count: number } {
  let count = 0;
  const walk = (node: unknown): unknown => {
    if (isSized(node)) return write(node, count++);
    if (Array.isArray(node)) return node.map(walk);
    if (typeof node !== "object" || node === null) return node;
    return Object.fromEntries(Object.entries(node).map(([key, item]) => [key, walk(item)]));
  };
  return { text: JSON.stringify(walk(tree)), count };
}

const bare = ([value]: Sized): string => value;
const toleranced = ([value, within]: Sized): string => `${value} ± ${within}`;

describe("a tolerance after any number of a knife file", () => {
  for (const [name, tree] of [
    ["full tang", SLABS],
    ["hidden tang", BLOCK],
  ] as const) {
    const { count } = written(tree, bare);

    it(`${name}: is taken, one after the other`, () => {
      expect(readKnifeFile(written(tree, bare).text, "order.knife.json").tolerances).toEqual([]);
      for (let i = 0; i < count; i++) {
        const { text } = written(tree, (sized, index) => (index === i ? toleranced : bare)(sized));
        expect(readKnifeFile(text, "order.knife.json").tolerances).toHaveLength(1);
      }
    });

    it(`${name}: is an input of the interval, in words`, async () => {
      const { text } = written(tree, toleranced);
      const { job, interval } = await measured(text);
      const inputs = interval.contributions.map(({ input }) => input);
      const given = job.knife.tolerances.map(({ path }) => path);
      expect(given).toHaveLength(count);
      expect(new Set(given).size).toBe(count);
      for (const path of given) {
        // What is still on the steel at earlier stages is no part of the finished knife.
        if (path.startsWith("allowances.")) expect(inputs).not.toContain(path);
        else expect(inputs).toContain(path);
      }
      for (const input of inputs) {
        const words = inputWords(input, job.spec);
        expect(words, input).not.toBe(input);
        expect(words).not.toMatch(/[[\]]|\w\.\w|undefined/u);
        expect(words.length).toBeLessThan(60);
      }
      const all = inputs.map((input) => inputWords(input, job.spec));
      // Two numbers of a point are one place to people; nothing else shares its words.
      const points = all.filter((words) => /^place of (?:hole|the 1st fuller|bead)/u.test(words));
      expect(new Set(all).size).toBe(all.length - points.length + new Set(points).size);
    });
  }
});
