import { ledgerBodies, lossesAt, makeKnife, makeSteelChain, traceStack } from "@scantling/geometry";
import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { readKnifeFile, readShopFile } from "../../src/file/index.js";
import { fillShop } from "../../src/load.js";
import { answer, flat, wideLines } from "../support/answer.js";
import { DEMO_KNIFE, DEMO_SHOP } from "../support/demo.js";
import { filesOf, JOBS, recordText, SHOP, world } from "../support/learn-records.js";

const figuresOf = (out: string) =>
  JSON.parse(out) as {
    readonly schema: string;
    readonly figures: readonly { readonly path: string; readonly learnt: { readonly value: number } }[];
    readonly leftOut: readonly { readonly file: string; readonly code: string; readonly on: string }[];
    readonly changes: readonly { readonly path: string; readonly to: string }[];
    readonly diff: string;
    readonly written: boolean;
  };

describe("learn", () => {
  it("finds all records below the folder of the shop file, and proposes the change without writing it", async () => {
    const { code, out, written, io } = await answer(["learn"], world(JOBS));
    expect(code).toBe(EXIT.done);
    expect(written).toEqual([]);
    expect(io.disk.text("/shop/shop.yaml")).toBe(DEMO_SHOP);
    expect(out).toContain("LEARNT for shop.yaml from 6 records");
    expect(out).toContain("-  scalePerHeat: 1.2 % +0.8/-0.6 %\n+  scalePerHeat: 1.7");
    expect(out).toContain("To write it:\n  scantling learn --write\n");
    // Lines of the shop file itself are as wide as the smith wrote them.
    const own = new Set(DEMO_SHOP.split("\n"));
    expect(wideLines(out).filter((line) => !own.has(line.slice(1)))).toEqual([]);
  });

  it("writes it on request, and nothing else of the file is changed", async () => {
    const { code, out, io } = await answer(["learn", "--write"], world(JOBS));
    expect(code).toBe(EXIT.done);
    expect(out).toContain("CHANGED shop.yaml");
    const text = io.disk.text("/shop/shop.yaml");
    const [, to] = /^ {2}scalePerHeat: (.*)$/mu.exec(text) ?? [];
    expect(text).toBe(
      `${DEMO_SHOP.replace("  scalePerHeat: 1.2 % +0.8/-0.6 %\n", `  scalePerHeat: ${to}\n`)}
# What stood here before scantling learn. Keep it, or records count twice.
learned:
  losses.scalePerHeat:
    was: 1.2 % +0.8/-0.6 %
    is: ${to}
    jobs: 6
`,
    );
  });

  it("changes nothing when it is run again, and one more record moves it as if it had been there from the start", async () => {
    const first = await answer(["learn", "--write"], world(JOBS));
    const again = await answer(["learn", "--write"], first.io);
    expect(again.out).toContain("Nothing to change in the shop file.");
    const more = [...JOBS, { loss: 0.03 }];
    const added = await answer(
      ["learn", "--json"],
      world(more, { "shop.yaml": first.io.disk.text("/shop/shop.yaml") }),
    );
    const atOnce = await answer(["learn", "--json"], world(more));
    expect(figuresOf(added.out).figures[0]?.learnt).toEqual(figuresOf(atOnce.out).figures[0]?.learnt);
  });

  it("leaves out none of four jobs that agree, however sure the shop is of another figure", async () => {
    const sure = DEMO_SHOP.replace("scalePerHeat: 1.2 % +0.8/-0.6 %", "scalePerHeat: 2.4 % +0.6/-0.4 %");
    const jobs = [0.008, 0.0085, 0.0095, 0.01].map((loss) => ({ loss }));
    const shop = { "shop.yaml": sure };
    const { leftOut, figures } = figuresOf((await answer(["learn", "--json"], world(jobs, shop))).out);
    expect(leftOut).toEqual([]);
    expect(figures[0]?.learnt.value).toBeLessThan(0.014);
    // A point that slipped in one of them is still found.
    const slipped = [...jobs.slice(0, 3), { loss: 0.01, heats: 9, forged: 82.2 }];
    const again = figuresOf((await answer(["learn", "--json"], world(slipped, shop))).out);
    expect(again.leftOut.map(({ file, code }) => [file, code])).toEqual([
      ["orders/job-3.record.yaml", "slipped-digit"],
    ]);
  });

  it("takes what the smith writes over it for the shop's own figure", async () => {
    const first = await answer(["learn", "--write"], world(JOBS));
    const mine = first.io.disk
      .text("/shop/shop.yaml")
      .replace(/^ {2}scalePerHeat: .*$/mu, "  scalePerHeat: 3 % ± 0.2 %");
    const { out } = await answer(["learn", "--json"], world(JOBS, { "shop.yaml": mine }));
    const [figure] = JSON.parse(out).figures;
    expect(figure.own).toMatchObject({ value: 0.03 });
  });

  it("keeps the figure with one record, and says so", async () => {
    const { code, out } = await answer(["learn"], world([{ loss: 0.03 }]));
    expect(code).toBe(EXIT.done);
    expect(flat(out)).toContain("AS THEY ARE, for one job cannot tell how far jobs lie apart:");
    expect(out).toMatch(/losses\.scalePerHeat +1\.2 % now +the job came to 3\.01 %/u);
    expect(out).toContain("Nothing to change in the shop file.");
  });

  it("names what it leaves out, with file, day and reason, and comes out as if that were not there", async () => {
    const slipped = [...JOBS, { forged: 7780 }, { heats: 0, loss: 0.018 }];
    const { out } = await answer(["learn"], world(slipped));
    expect(flat(out)).toContain(
      "orders/job-6.record.yaml, 2026-03-03, scale lost in a forging heat: the mass rose from 900 g (dressed billet) to 7780 g (forged blade); the point slipped?",
    );
    expect(flat(out)).toContain("778 g (forged blade) would fit.");
    expect(flat(out)).toContain(
      "orders/job-7.record.yaml, 2026-03-03, scale lost in a forging heat: the heats between dressed billet and forged blade are not written down.",
    );
    const with2 = figuresOf((await answer(["learn", "--json"], world(slipped))).out);
    const without = figuresOf((await answer(["learn", "--json"], world(JOBS))).out);
    expect(with2.figures[0]?.learnt).toEqual(without.figures[0]?.learnt);
    expect(with2.leftOut.map(({ file, code, on }) => [file, code, on])).toEqual([
      ["orders/job-6.record.yaml", "slipped-digit", "2026-03-03"],
      ["orders/job-7.record.yaml", "no-heats", "2026-03-03"],
    ]);
  });

  it("answers as one JSON document", async () => {
    const { out } = await answer(["learn", "--json"], world(JOBS));
    const document = figuresOf(out);
    expect(document).toMatchObject({ schema: "scantling/learn/1", written: false });
    expect(document.changes.map(({ path }) => path)).toEqual(["losses.scalePerHeat"]);
    expect(document.diff).toContain("--- shop.yaml\n+++ shop.yaml\n@@ ");
    const write = figuresOf((await answer(["learn", "--json", "--write"], world(JOBS))).out);
    expect(write.written).toBe(true);
  });

  it("proposes a new shop file where there is none, and writes it on request", async () => {
    const { out, written } = await answer(["learn"], world(JOBS, {}));
    expect(out).toContain("LEARNT for a shop without a file");
    expect(out).toContain("--- /dev/null\n+++ shop.yaml\n@@ -0,0 +1,");
    expect(written).toEqual([]);
    const wrote = await answer(["learn", "--write"], world(JOBS, {}));
    expect(wrote.written).toEqual(["/shop/shop.yaml"]);
    const file = readShopFile(wrote.io.disk.text("/shop/shop.yaml"), "shop.yaml");
    expect(file.shop.losses?.scalePerHeat?.value).toBeGreaterThan(0.017);
  });

  it("learns what is drawn, ground and worked by the clock", async () => {
    const more = `  - { revision: 3, on: 2026-03-03, drawn: { from: { height: 40, thickness: 30 }, to: { height: 45, thickness: 20 }, with: flat dies } }
  - { revision: 4, on: 2026-03-03, task: forge, hours: 4, note: oil is counted by the coat }
  - { revision: 5, on: 2026-03-03, task: oil, hours: 3 }
  - { revision: 6, on: 2026-03-03, stage: forged, heats: 8, sizes: [{ at: 0, thickness: 5.6 }] }
  - { revision: 7, on: 2026-03-05, stage: ready, sizes: [{ at: 0, thickness: 4.4 }] }
`;
    const jobs = JOBS.map((job) => ({ ...job, more }));
    const { code, io, out } = await answer(["learn", "--write"], world(jobs));
    expect(code).toBe(EXIT.done);
    const { shop, allowances } = readShopFile(io.disk.text("/shop/shop.yaml"), "shop.yaml");
    // ln(45/40)/ln(30/20) is 0.29; half of 1.2 mm.
    expect(Math.abs((shop.limits?.forge?.bevelSpreadShare ?? 0) - 0.3)).toBeLessThan(0.015);
    expect(Math.abs((allowances.face ?? 0) - 0.6)).toBeLessThan(0.03);
    const { work } = readShopFile(io.disk.text("/shop/shop.yaml"), "shop.yaml");
    // Drawn a little toward the 2.5 h that a shop without hours of its own reckons with.
    expect(work.hours?.forge?.value).toBeGreaterThan(3.8);
    expect(work.hours?.forge?.value).toBeLessThanOrEqual(4);
    expect(out).toMatch(/^\+.*\bforge: 3\.9 h/mu);
    expect(out).not.toContain("work.hours.oil");
  });

  it("says how to begin where there are no records", async () => {
    const { code, out } = await answer(["learn"], { files: SHOP });
    expect(code).toBe(EXIT.done);
    expect(out).toContain("There are no records below the folder of shop.yaml");
    expect(out).toContain("scantling record NAME.knife.yaml");
  });

  it("is in inches where the shop is, and reads what it wrote", async () => {
    const inches = { "shop.yaml": "scantling: 1\nunits: in\nlosses:\n  scale: fraction\n" };
    const { io } = await answer(["learn", "--write"], world(JOBS, inches));
    expect(io.disk.text("/shop/shop.yaml")).toContain("losses:\n  scale: fraction\n  scalePerHeat: 1.7");
    expect((await answer(["learn"], io)).out).toContain("Nothing to change in the shop file.");
  });
});

