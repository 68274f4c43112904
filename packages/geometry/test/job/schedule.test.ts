import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  AROUND_THE_CLOCK,
  checkWorkTasks,
  type JobSchedule,
  type ScheduledTask,
  SpecError,
  scheduleJob,
  type WorkTask,
  workingMinutes,
} from "../../src/index.js";
import {
  bestOfAllBeginnings,
  bestOfAllOrders,
  laidInOrder,
  latestWith,
  MONDAY,
  SHOP,
} from "./every-order.js";

const task = (
  id: string,
  minutes: number,
  after: readonly (string | readonly [string, number])[] = [],
  more: Partial<WorkTask> = {},
): WorkTask => ({
  id,
  name: "forge",
  minutes,
  after: after.map((link) =>
    typeof link === "string" ? { id: link, waitMinutes: 0 } : { id: link[0], waitMinutes: link[1] },
  ),
  ...more,
});

const byId = ({ tasks }: JobSchedule, id: string): ScheduledTask => {
  const found = tasks.find((one) => one.task.id === id);
  if (found === undefined) throw new Error(id);
  return found;
};

const slackOf = (schedule: JobSchedule): Record<string, number> =>
  Object.fromEntries(schedule.tasks.map(({ task: { id }, slackMinutes }) => [id, slackMinutes]));

describe("the network of tasks", () => {
  // Source: the worked example "Milwaukee Paper Manufacturing" of J. Heizer and B. Render, Operations Management, chapter on
  // project management (from memory): weeks, A to H; 15 weeks, critical A C E G H, slack of B and D one week, of F six.
  const network = [
    task("A", 2),
    task("B", 3),
    task("C", 2, ["A"]),
    task("D", 4, ["A", "B"]),
    task("E", 4, ["C"]),
    task("F", 3, ["C"]),
    task("G", 5, ["D", "E"]),
    task("H", 2, ["F", "G"]),
  ];
  const plain = scheduleJob(network, AROUND_THE_CLOCK, 0, "many");

  it("ends when the textbook's does, with its critical path", () => {
    expect(plain.finish).toBe(15);
    expect(plain.path).toEqual(["A", "C", "E", "G", "H"]);
    expect(plain.tasks.filter(({ onPath }) => onPath).map(({ task: { id } }) => id)).toEqual(plain.path);
  });

  it("has the textbook's earliest starts, and its slack", () => {
    expect(Object.fromEntries(plain.tasks.map(({ task: { id }, start }) => [id, start]))).toEqual({
      ...{ A: 0, B: 0, C: 2, D: 3, E: 4, F: 4, G: 8, H: 13 },
    });
    expect(slackOf(plain)).toEqual({ A: 0, B: 1, C: 0, D: 1, E: 0, F: 6, G: 0, H: 0 });
  });

  it("takes as long as all its work with one pair of hands, for nothing has to be waited for", () => {
    const alone = scheduleJob(network, AROUND_THE_CLOCK, 0);
    expect(alone.finish).toBe(2 + 3 + 2 + 4 + 4 + 3 + 5 + 2);
    expect(Object.values(slackOf(alone))).toEqual(Array(8).fill(0));
  });

  it("adds what is waited for between two tasks", () => {
    // By hand: A ends at 2, 5 of waiting, C from 7 to 8; B ends at 2 + 3 = 5 and has 2 to spare.
    const waits = scheduleJob(
      [task("A", 2), task("B", 3, ["A"]), task("C", 1, [["A", 5], "B"])],
      AROUND_THE_CLOCK,
      0,
    );
    expect(waits.finish).toBe(8);
    expect(waits.path).toEqual(["A", "C"]);
    expect(slackOf(waits)).toEqual({ A: 0, B: 2, C: 0 });
  });
});

const clock = (day: number, hours: number): number => MONDAY + day * 1440 + hours * 60;

