// How the time of one weighing grows: with the segments of the outline, and with holes. On the built files, in one process,
// `npm run bench`. What counts are the ratios: ten times the segments should take no more than ten times as long.
const { makeKnife, measureBody } = await import("@scantling/geometry");

const ROUNDS = 60;
const HOLES = 1000;

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

/** Microseconds of one weighing to 1e-9: the median, after as many rounds to warm up. */
function time(body, rounds = ROUNDS) {
  const samples = [];
  let sink = 0;
  for (let i = -rounds; i < rounds; i++) {
    const start = performance.now();
    sink += measureBody(body, 1e-9).value[0];
    if (i >= 0) samples.push((performance.now() - start) * 1000);
  }
  if (!(sink > 0)) throw new Error("nothing was weighed");
  return median(samples);
}

/** A gently bowed line from one point to another, in so many straight segments. */
const bowed = (from, to, bow, segments) =>
  Array.from({ length: segments }, (_, i) => {
    const t = (i + 1) / segments;
    const x = from.x + (to.x - from.x) * t;
    const y = from.y + (to.y - from.y) * t + bow * 4 * t * (1 - t);
    return `L${x} ${y}`;
  }).join("");

/** One cubic of the edge cut into so many, all of them parts of the same curve. */
function cutCubic(points, segments) {
  const at = (a, b, t) => ({ x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t });
  let [p, q, r, s] = points;
  let path = "";
  for (let left = segments; left >= 1; left--) {
    const t = 1 / left;
    const [a, b, c] = [at(p, q, t), at(q, r, t), at(r, s, t)];
    const [d, e] = [at(a, b, t), at(b, c, t)];
    const f = at(d, e, t);
    path += `C${a.x} ${a.y} ${d.x} ${d.y} ${f.x} ${f.y}`;
    [p, q, r] = [f, e, c];
  }
  return path;
}

const knife = (edge, spine, holes = []) =>
  makeKnife({
    steel: { name: "1084" },
    blade: {
      outline: {
        runs: {
          edge,
          spine,
          tangTop: "L-900 30",
          butt: "L-900 2",
          tangBottom: "L-10 2",
          heelFace: "L0 2 L0 0",
        },
      },
      thickness: [
        { at: { kind: "heel" }, is: 4 },
        { at: { kind: "tip" }, is: 2 },
      ],
      bevel: { form: "flat", height: 20, edgeThickness: 0.4 },
      edgeAngle: 0.3,
    },
    tang: { form: "full", buttThickness: 3, holes },
  }).body("finished");

const belly = [
  { x: 90, y: 0 },
  { x: 120, y: 0 },
  { x: 150, y: 8 },
  { x: 170, y: 22 },
];
const tip = { x: 170, y: 22 };
const plain = "M0 0L90 0C120 0 150 8 170 22";

function growth(title, make, counts, rounds) {
  const times = counts.map((count) => time(make(count), rounds));
  console.log(`\n${title}`);
  counts.forEach((count, i) => {
    const ratio = i === 0 ? "" : `  ${(times[i] / times[i - 1]).toFixed(1)}× for 10×`;
    console.log(`${String(count).padStart(6)}  ${times[i].toFixed(0).padStart(7)} µs${ratio}`);
  });
}

console.log("one weighing to 1e-9, warm medians");
growth("segments of the spine", (n) => knife(plain, bowed(tip, { x: -10, y: 30 }, 4, n)), [10, 100, 1000]);
growth(
  "segments of a straight edge",
  (n) => knife(`M0 0${bowed({ x: 0, y: 0 }, { x: 90, y: 0 }, 0, n)}C120 0 150 8 170 22`, "L-10 30"),
  [10, 100, 1000],
);
growth(
  "cubics of the belly, all of one curve",
  (n) => knife(`M0 0L90 0${cutCubic(belly, n)}`, "L-10 30"),
  [1, 10, 100],
);

growth(
  "segments of a belly traced in straight strokes",
  (n) => knife(`M0 0L40 0${bowed({ x: 40, y: 0 }, tip, -5, n)}`, "L-10 30"),
  [4, 40, 400],
  6,
);

const rows = 5;
const holes = Array.from({ length: HOLES }, (_, i) => ({
  kind: "lightening",
  at: { x: -20 - 4 * Math.floor(i / rows), y: 6 + 5 * (i % rows) },
  diameter: 2,
}));
const without = time(knife(plain, "L-10 30"));
const withHoles = time(knife(plain, "L-10 30", holes));
console.log(
  `\n${HOLES} holes in the tang: ${(withHoles - without).toFixed(0)} µs more than ${without.toFixed(0)} µs`,
);