describe("records", () => {
  it("may be named one by one, or by their folder; the shop is the one above them", async () => {
    const files = {
      ...filesOf(JOBS, "a/orders"),
      ...filesOf([{ loss: 0.03 }, { loss: 0.031 }], "b/orders"),
      "a/shop.yaml": DEMO_SHOP,
      "b/shop.yaml": DEMO_SHOP,
    };
    const folder = await answer(["learn", "a/orders"], { files });
    expect(folder.out).toContain("LEARNT for a/shop.yaml from 6 records");
    expect(folder.out).toContain("scantling learn a/orders --write");
    const one = await answer(["learn", "b/orders/job-0.record.yaml", "b/orders/job-1.record.yaml"], {
      files,
    });
    expect(one.out).toContain("LEARNT for b/shop.yaml from 2 records");
    const both = await answer(["learn", "a/orders", "b/orders"], { files });
    expect(both.code).toBe(EXIT.usage);
    expect(both.err).toContain("different shop files");
    const said = await answer(["learn", "a/orders", "b/orders", "--shop", "a/shop.yaml"], { files });
    expect(said.out).toContain("from 8 records");
  });

  it("that are broken are all told, with line and column, and nothing is written", async () => {
    const files = {
      ...SHOP,
      ...filesOf(JOBS),
      "orders/job-1.record.yaml": recordText({}).replace("stage: forged", "stage: forgd"),
      "orders/job-3.record.yaml": recordText({}).replace("tare: 200 g", "tare: 2000 g"),
    };
    const { code, err, out, io } = await answer(["learn", "--write"], { files });
    expect(code).toBe(EXIT.file);
    expect(out).toBe("");
    expect(err).toContain("2 records cannot be used; nothing was learnt and nothing written");
    expect(err).toContain("orders/job-1.record.yaml:6:");
    expect(flat(err)).toContain("did you mean forged?");
    expect(err).toContain("orders/job-3.record.yaml:5:");
    expect(wideLines(err)).toEqual([]);
    expect(io.disk.text("/shop/shop.yaml")).toBe(DEMO_SHOP);
  });

  it("that are not there, or are none, are told", async () => {
    const none = await answer(["learn", "nix.record.yaml"], { files: SHOP });
    expect([none.code, none.err.includes("nix.record.yaml")]).toEqual([EXIT.file, true]);
    const shop = await answer(["learn", "shop.yaml"], { files: SHOP });
    expect([shop.code, shop.err.includes("shop.yaml is no record")]).toEqual([EXIT.usage, true]);
    const stdin = await answer(["learn", "-"], { files: SHOP });
    expect(stdin.code).toBe(EXIT.usage);
  });

  it("in folders of tools are not looked for", async () => {
    const files = { ...SHOP, ...filesOf(JOBS, "node_modules/x"), ...filesOf(JOBS, ".trash") };
    expect((await answer(["learn"], { files })).out).toContain("There are no records");
  });

  it("count as they stand: an entry that a later one corrects is not there", async () => {
    const more =
      "  - { revision: 3, on: 2026-03-09, stage: forged, mass: 778 g, heats: 8, correctsRevision: 2 }\n";
    const jobs = JOBS.map((job) => ({ ...job, forged: 500, more }));
    const { out } = await answer(["learn", "--json"], world(jobs));
    // 1 − (778/900)^(1/8)
    expect(JSON.parse(out).figures[0].ofJobs).toBeCloseTo(0.01804, 5);
  });
});