describe("a job on the shop's calendar, by hand", () => {
  it("lets glue cure over the night and the weekend", () => {
    // Glue on Friday from 13 to 14 o'clock; 24 h later it is Saturday: on with it on Monday at 8.
    const late = scheduleJob(
      [
        task("file", 29 * 60),
        task("glue", 60, ["file"], { whole: true }),
        task("shape", 120, [["glue", 1440]]),
      ],
      SHOP,
      MONDAY,
    );
    expect(byId(late, "glue")).toMatchObject({ start: clock(4, 13), end: clock(4, 14), slackMinutes: 0 });
    expect(byId(late, "shape")).toMatchObject({ start: clock(7, 8), end: clock(7, 10) });
    expect(late.path).toEqual(["file", "glue", "shape"]);
  });

  it("has slack at the bench where a wait ends outside working hours", () => {
    // Glued on Monday from 8 to 9, cured after 12 h at 21, shaped on Tuesday from 8. It might be glued until 14 o'clock:
    // 5 h later.
    const schedule = scheduleJob([task("glue", 60), task("shape", 60, [["glue", 720]])], SHOP, MONDAY);
    expect(byId(schedule, "shape").start).toBe(clock(1, 8));
    expect(slackOf(schedule)).toEqual({ glue: 300, shape: 0 });
    expect(schedule.path).toEqual(["glue", "shape"]);
  });

  it("does other work while it waits", () => {
    // The sheath goes into the day on which the oil dries.
    const schedule = scheduleJob(
      [
        task("oil", 30, [], { whole: true }),
        task("edge", 60, [["oil", 1440]]),
        task("sheath", 240),
        task("pack", 30, ["edge", "sheath"]),
      ],
      SHOP,
      MONDAY,
    );
    expect(byId(schedule, "sheath")).toMatchObject({ start: clock(0, 8.5), end: clock(0, 12.5) });
    expect(schedule.finish).toBe(clock(1, 10));
    expect(schedule.path).toEqual(["oil", "edge", "pack"]);
    expect(schedule.proven).toBe(true);
  });

  it("hardens and tempers on one day", () => {
    // 4 h of grinding on Monday leave 2 h; hardening takes 1.5 h, loading the oven for tempering 1 h: both on Tuesday.
    const schedule = scheduleJob(
      [
        task("rough", 240),
        task("harden", 90, ["rough"], { whole: true }),
        task("temper", 60, ["harden"], { joined: true }),
        task("finish", 60, [["temper", 300]]),
      ],
      SHOP,
      MONDAY,
    );
    expect(byId(schedule, "harden").start).toBe(clock(1, 8));
    expect(byId(schedule, "temper")).toMatchObject({ start: clock(1, 9.5), end: clock(1, 10.5) });
    // 300 min later it is 15.30, after hours.
    expect(byId(schedule, "finish").start).toBe(clock(2, 8));
    expect(schedule.path).toEqual(["rough", "harden", "temper", "finish"]);
  });

  it("says whose hands are busy", () => {
    const schedule = scheduleJob([task("a", 60), task("b", 30)], SHOP, MONDAY);
    expect(byId(schedule, "a").driver).toEqual({ kind: "begin" });
    expect(byId(schedule, "b").driver).toEqual({ kind: "hands", id: "a" });
    expect(schedule.path).toEqual(["a", "b"]);
  });
});

/** Tasks of a job with up to `most` of them, each after some of those before it. */
const jobs = (most: number, minutes: number, wait: number) =>
  fc
    .array(
      fc.record({
        minutes: fc.integer({ min: 1, max: minutes }),
        whole: fc.boolean(),
        after: fc.array(fc.tuple(fc.nat(), fc.integer({ min: 0, max: wait })), { maxLength: 2 }),
      }),
      { minLength: 1, maxLength: most },
    )
    .map((all) =>
      all.map(({ after, whole, ...rest }, index) =>
        task(
          `t${index}`,
          rest.minutes,
          index === 0 ? [] : after.map(([of, minutesOf]) => [`t${of % index}`, minutesOf] as const),
          { whole },
        ),
      ),
    );

