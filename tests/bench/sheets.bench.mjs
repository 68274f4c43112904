// The memory of the command for a blade of 1.5 m on pages of A4, as SVG and as PDF, in processes of their own; then the time of
// the sheets of the market garden's order, in one process, warm: all of them on A4 as one PDF, with the bench card and the
// pattern as SVG, and one pattern as SVG alone. On the built files: `npm run bench`.
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";

const ROOT = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
const DIST = join(ROOT, "packages", "cli", "dist");
const ROUNDS = 9;
const MOST_MS = { set: 1000, pattern: 60 };
const MOST_MB = 200;

/** Our own invented debarking blade: longer than any paper. */
const LONG_BLADE = `scantling: 1
order: { code: TY-3, title: Debarking blade for a timber yard }
units: mm
steel: "1084"
blade:
  outline: { family: straight-back, edgeLength: 1500, heelHeight: 60 }
  thickness:
    - { at: heel, is: 6 }
    - { at: tip, is: 4 }
  bevel: { form: flat, height: 30, edgeThickness: 0.6 }
  edgeAngle: 15 deg
tang: { form: full, length: 160, heights: { front: 40, middle: 36, butt: 40 } }
`;

/** The most memory that the command takes for the pages of the long blade, MB. */
function memory(format) {
  const folder = mkdtempSync(join(tmpdir(), "scantling-bench-"));
  try {
    const knife = join(folder, "blade.knife.yaml");
    writeFileSync(knife, LONG_BLADE);
    const tell = 'process.on("exit",()=>console.error("maxRSS",process.resourceUsage().maxRSS))';
    const words = ["pattern", knife, "--format", format, "--paper", "a4", "--out", join(folder, "out")];
    const { stderr, status } = spawnSync(
      process.execPath,
      ["--import", `data:text/javascript,${encodeURIComponent(tell)}`, join(DIST, "bin.js"), ...words],
      { encoding: "utf8" },
    );
    if (status !== 0) throw new Error(stderr);
    const files = readdirSync(join(folder, "out"));
    return { mb: Number(/maxRSS (\d+)/.exec(stderr)?.[1]) / 1024, files: files.length };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

// Memory first: a process counts what its parent had when it began, and this one is still small.
const bare = Number(
  execFileSync(process.execPath, ["-p", "process.resourceUsage().maxRSS"], { encoding: "utf8" }),
);
let most = 0;
for (const format of ["svg", "pdf"]) {
  const { mb, files } = memory(format);
  most = Math.max(most, mb);
  console.log(
    `a blade of 1.5 m on A4 as ${format}: ${files} ${files === 1 ? "file" : "files"}, ${mb.toFixed(0)} MB at most ` +
      `(a bare process: ${(bare / 1024).toFixed(0)} MB)`,
  );
}

const own = (path) => import(pathToFileURL(join(DIST, path)).href);
const { drawCard } = await own("commands/jobsheet.js");
const { setupOf } = await own("forge-setup.js");
const { nodeIo } = await own("io/node-io.js");
const { loadJob } = await own("load.js");
const { measure } = await own("measure.js");
const { drawSheets } = await own("sheets/draw-sheets.js");
const { SHEET_NAMES } = await own("sheets/sheet-names.js");
const { drawingFiles } = await own("sheets/write-drawings.js");
const { planBars } = await own("stock-report.js");

const FILE = join(ROOT, "examples", "market-garden", "harvest.knife.yaml");
const measured = measure(await loadJob(nodeIo(), FILE, {}));
const bars = planBars(measured);
const setup = setupOf(measured, bars);
const wishes = { states: ["finished"], cutOffset: 0 };
const spent = new Map();

/** Runs a step and adds its time to those of its name. */
async function step(name, run) {
  const start = performance.now();
  const result = await run();
  spent.set(name, (spent.get(name) ?? 0) + performance.now() - start);
  return result;
}

/** One pattern as an SVG, from the measured knife to the text of the file. */
async function onePattern() {
  const { drawn } = await drawSheets(measured, { ...wishes, sheets: ["pattern"], format: "svg" }, bars);
  const named = drawn.map(({ pages }) => ({ name: "pattern", pages }));
  return drawingFiles(named, "svg", "pattern");
}

/** The whole set, from the measured knife with its planned bars to the bytes of the files; the number of pages. */
async function wholeSet() {
  const { drawn } = await step("drawing and laying out", () =>
    drawSheets(measured, { ...wishes, sheets: SHEET_NAMES, format: "pdf", paper: "a4" }, bars),
  );
  const card = await step("bench card", () => drawCard(measured, setup, "a4"));
  const named = [
    ...drawn.map(({ suffix, pages }) => ({ name: suffix, pages })),
    { name: "card", pages: card },
  ];
  const [pdf] = await step("PDF", () => drawingFiles(named, "pdf", "all"));
  const [svg] = await step("pattern as SVG", onePattern);
  if (pdf === undefined || svg === undefined || pdf.content.length < 1e5)
    throw new Error("nothing was drawn");
  return named.reduce((sum, { pages }) => sum + pages.length, 0);
}

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

/** Medians of some rounds, after as many to warm up: elapsed time, and time of the processor, which neighbours do not lengthen; ms. */
async function warm(run, rounds) {
  const samples = [];
  for (let i = -rounds; i < rounds; i++) {
    if (i === 0) spent.clear();
    const start = performance.now();
    const before = process.cpuUsage();
    await run();
    const { user, system } = process.cpuUsage(before);
    if (i >= 0) samples.push({ elapsed: performance.now() - start, processor: (user + system) / 1000 });
  }
  const of = (name) => median(samples.map((sample) => sample[name]));
  return { elapsed: of("elapsed"), processor: of("processor") };
}

const begun = performance.now();
const pages = await wholeSet();
const first = performance.now() - begun;
const set = await warm(wholeSet, ROUNDS);
const parts = [...spent].map(([name, ms]) => `${name} ${(ms / ROUNDS).toFixed(0)} ms`).join(", ");
console.log(
  `the whole set, ${pages} pages: ${set.elapsed.toFixed(0)} ms warm (processor ${set.processor.toFixed(0)} ms), ${first.toFixed(0)} ms the first time`,
);
console.log(`  ${parts}`);
const pattern = await warm(onePattern, 10 * ROUNDS);
console.log(
  `one pattern as SVG: ${pattern.elapsed.toFixed(1)} ms warm (processor ${pattern.processor.toFixed(1)} ms)`,
);

const tooMuch = set.elapsed > MOST_MS.set || pattern.elapsed > MOST_MS.pattern || most > MOST_MB;
console.log(
  `${tooMuch ? "TOO MUCH: " : ""}the set is to take less than ${MOST_MS.set} ms, one pattern less than ${MOST_MS.pattern} ms, ` +
    `the long blade less than ${MOST_MB} MB`,
);
if (tooMuch) process.exitCode = 1;