describe("a shop file that cannot be changed", () => {
  it("because it came from standard input is told as it should be", async () => {
    const files = filesOf(JOBS);
    const { code, out } = await answer(["learn", "--shop", "-"], { files, stdin: DEMO_SHOP });
    expect(code).toBe(EXIT.done);
    expect(out).toContain("which can only be changed by hand:");
    expect(out).toContain("+  scalePerHeat: 1.7");
    const write = await answer(["learn", "--shop", "-", "--write"], { files, stdin: DEMO_SHOP });
    expect(write.code).toBe(EXIT.write);
    expect(write.err).toContain("cannot be changed here");
    expect(write.written).toEqual([]);
  });

  it("because it has errors is told like everywhere", async () => {
    const bad = DEMO_SHOP.replace("kerf: 1.5", "kerff: 1.5");
    const { code, err } = await answer(["learn"], world(JOBS, { "shop.yaml": bad }));
    expect(code).toBe(EXIT.file);
    expect(err).toContain("did you mean kerf?");
  });

  it("because the disk is full keeps what it said", async () => {
    const first = world(JOBS);
    const { io } = await answer(["learn"], first);
    io.disk.faults.push({ step: "createFile", code: "ENOSPC" });
    const { code } = await answer(["learn", "--write"], io);
    expect(code).toBe(EXIT.write);
    expect(io.disk.text("/shop/shop.yaml")).toBe(DEMO_SHOP);
  });
});