describe("any job", () => {
  it("keeps to every wait, to working hours and to one pair of hands", () => {
    fc.assert(
      fc.property(jobs(7, 500, 3000), fc.integer({ min: 0, max: 20_000 }), (tasks, begin) => {
        const { tasks: laid, finish, path } = scheduleJob(tasks, SHOP, begin);
        expect(laid).toHaveLength(tasks.length);
        for (const one of laid) {
          expect(one.start).toBeGreaterThanOrEqual(begin);
          expect(one.end).toBeLessThanOrEqual(finish);
          expect(one.slackMinutes).toBeGreaterThanOrEqual(0);
          if (one.task.whole === true) expect(one.end - one.start).toBe(one.task.minutes);
          else expect(workingMinutes(SHOP, one.start, one.end)).toBe(one.task.minutes);
          for (const link of one.task.after) {
            const before = laid.find(({ task: { id } }) => id === link.id);
            expect(one.start).toBeGreaterThanOrEqual((before?.end ?? Number.NaN) + link.waitMinutes);
          }
          for (const other of laid)
            if (other !== one) expect(one.start >= other.end || other.start >= one.end).toBe(true);
        }
        // What is on the path begins where the one before it lets it; its last ends the job.
        expect(laid.find(({ task: { id } }) => id === path.at(-1))?.end).toBe(finish);
        expect(
          laid
            .filter(({ onPath }) => onPath)
            .map(({ task: { id } }) => id)
            .sort(),
        ).toEqual([...path].sort());
      }),
      { seed: 3, numRuns: 200 },
    );
  });

  it("ends as early as any order of its tasks lets it", () => {
    fc.assert(
      fc.property(jobs(5, 500, 3000), (tasks) => {
        const { finish, proven } = scheduleJob(tasks, SHOP, MONDAY);
        expect(proven).toBe(true);
        expect(finish).toBe(bestOfAllOrders(tasks));
      }),
      { seed: 5, numRuns: 80 },
    );
  });

  it("ends as early as any choice of beginnings, minute by minute", () => {
    fc.assert(
      fc.property(jobs(4, 3, 4), (tasks) => {
        const { finish } = scheduleJob(tasks, AROUND_THE_CLOCK, 0);
        expect(finish).toBe(bestOfAllBeginnings(tasks, finish));
      }),
      { seed: 9, numRuns: 120 },
    );
  });

  it("begins later where it is told to, and never ends earlier for it", () => {
    fc.assert(
      fc.property(jobs(5, 500, 3000), fc.integer({ min: 1, max: 4000 }), (tasks, later) => {
        const early = scheduleJob(tasks, SHOP, MONDAY).finish;
        expect(scheduleJob(tasks, SHOP, MONDAY + later).finish).toBeGreaterThanOrEqual(early);
      }),
      { seed: 13, numRuns: 80 },
    );
  });

  it("may lose its slack without ending later", () => {
    fc.assert(
      fc.property(jobs(5, 300, 2000), fc.nat(), (tasks, which) => {
        const schedule = scheduleJob(tasks, SHOP, MONDAY);
        const chosen = schedule.tasks[which % schedule.tasks.length];
        if (chosen === undefined) return;
        // The task held back by its slack; the order of the hands is kept by links between neighbours.
        const order = schedule.tasks.map(({ task: { id } }) => id);
        const held = tasks.map((one) => {
          const before = order[order.indexOf(one.id) - 1];
          return before === undefined
            ? one
            : { ...one, after: [...one.after, { id: before, waitMinutes: 0 }] };
        });
        const latest = latestWith(chosen.start, chosen.slackMinutes);
        const late = laidInOrder(held, order, new Map([[chosen.task.id, latest]]));
        expect(late).toBe(schedule.finish);
      }),
      { seed: 17, numRuns: 120 },
    );
  });
});

describe("what cannot be laid out", () => {
  it("is told, all of it", () => {
    const wrong = [
      task("a", 1.5),
      task("a", 60),
      task("b", 60, ["nobody"]),
      task("c", 60, [["a", 5]], { joined: true }),
    ];
    expect(checkWorkTasks(wrong).map(({ code }) => code)).toEqual([
      "task-twice",
      "task-time-wrong",
      "task-unknown",
      "task-joined-wrong",
    ]);
    expect(() => scheduleJob(wrong, SHOP, 0)).toThrow(SpecError);
  });

  it("has two that follow at once on the same task", () => {
    const two = [
      task("h", 60),
      task("t", 60, ["h"], { joined: true }),
      task("u", 60, ["h"], { joined: true }),
      task("z", 60, ["u"]),
    ];
    expect(checkWorkTasks(two).map(({ code }) => code)).toEqual(["task-joined-twice"]);
    expect(() => scheduleJob(two, SHOP, 0)).toThrow(SpecError);
  });

  it("goes round in a circle", () => {
    const circle = [task("a", 1, ["b"]), task("b", 1, ["a"])];
    expect(checkWorkTasks(circle).map(({ code }) => code)).toEqual(["task-circle"]);
  });
});
