import { relative } from "node:path";
import { describe, expect, it } from "vitest";
import { CommandFailure } from "../../src/failure.js";
import { changeFile } from "../../src/io/change-file.js";
import type { Disk } from "../../src/io/io.js";
import { lockPathOf } from "../../src/io/lock-file.js";
import { endingDisk } from "../support/dying-disk.js";
import { type FakeIoOptions, fakeIo, MemoryDisk } from "../support/fake-io.js";

const PATH = "/shop/harvest.record.yaml";
const OLD = "entries:\n  - one\n";
const NEW = `${OLD}  - two\n`;
/** As a real one is named: the number of its process, and eight signs that no other has. */
const runOf = (processId: number): string => `${processId}-0123abcd`;
const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const show = (path: string): string => relative("/shop", path);

/** Grows the file as process 1 does, or another; `null` where there was none. */
function grow(
  disk: Disk,
  seen: string | null = OLD,
  content = NEW,
  { processId = 1, ...options }: FakeIoOptions & { readonly processId?: number } = {},
): Promise<"stored" | "changed"> {
  const world = { disk, machine: { ...fakeIo(options).machine, processId }, runId: runOf(processId) };
  return changeFile(world, { path: PATH, seen: seen === null ? undefined : bytes(seen), content }, show);
}

async function failure(promise: Promise<unknown>): Promise<CommandFailure> {
  const error = await promise.then(
    (value) => value,
    (reason: unknown) => reason,
  );
  if (!(error instanceof CommandFailure)) throw new Error(`no CommandFailure but ${String(error)}`);
  return error;
}

const withFile = (): MemoryDisk => new MemoryDisk({ [PATH]: OLD });
const withoutFile = (): MemoryDisk => new MemoryDisk({ "/shop/harvest.knife.yaml": "" });

/** How many steps a growth takes that nothing disturbs. */
async function stepsOf(make: () => MemoryDisk, seen: string | null): Promise<number> {
  const { disk, steps } = endingDisk(make(), { at: Number.POSITIVE_INFINITY, done: false, forGood: true });
  expect(await grow(disk, seen)).toBe("stored");
  return steps();
}

describe("a file that grows", () => {
  it("is there with what is new, and nothing else is left in the folder", async () => {
    const disk = withFile();
    expect(await grow(disk)).toBe("stored");
    expect(disk.text(PATH)).toBe(NEW);
    expect(disk.paths()).toEqual([PATH]);
  });

  it("is made where there was none", async () => {
    const disk = withoutFile();
    expect(await grow(disk, null)).toBe("stored");
    expect(disk.text(PATH)).toBe(NEW);
    expect(disk.paths()).toEqual(["/shop/harvest.knife.yaml", PATH]);
  });

  it("syncs its folder last but for the lock, so that what it answered outlives a power cut", async () => {
    const { disk, names } = endingDisk(withFile(), {
      at: Number.POSITIVE_INFINITY,
      done: false,
      forGood: true,
    });
    await grow(disk);
    expect(names.filter((name) => name === "rename" || name === "syncFolder")).toEqual([
      "rename",
      "syncFolder",
    ]);
  });

  it("stays as somebody else made it in the meantime", async () => {
    const disk = new MemoryDisk({ [PATH]: `${OLD}  - theirs\n` });
    expect(await grow(disk)).toBe("changed");
    expect(disk.text(PATH)).toBe(`${OLD}  - theirs\n`);
    expect(await grow(disk, null)).toBe("changed");
    expect(await grow(withoutFile())).toBe("changed");
    expect(disk.paths()).toEqual([PATH]);
  });

  it("grows where a link leads, and the link stays one", async () => {
    const disk = new MemoryDisk({ "/kept/harvest.record.yaml": OLD, "/shop/x": "" });
    disk.links.set(PATH, "/kept/harvest.record.yaml");
    expect(await grow(disk)).toBe("stored");
    expect(disk.text("/kept/harvest.record.yaml")).toBe(NEW);
    expect(disk.links.has(PATH)).toBe(true);
    expect(disk.paths()).toEqual(["/kept/harvest.record.yaml", "/shop/x"]);
  });
});