describe("what was learnt", () => {
  const KNIFE = { "harvest.knife.yaml": DEMO_KNIFE };

  it("is what plan reckons with", async () => {
    const { io } = await answer(["learn", "--write"], world(JOBS, { ...SHOP, ...KNIFE }));
    const { losses = {} } = readShopFile(io.disk.text("/shop/shop.yaml"), "shop.yaml").shop;
    const loss = losses.scalePerHeat?.value ?? 0;
    expect(loss).toBeGreaterThan(0.017);
    const { code } = await answer(["plan", "harvest.knife.yaml", "--out", "out"], io);
    expect(code).toBe(EXIT.done);
    const { plans } = JSON.parse(io.disk.text("/shop/out/stock.json"));
    const rows = plans[0].ledger as { readonly row: string; readonly massG: number }[];
    const mass = (name: string): number => rows.find(({ row }) => row === name)?.massG ?? 0;
    const heats = makeKnife(readKnifeFile(DEMO_KNIFE, "x").spec).forging.heats;
    expect(mass("dressed-billet") / mass("forged-blade")).toBeCloseTo((1 - loss) ** -heats, 9);
  });

  it("of skins comes from the plan that a record keeps, and gives known skins back", async () => {
    const shopText = DEMO_SHOP.replace("scale: fraction", "scale: skin");
    const shop = fillShop(readShopFile(shopText, "shop.yaml"));
    const knife = makeKnife(readKnifeFile(DEMO_KNIFE, "harvest.knife.yaml").spec);
    const bodies = ledgerBodies(knife);
    const SKINS = { forging: 0.06, welding: 0.14 };
    const exactly = (value: number) => ({ value, low: value, high: value });
    const losses = {
      ...shop.losses,
      skinPerHeat: exactly(SKINS.forging),
      skinPerWeldingHeat: exactly(SKINS.welding),
    };
    let io: Awaited<ReturnType<typeof answer>>["io"] | undefined;
    for (const name of ["a", "b", "c", "d"]) {
      const knifeFile = `${name}.knife.yaml`;
      const enter = async (...words: readonly string[]): Promise<void> => {
        const files = Object.fromEntries(
          ["a", "b", "c", "d"].map((each) => [`${each}.knife.yaml`, DEMO_KNIFE]),
        );
        const done = await answer(
          ["record", knifeFile, ...words, "--tare", "0g", "--sure"],
          io ?? { files: { ...files, "shop.yaml": shopText } },
        );
        expect(done.code, done.err).toBe(EXIT.done);
        io = done.io;
      };
      await enter("--stage", "cut", "--mass", "1215g");
      const text = (io as NonNullable<typeof io>).disk.text(`/shop/${name}.record.yaml`);
      const [, thickness, width, bars] =
        /thickness: ([\d.]+) mm, width: ([\d.]+) mm, count: (\d+)/u.exec(text)?.map(Number) ?? [];
      if (thickness === undefined || width === undefined || bars === undefined) throw new Error(text);
      const chain = makeSteelChain(bodies, losses, shop.limits, knife.forging, "value");
      const trace = traceStack(chain, bars, width, thickness);
      expect(lossesAt(losses, "value").forgingScale).toBe(SKINS.forging);
      const grams = (volume: number): string => `${(volume * bodies.density).toFixed(3)}g`;
      const cut = bars * width * thickness * trace.length;
      await enter("--stage", "cut", "--mass", grams(cut), "--corrects", "1");
      await enter("--stage", "billet", "--mass", grams(trace.dressed), "--welding-heats", "3");
      await enter("--stage", "forged", "--mass", grams(chain.forged), "--heats", String(knife.forging.heats));
    }
    const { out } = await answer(["learn", "--json"], io);
    const { figures } = JSON.parse(out) as { figures: { path: string; ofJobs: number }[] };
    const ofJobs = (path: string): number => figures.find((figure) => figure.path === path)?.ofJobs ?? 0;
    expect(figures.map(({ path }) => path)).toEqual(["losses.skinPerHeat", "losses.skinPerWeldingHeat"]);
    expect(Math.abs(ofJobs("losses.skinPerHeat") / SKINS.forging - 1)).toBeLessThan(1e-4);
    expect(Math.abs(ofJobs("losses.skinPerWeldingHeat") / SKINS.welding - 1)).toBeLessThan(1e-3);
  });
});
