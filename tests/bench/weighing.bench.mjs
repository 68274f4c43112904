// Time of one weighing at equal error, in one process: this kernel on its built files, plain triangles in TypeScript,
// triangle meshes by manifold-3d, solids by OpenCascade. `npm run bench`.
//
// The others get their best case: the points that they are built from are sampled beforehand and not timed, only what
// is done with them (making the triangles and summing them; building, booleans, drilling, measuring the volume), and they
// are as coarse as the error allows. Plain triangles are the fair rival: no library, no booleans, holes in closed form,
// volume and first moments only. The kernel is timed for the volume
// with all first and second moments, asked for that error, from a body that is new every time; its other columns are what a
// whole weighing takes: the surface and the parts of the handle as well, and building and checking the knife from its description.
import { loadReference } from "./load-reference.mjs";

const { makeKnife, measureBody, weighKnife } = await import("@scantling/geometry");
const {
  referenceKnives,
  referenceBody,
  integrateBody,
  steelOf,
  trianglePoints,
  weighTriangles,
  loadManifold,
  meshParts,
  weighMesh,
  loadOpenCascade,
  solidParts,
  weighSolids,
} = await loadReference("blades", "body", "integrate", "cutters", "triangle-mesh", "mesh", "solids");

const SEED = 20_261;
const ERRORS = [1e-3, 1e-6, 1e-9];

/** Seeded numbers between 0 and 1: mulberry32. */
function randomFrom(seed) {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
}

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

/** Milliseconds of a run: the median of `rounds`, after as many to warm up; results are summed so that none is left out. */
function time(run, rounds) {
  let sink = 0;
  const samples = [];
  for (let i = -rounds; i < rounds; i++) {
    const start = performance.now();
    sink += run(i);
    const taken = performance.now() - start;
    if (i >= 0) samples.push(taken);
  }
  return { ms: median(samples), sink };
}

const errorOf = (weigh, parts, exact) => Math.abs(weigh.run(parts) / exact - 1);

/** The coarsest of the settings whose error is small enough, or undefined where the library does not get there. */
function coarsest({ settings, ...weigh }, exact, error) {
  for (const setting of settings) {
    const parts = weigh.sample(setting);
    if (errorOf(weigh, parts, exact) <= error) return parts;
  }
  return undefined;
}

/** The same for a mesh, whose error falls with the square of its fineness: straight to the one that is fine enough. */
function coarsestMesh({ finest, ...weigh }, exact, error) {
  const first = 12;
  let fineness = Math.max(
    3,
    Math.floor(first * Math.sqrt(errorOf(weigh, weigh.sample(first), exact) / error)),
  );
  for (; fineness <= finest; fineness = Math.ceil(fineness * 1.03)) {
    const parts = weigh.sample(fineness);
    if (errorOf(weigh, parts, exact) <= error) return parts;
  }
  return undefined;
}

const [wasm, oc] = await Promise.all([loadManifold(), loadOpenCascade()]);
const rows = [];
let checksum = 0;

for (const { name, spec, outline } of referenceKnives()) {
  const body = referenceBody(spec, outline);
  const exact = integrateBody(body, 1e-10).volume;
  const random = randomFrom(SEED);
  // Every weighing is of a slightly different knife, so that nothing can be remembered from the last one.
  const knives = Array.from({ length: 200 }, () => {
    const factor = 1 + (random() - 0.5) * 1e-3;
    const thickness = spec.blade.thickness.map(({ at, is }) => ({ at, is: is * factor }));
    return { ...spec, blade: { ...spec.blade, thickness } };
  });
  const pick = (list, i) => list[(i + list.length) % list.length];
  const whole = time((i) => weighKnife(makeKnife(pick(knives, i))).steel.volume, 100);
  const bodies = knives.map((one) => makeKnife(one).body("finished"));
  const first = makeKnife(spec).body("finished");
  const perError = ERRORS.map((error) => ({
    error,
    own: Math.abs(measureBody(first, error).value[0] / exact - 1),
    moments: time((i) => measureBody(pick(bodies, i), error).value[0], 100),
  }));
  const weighed = knives.map((one) => makeKnife(one));
  const weighing = time((i) => weighKnife(pick(weighed, i)).steel.volume, 100);
  checksum += whole.sink + weighing.sink;

  const steel = steelOf(spec, outline);
  const triangles = {
    sample: (fineness) => trianglePoints(steel, fineness),
    run: (points) => weighTriangles(points).volume,
    finest: 600,
  };
  const mesh = {
    sample: (fineness) => meshParts(steel, fineness),
    run: (parts) => weighMesh(wasm, parts).volume,
    finest: 200,
  };
  const solids = {
    sample: (degree) => solidParts(steel, degree),
    run: (parts) => weighSolids(oc, parts).volume,
    settings: [3, 4, 5, 6, 7, 8, 9, 10, 12, 14, 16],
  };
  for (const { error, own, moments } of perError) {
    if (own > error) throw new Error(`${name}: the kernel itself is off by ${own} where ${error} was asked`);
    checksum += moments.sink;
    const row = { name, error, moments: moments.ms, weighing: weighing.ms, whole: whole.ms };
    for (const [key, weigh, find, rounds] of [
      ["triangles", triangles, coarsestMesh, 30],
      ["mesh", mesh, coarsestMesh, 7],
      ["solids", solids, coarsest, 3],
    ]) {
      const parts = find(weigh, exact, error);
      if (!parts) continue;
      const timed = time(() => weigh.run(parts), error > 1e-5 ? rounds : 2);
      checksum += timed.sink;
      row[key] = timed.ms;
    }
    rows.push(row);
  }
}

const number = (ms) => (ms < 1 ? `${(ms * 1000).toFixed(0)} µs` : `${ms.toFixed(ms < 100 ? 1 : 0)} ms`);
const times = (ratio) => `${ratio < 10 ? ratio.toPrecision(2) : Math.round(ratio)}×`;
const against = (ms, own) => (ms === undefined ? "not reached" : `${number(ms)} (${times(ms / own)})`);
const cells = rows.map((row) => [
  row.name,
  row.error.toExponential(0),
  number(row.moments),
  number(row.weighing),
  number(row.whole),
  against(row.triangles, row.moments),
  against(row.mesh, row.moments),
  against(row.solids, row.moments),
]);
const head = [
  "knife",
  "error",
  "moments",
  "weigh",
  "make and weigh",
  "plain triangles",
  "mesh, manifold-3d",
  "solids, OpenCascade",
];
const widths = head.map((title, i) => Math.max(title.length, ...cells.map((row) => row[i].length)));
const print = (row) =>
  console.log(row.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]) : cell.padStart(widths[i]))).join("  "));
console.log(
  `seed ${SEED}; warm medians; Node ${process.version}; in brackets: how many times the kernel's moments\n`,
);
print(head);
cells.forEach(print);
console.log(`\nchecksum ${checksum.toFixed(3)}`);
