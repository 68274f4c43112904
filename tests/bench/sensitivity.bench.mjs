// Time of one interval with 40 uncertain inputs, each moved to its limits and weighed again, on the built files. Beside it, what
// 81 weighings of the same knife take that know nothing of one another: itself and two for each input. `npm run bench`.
const { makeKnife, weighInterval, weighKnife } = await import("@scantling/geometry");

const INPUTS = 40;
const ROUNDS = 40;
const MOST_MS = 30;

const heel = (is) => ({ at: { kind: "heel" }, is });
const tip = (is) => ({ at: { kind: "tip" }, is });
const front = (is) => ({ at: { kind: "handle" }, is });
const butt = (is) => ({ at: { kind: "butt" }, is });

/** Our own invented knives: every kind of handle, curved and straight edges, both kinds of bevel line. */
const KNIVES = {
  "nakiri, hidden tang, oval handle": {
    steel: { name: "26C3", density: 0.0078 },
    blade: {
      outline: { family: "vegetable", edgeLength: 165, heelHeight: 54, straightEdge: 100, tipHeight: 50 },
      ricasso: 6,
      thickness: [heel(3.2), { at: { kind: "distance", mm: 90 }, is: 2.8 }, tip(2.2)],
      flankTaper: 0.1,
      bevel: { form: "flat", height: [heel(28), tip(26)], edgeThickness: [heel(0.3), tip(0.25)] },
      edgeAngle: 0.26,
      microbevel: { height: 0.3, angle: 0.35 },
    },
    tang: {
      form: "hidden",
      length: 100,
      heights: { front: 14, middle: 11, butt: 8 },
      drop: 18,
      shoulderRadius: 1.5,
      thickness: [front(3.2), butt(2.2)],
    },
    handle: {
      block: {
        material: { name: "beech", moisture: 0.1 },
        section: "oval",
        length: 126,
        height: [front(25), butt(27)],
        width: [front(20), butt(21)],
      },
      guard: { material: { name: "brass" }, at: -6, length: 6, height: 28, width: 18, section: "oval" },
      parts: [{ name: "pin and glue", mass: 4, at: { x: -60, y: 25 } }],
    },
  },
  "chef's, convex, hidden tang, octagonal handle": {
    steel: { name: "1084" },
    blade: {
      outline: { family: "chefs", edgeLength: 210, heelHeight: 48, straightEdge: 52, tipHeight: 32 },
      ricasso: 6,
      thickness: [heel(3), { at: { kind: "distance", mm: 140 }, is: 2.2 }, tip(1)],
      bevel: {
        form: "convex",
        height: "full",
        crown: { mm: 0.12 },
        edgeThickness: [heel(0.3), tip(0.25)],
      },
      edgeAngle: { right: 0.25, left: 0.22 },
    },
    tang: {
      form: "hidden",
      length: 100,
      heights: { front: 18, middle: 13, butt: 8 },
      drop: 14,
      shoulderRadius: 2,
      buttThickness: 2.2,
    },
    handle: {
      block: {
        material: { name: "European ash", moisture: 0.1 },
        section: "octagonal",
        length: 125,
        height: [front(24), butt(27)],
        width: [front(19), butt(22)],
        cornerRadius: 5,
      },
      guard: { material: { name: "brass" }, at: -6, length: 8, height: 30, width: 16, section: "oval" },
      pommel: { material: { name: "brass" }, at: -139, length: 6, height: 27, width: 22 },
    },
  },
  "drop point, full tang, slabs, bolsters, pins": {
    steel: { name: "80CrV2" },
    blade: {
      outline: {
        family: "drop-point",
        edgeLength: 110,
        heelHeight: 30,
        straightEdge: 50,
        tipHeight: 18,
        spineBreak: 45,
      },
      ricasso: 16,
      thickness: [heel(4.2), tip(2)],
      flankTaper: 0.1,
      bevel: { form: "flat", height: [heel(17), tip(15)], edgeThickness: 0.5 },
      edgeAngle: 0.32,
      plunge: { at: 1, length: 6 },
      choil: { radius: 4 },
    },
    tang: {
      form: "full",
      length: 112,
      heights: { front: 24, middle: 22, butt: 25 },
      buttThickness: 3.2,
      holes: [
        { kind: "pin", at: { x: -45, y: 18 }, diameter: 6.2, pin: 6 },
        { kind: "pin", at: { x: -105, y: 18 }, diameter: 6.2, pin: 6 },
      ],
    },
    handle: {
      slabs: { material: { name: "black walnut" }, thickness: [front(8), butt(9)], edgeRadius: 3 },
      liners: { material: { name: "G10" }, thickness: 0.8 },
      pins: { material: { name: "brass" } },
      bolsters: [{ material: { name: "brass" }, at: -16, length: 12, height: 26, width: 20 }],
    },
  },
};

/** The path of every number of a description. */
function numberPaths(node, path = "") {
  if (typeof node === "number") return [{ path, value: node }];
  if (Array.isArray(node)) return node.flatMap((item, i) => numberPaths(item, `${path}[${i}]`));
  if (typeof node !== "object" || node === null) return [];
  return Object.entries(node).flatMap(([key, item]) =>
    numberPaths(item, path === "" ? key : `${path}.${key}`),
  );
}

/** Tolerances of 1 % on as many sizes, in the order of the file, as make 40 inputs with the defaults. Heights of holes move nothing. */
function fortyInputs(spec) {
  const sizes = numberPaths(spec).filter(({ path }) => !/\.at\.y$/u.test(path));
  const all = sizes.map(({ path, value }) => ({
    path,
    plus: 0.01 * Math.abs(value),
    minus: 0.01 * Math.abs(value),
  }));
  const count = (given) => weighInterval(spec, given).contributions.length;
  for (let i = 0; i <= all.length; i++) {
    const given = all.slice(0, i);
    if (count(given) === INPUTS) return given;
  }
  throw new Error(`there is no way to ${INPUTS} inputs, only to ${count(all)}`);
}

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

/** Milliseconds of a run, the median, after as many to warm up. */
function time(run) {
  const samples = [];
  for (let i = -ROUNDS; i < ROUNDS; i++) {
    const start = performance.now();
    run();
    if (i >= 0) samples.push(performance.now() - start);
  }
  return median(samples);
}

let slowest = 0;
for (const [name, spec] of Object.entries(KNIVES)) {
  makeKnife(spec);
  const given = fortyInputs(spec);
  let width = 0;
  const ms = time(() => {
    const [low, high] = weighInterval(spec, given).massInterval;
    width = high - low;
  });
  const apart = time(() => {
    for (let i = 0; i <= 2 * INPUTS; i++) weighKnife(makeKnife(spec));
  });
  slowest = Math.max(slowest, ms);
  console.log(
    `${name.padEnd(46)} ${ms.toFixed(1).padStart(6)} ms   81 weighings apart ${apart.toFixed(0).padStart(5)} ms   mass ± ${(width / 2).toFixed(1)} g`,
  );
}
console.log(`\n${INPUTS} inputs, warm medians, Node ${process.version}; asked for: under ${MOST_MS} ms`);
if (slowest > MOST_MS) console.log(`the slowest takes ${slowest.toFixed(1)} ms: too long`);