describe("what a file keeps", () => {
  it("its rights, at every step", async () => {
    const disk = withFile();
    disk.modes.set(PATH, 0o600);
    expect(await grow(disk)).toBe("stored");
    expect((await disk.accessOf(PATH)).mode).toBe(0o600);
  });

  it("its write protection: nothing is stored, and what to do is said", async () => {
    const disk = withFile();
    disk.modes.set(PATH, 0o444);
    const error = await failure(grow(disk));
    expect(error).toMatchObject({ exitCode: 5, code: "write-protected" });
    expect(error.message).toBe("harvest.record.yaml is write-protected; nothing was written");
    expect(error.todo).toBe("Nothing was stored. Take the write protection off, and try again.");
    expect(disk.text(PATH)).toBe(OLD);
    expect(disk.paths()).toEqual([PATH]);
  });

  it("strangers beside it: only what a run of this program left half done is taken away", async () => {
    const strangers = [
      ".harvest.record.yaml.tmp",
      ".harvest.record.yaml.mine.tmp",
      ".harvest.record.yaml.7-0123abcd-0.tmp.bak",
      ".harvest.record.yaml.7-0123abc-0.tmp",
      ".harvest.record.yaml.7-0123abcd.tmp",
      ".harvest.record.yaml.copy.7-0123abcd-0.tmp",
      // Of a command that still runs.
      ".harvest.record.yaml.8-0123abcd-0.tmp",
    ].map((name) => `/shop/${name}`);
    const left = "/shop/.harvest.record.yaml.7-0123abcd-0.tmp";
    const disk = new MemoryDisk(Object.fromEntries([PATH, left, ...strangers].map((path) => [path, OLD])));
    expect(await grow(disk, OLD, NEW, { running: [8] })).toBe("stored");
    expect(disk.paths()).toEqual([PATH, ...strangers].sort());
  });
});

describe("whatever fails", () => {
  const starts = [
    ["a file that is there", withFile, OLD],
    ["a file that is new", withoutFile, null],
  ] as const;

  it.each(starts)("at any one step, %s is old or new, whole, and said rightly", async (_, make, seen) => {
    const steps = await stepsOf(make, seen);
    expect(steps).toBeGreaterThan(8);
    let stored = 0;
    for (const done of [false, true]) {
      for (let at = 0; at < steps; at++) {
        const plain = make();
        const ending = endingDisk(plain, { at, done, forGood: false, code: "ENOSPC" });
        const answer = await grow(ending.disk, seen, NEW, { processId: 7 }).catch((error: unknown) => error);
        const now = plain.files.has(PATH) ? plain.text(PATH) : null;
        const step = `step ${at} (${ending.names[at]}), ${done ? "done" : "not done"}`;
        expect([seen, NEW], step).toContain(now);
        if (answer === "stored") {
          expect(now, step).toBe(NEW);
          stored++;
        } else {
          expect(answer, step).toBeInstanceOf(CommandFailure);
          expect((answer as CommandFailure).exitCode, step).toBe(5);
          // Where it is said that nothing was stored, that is so.
          if ((answer as CommandFailure).todo.startsWith("Nothing was stored") && !done)
            expect(now, step).toBe(seen);
        }
        // The next command goes on from there, with what it finds.
        expect(await grow(plain, now, `${now ?? ""}  - next\n`), step).toBe("stored");
        expect(plain.text(PATH), step).toBe(`${now ?? ""}  - next\n`);
      }
    }
    // What fails after the file is safe (tidying up) takes nothing back.
    expect(stored).toBeGreaterThan(0);
  });

  it.each(starts)(
    "killed at any step, %s is old or new and whole, and the next command goes on",
    async (_, make, seen) => {
      const steps = await stepsOf(make, seen);
      for (const done of [false, true]) {
        for (let at = 0; at < steps; at++) {
          const plain = make();
          const ending = endingDisk(plain, { at, done, forGood: true });
          // Process 7 is killed: its answer is heard by nobody, unless it had answered already.
          const answer = await grow(ending.disk, seen, NEW, { processId: 7 }).catch(() => "killed");
          const now = plain.files.has(PATH) ? plain.text(PATH) : null;
          const step = `step ${at} (${ending.names[at]}), ${done ? "done" : "not done"}`;
          expect([seen, NEW], step).toContain(now);
          if (answer === "stored") expect(now, step).toBe(NEW);
          expect(await grow(plain, now, `${now ?? ""}  - next\n`), step).toBe("stored");
          expect(plain.text(PATH), step).toBe(`${now ?? ""}  - next\n`);
          // Nothing of the killed one is left.
          expect(
            plain.paths().filter((path) => path.includes(runOf(7))),
            step,
          ).toEqual([]);
        }
      }
    },
  );

  it("a disk that does not confirm the folder is told, and that the entry may be there", async () => {
    const disk = withFile();
    disk.faults.push({ step: "syncFolder", code: "EIO" });
    const error = await failure(grow(disk));
    expect(error).toMatchObject({ exitCode: 5, code: "not-confirmed" });
    expect(error.todo).toContain("Look whether what is new stands in it");
  });

  it("a full disk is told with what to do", async () => {
    const disk = withFile();
    disk.faults.push({ step: "createFile", code: "ENOSPC", path: ".tmp" });
    const error = await failure(grow(disk));
    expect(error).toMatchObject({ exitCode: 5, code: "cannot-write" });
    expect(error.message).toContain("the disk is full");
    expect(error.todo).toContain("Nothing was stored");
    expect(disk.paths()).toEqual([PATH]);
  });
});

