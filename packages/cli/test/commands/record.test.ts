import { describe, expect, it } from "vitest";
import { readRecordFile } from "../../src/file/index.js";
import { answer, flat } from "../support/answer.js";
import { DEMO_KNIFE, DEMO_SHOP } from "../support/demo.js";
import { fakeIo } from "../support/fake-io.js";
import { entriesIn, KNIFE, RECORD, record, shopWorld } from "../support/record-world.js";

describe("the first entry", async () => {
  const io = shopWorld();
  const { code, out, err, written } = await record(
    io,
    "--stage",
    "cut",
    "--mass",
    "1213g",
    "--batch",
    "A-117",
  );
  const file = readRecordFile(io.disk.text(RECORD), "");

  it("is stored beside the knife file, with its number, day and unit, and said so", () => {
    expect(code).toBe(0);
    expect(err).toBe("");
    expect(written).toEqual([RECORD]);
    expect(out).toContain("\nSTORED: revision 1 in harvest.record.yaml\n");
    expect(file).toMatchObject({ knife: KNIFE, units: "mm" });
    expect(file.entries).toEqual([
      { revision: 1, on: "2026-11-28", stage: "cut", mass: 1213, batch: "A-117" },
    ]);
    expect(io.disk.text(RECORD)).toContain("mass: 1213 g");
  });

  it("tells what the gate tells", async () => {
    const gate = await answer(["gate", KNIFE, "--stage", "cut", "--mass", "1213g"], shopWorld());
    const sums = gate.out.slice(gate.out.indexOf("WEIGHED: bars as cut"));
    expect(out.endsWith(sums)).toBe(true);
  });

  it("keeps what plan says, and the files as they are, byte for byte", async () => {
    const stock = JSON.parse((await answer(["stock", KNIFE, "--json"], shopWorld())).out);
    const weigh = JSON.parse((await answer(["weigh", KNIFE, "--json"], shopWorld())).out);
    const check = JSON.parse((await answer(["check", KNIFE, "--json"], shopWorld())).out);
    const [best] = stock.plans;
    const { planned } = file;
    expect(planned?.files).toEqual({ knife: DEMO_KNIFE, shop: DEMO_SHOP });
    expect(planned?.bars).toEqual([
      {
        bar: best.bar,
        steel: "1084",
        thickness: best.thicknessMm,
        width: best.widthMm,
        count: best.bars,
        length: best.cutLengthMm,
        mass: expect.closeTo(best.massG, 3),
      },
    ]);
    expect(planned?.knife.mass).toBeCloseTo(weigh.knife.massG, 3);
    expect(planned?.knife.least).toBeCloseTo(weigh.knife.massIntervalG[0], 3);
    expect(planned?.balance.at).toBeCloseTo(weigh.knife.balanceFromHeelMm, 3);
    expect(planned?.asks).toEqual(
      check.asks.map(({ ask, verdict }: { ask: string; verdict: string }) => ({ ask, verdict })),
    );
    expect(planned?.losses.scalePerHeat).toEqual({
      value: expect.closeTo(0.012, 12),
      low: expect.closeTo(0.006, 12),
      high: expect.closeTo(0.02, 12),
    });
    const row = (name: string): number => best.ledger.find((one: { row: string }) => one.row === name).massG;
    expect(planned?.needed.finished?.usual).toBeCloseTo(row("finished-blade"), 2);
    expect(planned?.needed.forged?.usual).toBeCloseTo(row("forged-blade"), 2);
  });

  it("may be of anything: hours alone begin a record too", async () => {
    const other = shopWorld();
    const hours = await record(other, "--task", "design", "--hours", "1:30");
    expect(hours.code).toBe(0);
    expect(entriesIn(other)).toEqual([{ revision: 1, on: "2026-11-28", task: "design", hours: 1.5 }]);
    expect(readRecordFile(other.disk.text(RECORD), "").planned).toBeDefined();
  });

  it("keeps the plan that was asked for", async () => {
    const other = shopWorld();
    await record(other, "--stage", "cut", "--mass", "1239g", "--plan", "2");
    const { planned } = readRecordFile(other.disk.text(RECORD), "");
    expect(planned).toMatchObject({ plan: 2, bars: [{ bar: "3/8 x 1 1/2 in", count: 3 }] });
    const late = await record(other, "--note", "x", "--plan", "1");
    expect(late.code).toBe(2);
    expect(late.err).toContain("--plan goes with the first entry only");
  });

  it("is not stored where the knife file has errors", async () => {
    const other = shopWorld({ [KNIFE]: "scantling: 1\n" });
    const broken = await record(other, "--note", "x");
    expect(broken.code).toBe(3);
    expect(broken.written).toEqual([]);
  });
});

