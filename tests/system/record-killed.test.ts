import { watch } from "node:fs";
import { setTimeout as pause } from "node:timers/promises";
import { afterEach, beforeEach, expect, test } from "vitest";
import { Chance } from "../reference/random/chance.js";
import { isConfirmed, RECORD, RecordFolder, type Run, storeNote } from "./record-runs.js";

// What a smith was told is stored is there, whatever happens to the command: it is killed over and over (SIGKILL, which
// nothing can catch), and the file looked at each time.

let folder: RecordFolder;
beforeEach(() => {
  folder = new RecordFolder();
});
afterEach(() => folder.remove());

/** Kills at any time, and at the moment of storing. */
const [KILLS, AIMED] = [60, 30];
/** A process is started for each kill: on a busy machine that takes its time, ms. */
const PATIENCE = 900_000;

/** What must hold after every kill. */
async function lookAfter(run: Run, note: string, before: string, confirmed: string[]): Promise<void> {
  const { out } = await run.ended;
  if (isConfirmed(out)) confirmed.push(note);
  expect(folder.text().startsWith(before)).toBe(true);
  // Every note that was confirmed, each once, in the order of confirming.
  expect(folder.notes().filter((each) => confirmed.includes(each))).toEqual(confirmed);
}

/** The folder as the next command that is left alone leaves it: no lock, nothing half done. */
async function goOn(confirmed: string[]): Promise<void> {
  const last = await storeNote(folder, "left alone").ended;
  expect(last.err).toBe("");
  expect(last.code).toBe(0);
  expect(folder.names()).toEqual([RECORD]);
  expect(folder.notes().filter((note) => confirmed.includes(note))).toEqual(confirmed);
  expect(folder.notes().at(-1)).toBe("left alone");
}

test("killed at any time after its start, it loses nothing that it confirmed and leaves a file that is read", {
  timeout: PATIENCE,
}, async () => {
  const begin = performance.now();
  await storeNote(folder, "how long it takes").ended;
  const usual = performance.now() - begin;

  const random = new Chance(60);
  const confirmed: string[] = [];
  let killed = 0;
  for (let kill = 0; kill < KILLS; kill++) {
    const note = `note ${kill}`;
    const before = folder.text();
    const run = storeNote(folder, note);
    // From its very start to some time after it is usually done.
    await Promise.race([pause(random.between(0, 1.3 * usual)), run.ended]);
    if (run.child.kill("SIGKILL")) killed++;
    await lookAfter(run, note, before, confirmed);
  }
  expect(killed).toBeGreaterThan(0);
  await goOn(confirmed);
});

test("killed while it stores, it does neither", { timeout: PATIENCE }, async () => {
  const random = new Chance(61);
  const confirmed: string[] = [];
  for (let kill = 0; kill < AIMED; kill++) {
    const note = `note ${kill}`;
    const before = folder.text();
    const run = storeNote(folder, note);
    // The first name that appears in the folder is the beginning of its lock.
    const delay = random.between(0, 12);
    const watcher = watch(folder.path, () => {
      watcher.close();
      void pause(delay).then(() => run.child.kill("SIGKILL"));
    });
    await lookAfter(run, note, before, confirmed);
    watcher.close();
  }
  expect(confirmed.length).toBeLessThan(AIMED);
  await goOn(confirmed);
});

test("of many at once none loses another's entry, though some of them are killed", {
  timeout: PATIENCE,
}, async () => {
  const random = new Chance(62);
  const survivors: string[] = [];
  for (let round = 0; round < 4; round++) {
    const runs = Array.from({ length: 6 }, (_, index) => {
      const note = `note ${round}.${index}`;
      return { note, run: storeNote(folder, note), dies: index % 3 === 2 };
    });
    for (const { run, dies } of runs)
      if (dies) void pause(random.between(0, 1000)).then(() => run.child.kill("SIGKILL"));
    for (const { note, run, dies } of runs) {
      const { code, out, err } = await run.ended;
      if (dies) {
        if (isConfirmed(out)) survivors.push(note);
        continue;
      }
      expect(err).toBe("");
      expect(code).toBe(0);
      survivors.push(note);
    }
    const notes = folder.notes();
    for (const note of survivors) expect(notes.filter((each) => each === note)).toEqual([note]);
  }
  await goOn([]);
});