describe("the lock", () => {
  const lockOf = (processId: number, host = "bench"): string =>
    lockPathOf(PATH, { machine: { ...fakeIo().machine, host, processId }, runId: runOf(processId) });
  const locked = (...locks: readonly string[]): MemoryDisk =>
    new MemoryDisk({ [PATH]: OLD, ...Object.fromEntries(locks.map((lock) => [lock, ""])) });

  it("of commands that are gone is taken over", async () => {
    const disk = locked(lockOf(7), lockOf(8));
    expect(await grow(disk)).toBe("stored");
    expect(disk.paths()).toEqual([PATH]);
  });

  it.each([7, 0])("of one that runs is waited for, and let go by it: process %i", async (processId) => {
    const disk = locked(lockOf(processId));
    let pauses = 0;
    const onPause = (): void => {
      expect(disk.text(PATH)).toBe(OLD);
      if (++pauses === 3) disk.files.delete(lockOf(processId));
    };
    expect(await grow(disk, OLD, NEW, { running: [processId], onPause })).toBe("stored");
    expect(pauses).toBe(3);
    expect(disk.paths()).toEqual([PATH]);
  });

  const odd = "/shop/.harvest.record.yaml.lock.mine";
  const stuck: readonly (readonly [string, string, FakeIoOptions, RegExp])[] = [
    ["of one that runs on and on", lockOf(7), { running: [7] }, /process 7;/u],
    ["of one that came before it", lockOf(0), { running: [0] }, /process 0;/u],
    ["of another computer", lockOf(7, "office.shop"), {}, /process 7 on the computer office-shop/u],
    ["with another name", odd, {}, /nobody knows which/u],
  ];
  it.each(stuck)(
    "%s is told plainly, with the file to remove, and nothing is written",
    async (_, lock, options, who) => {
      const disk = locked(lock);
      const error = await failure(grow(disk, OLD, NEW, options));
      expect(error).toMatchObject({ exitCode: 5, code: "locked" });
      expect(error.message).toMatch(who);
      expect(error.message).toContain("nothing was stored");
      expect(error.todo).toContain(`remove ${show(lock)} and try again`);
      expect(disk.text(PATH)).toBe(OLD);
      expect(disk.paths().sort()).toEqual([lock, PATH].sort());
      // What it says to do is enough.
      disk.files.delete(lock);
      expect(await grow(disk)).toBe("stored");
    },
  );

  it("that cannot be made is told, and nothing is left", async () => {
    const disk = withFile();
    disk.faults.push({ step: "createFile", code: "ENOSPC", path: ".lock." });
    const error = await failure(grow(disk));
    expect(error.message).toBe("cannot lock harvest.record.yaml: the disk is full (ENOSPC)");
    expect(disk.paths()).toEqual([PATH]);
  });

  /** A disk of which every step takes its time, drawn by lot: others get in between. */
  function slowDisk(disk: MemoryDisk, seed: number): MemoryDisk {
    let state = seed;
    const turns = (): number => {
      // Lehmer's generator with the multiplier of Park and Miller.
      state = (state * 48_271) % 2_147_483_647;
      return state % 7;
    };
    const wait = async (): Promise<void> => {
      for (let turn = turns(); turn > 0; turn--) await Promise.resolve();
    };
    return new Proxy(disk, {
      get(inner, name) {
        const value: unknown = Reflect.get(inner, name, inner);
        if (typeof value !== "function" || name === "text" || name === "paths") return value;
        return async (...given: unknown[]) => {
          await wait();
          const answer: unknown = await value.apply(inner, given);
          await wait();
          return answer;
        };
      },
    });
  }

  it("keeps any that store at once apart, however their steps fall between one another", async () => {
    const processes = [2, 3, 4];
    for (let seed = 1; seed <= 300; seed++) {
      // One that was killed before has left its lock and half a file.
      const disk = locked(lockOf(9));
      disk.files.set(`/shop/.harvest.record.yaml.${runOf(9)}-0.tmp`, bytes("half"));
      const slow = slowDisk(disk, seed);
      let told = 0;
      const store = async (processId: number): Promise<void> => {
        for (let tries = 0; tries < 50; tries++) {
          const seen = disk.text(PATH);
          const onPause = (): void => undefined;
          const grown = `${seen}  - from ${processId}\n`;
          if ((await grow(slow, seen, grown, { processId, running: processes, onPause })) === "stored") {
            told++;
            return;
          }
        }
      };
      await Promise.all(processes.map(store));
      expect(told, `seed ${seed}`).toBe(3);
      const lines = disk.text(PATH).slice(OLD.length).trimEnd().split("\n");
      expect([...lines].sort(), `seed ${seed}`).toEqual(processes.map((id) => `  - from ${id}`));
      expect(disk.paths(), `seed ${seed}`).toEqual([PATH]);
    }
  });
});