describe("later entries", async () => {
  const io = shopWorld();
  await record(io, "--stage", "cut", "--mass", "1024 g", "--on", "2026-10-05");
  const before = io.disk.text(RECORD);
  const billet = await record(
    io,
    "--stage",
    "billet",
    "--mass",
    "998g",
    "--tare",
    "200g",
    "--welding-heats",
    "3",
  );
  const forged = await record(io, "--stage", "forged", "--mass", "709g", "--heats", "9");

  it("stand behind what was there, of which no byte changes", () => {
    expect(io.disk.text(RECORD).startsWith(before)).toBe(true);
    expect(entriesIn(io).map(({ revision }) => revision)).toEqual([1, 2, 3]);
    expect(io.disk.paths().filter((path) => path.includes("record"))).toEqual([RECORD]);
  });

  it("take the handling bar off, and hold the steel against the gate", () => {
    expect(flat(billet.out)).toContain("998 g less 200 g of handling bar: 798 g, 3 welding heats");
    expect(billet.out).toContain("WEIGHED: dressed billet");
    expect(billet.out).toMatch(/^ENOUGH AT THE USUAL LOSSES: /mu);
  });

  it("tell what was lost, and in each heat, beside what was counted on", () => {
    // 709 of 798 in nine heats: 1 − (709/798)^(1/9) = 1.305 %
    expect(flat(forged.out)).toContain(
      "Lost since the billet was dressed: 89 g, 11 % of it: 1.31 % in each of 9 heats, where 1.2 % was counted on.",
    );
  });

  it("are weighed with the bars that were cut, whatever is on the rack by now", async () => {
    const rackless = shopWorld({
      [KNIFE]: DEMO_KNIFE,
      "shop.yaml": DEMO_SHOP.replace(/^ {2}- \{ size.*\n/gmu, "").replace("rack:", "rack: []"),
    });
    rackless.disk.files.set(RECORD, new TextEncoder().encode(before));
    const { out, code } = await record(rackless, "--stage", "billet", "--mass", "998g", "--tare", "200g");
    expect(code).toBe(0);
    const targets = (text: string): string => text.slice(text.indexOf("NEEDED AT EACH STAGE"));
    expect(targets(out)).toContain("of 1/4 x 2 in");
    expect(targets(out).split("\n").slice(0, 6)).toEqual(targets(billet.out).split("\n").slice(0, 6));
  });

  it("are asked for by the record's own name too", async () => {
    const { code, out } = await answer(
      ["record", "harvest.record.yaml", "--files", "60/65", "--after", "temper"],
      io,
    );
    expect(code).toBe(0);
    expect(flat(out)).toContain("hardness the 60 file skates, the 65 file cuts after the temper");
    expect(entriesIn(io).at(-1)?.hardness).toEqual({ filesSkate: 60, filesCut: 65, after: "temper" });
  });

  it("are asked for by the bare name as well, where there is a record", async () => {
    const { code, out } = await answer(["record", "harvest", "--stage", "ready", "--mass", "556g"], io);
    expect(code).toBe(0);
    expect(out).toContain("WEIGHED: ready to harden");
  });

  it("need neither knife nor shop where they are of no stage", async () => {
    const alone = fakeIo({ files: { "harvest.record.yaml": before } });
    const { code, out } = await answer(
      ["record", "harvest.record.yaml", "--drawn", "40 x 30 mm = 48 x 20 mm", "--drawn-with", "flat dies"],
      alone,
    );
    expect(code).toBe(0);
    expect(out).toContain("Of this thinning 45 % went into height; the rest made it longer.");
  });
});
