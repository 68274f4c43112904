// Time of one full search for a rack of 100 entries, every one solid and as stacks of two to twelve both ways up, ranked and with
// all ledgers, on the built files: `npm run bench`. 100 sections; 25 sections in four lengths
// each; one section in 100 lengths.
const { DEFAULT_SHOP, ledgerBodies, makeKnife, planStock } = await import("@scantling/geometry");

const ENTRIES = 100;
const ROUNDS = 40;
const MOST_MS = 50;

/** Our own invented chopper. */
const knife = makeKnife({
  steel: { name: "1084" },
  blade: {
    outline: { family: "vegetable", edgeLength: 165, heelHeight: 54, straightEdge: 100, tipHeight: 50 },
    ricasso: 6,
    thickness: [
      { at: { kind: "heel" }, is: 3.2 },
      { at: { kind: "tip" }, is: 2.2 },
    ],
    bevel: { form: "flat", height: 28, edgeThickness: 0.3 },
    edgeAngle: 0.26,
  },
  tang: { form: "full", length: 110, heights: { front: 24, middle: 22, butt: 26 } },
});

/** Sections from 20 × 3 up, each in so many lengths: a few whole bars, and leftovers. */
function rackOf(lengths) {
  return Array.from({ length: ENTRIES }, (_, i) => {
    const section = i % (ENTRIES / lengths);
    const piece = Math.floor(i / (ENTRIES / lengths));
    return {
      name: `bar ${section}`,
      width: 20 + 5 * (section % 10),
      thickness: 3 + Math.floor(section / 10),
      length: piece === 0 ? 1000 : 90 + ((37 * piece) % 610),
      count: piece === 0 ? 3 : 1,
      pricePerKg: 8 + (section % 7) / 10,
    };
  });
}

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
const bodies = ledgerBodies(knife);
let tooSlow = false;

for (const lengths of [1, 4, ENTRIES]) {
  const shop = { ...DEFAULT_SHOP, rack: rackOf(lengths) };
  const begun = performance.now();
  let report = planStock(bodies, shop, knife.forging);
  const cold = performance.now() - begun;
  const samples = [];
  for (let i = -ROUNDS; i < ROUNDS; i++) {
    const start = performance.now();
    report = planStock(bodies, shop, knife.forging);
    if (i >= 0) samples.push(performance.now() - start);
  }
  if (report.plans.length === 0) throw new Error("nothing was planned");
  const warm = median(samples);
  tooSlow ||= warm > MOST_MS;
  console.log(
    `rack of ${ENTRIES} entries, sections × lengths ${ENTRIES / lengths} × ${lengths}: ${report.considered} stacks, ` +
      `${report.plans.length} plans; ${warm.toFixed(1)} ms warm, ${cold.toFixed(1)} ms the first time`,
  );
}
console.log(`${tooSlow ? "TOO SLOW: " : ""}a full search is to take less than ${MOST_MS} ms`);
if (tooSlow) process.exitCode = 1;
