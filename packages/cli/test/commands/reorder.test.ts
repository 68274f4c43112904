import { describe, expect, it, test } from "vitest";
import { version } from "../../src/version.js";
import { answer, flat, wideLines } from "../support/answer.js";
import { DEMO_FILES, DEMO_KNIFE, DEMO_SHOP } from "../support/demo.js";
import { type FakeIo, fakeIo } from "../support/fake-io.js";

const KNIFE = "harvest.knife.yaml";
const RECORD = "/shop/harvest.record.yaml";

/** The demo with a record that was begun at the 5th of October, and some weighings. */
async function recorded(files: Readonly<Record<string, string>> = DEMO_FILES): Promise<string> {
  const io = fakeIo({ files, today: "2026-10-05" });
  await answer(["record", KNIFE, "--stage", "cut", "--mass", "1024g"], io);
  await answer(["record", KNIFE, "--stage", "billet", "--mass", "998g", "--tare", "200g"], io);
  await answer(["record", KNIFE, "--stage", "forged", "--mass", "709g", "--heats", "9"], io);
  await answer(["record", KNIFE, "--stage", "finished", "--mass", "530g"], io);
  return io.disk.text(RECORD);
}
const RECORDED = await recorded();

/** Text with pieces replaced that must be there. */
const changed = (text: string, ...changes: readonly (readonly [string | RegExp, string])[]): string =>
  changes.reduce((done, [from, to]) => {
    if (!(typeof from === "string" ? done.includes(from) : from.test(done)))
      throw new Error(`no ${String(from)}`);
    return done.replace(from, to);
  }, text);

const world = (knife = DEMO_KNIFE, shop = DEMO_SHOP, record = RECORDED): FakeIo =>
  fakeIo({ files: { [KNIFE]: knife, "shop.yaml": shop, "harvest.record.yaml": record } });

interface Row {
  readonly figure: string;
  readonly same: boolean;
  readonly causes: readonly number[];
  readonly together: boolean;
  readonly oldG?: number;
  readonly newG?: number;
}
interface Report {
  readonly schema: string;
  readonly verdict: string;
  readonly rows: readonly Row[];
  readonly causes: readonly {
    readonly kind: string;
    readonly file?: string;
    readonly path?: string;
    readonly losses?: readonly string[];
  }[];
  readonly unchanging: readonly { readonly path: string }[];
  readonly unexplained: string | null;
  readonly cameOut: readonly {
    readonly stage: string;
    readonly steelG: number;
    readonly neededOldG: number;
    readonly neededNewG: number;
  }[];
}
async function reportOf(io: FakeIo, ...argv: readonly string[]): Promise<Report> {
  return JSON.parse((await answer(["reorder", KNIFE, "--json", ...argv], io)).out);
}
/** Paths of what moves a figure, or the kinds of what is no input. */
function causesOf({ rows, causes }: Report, figure: string): string[] {
  const row = rows.find((one) => one.figure === figure);
  if (row === undefined) throw new Error(`no ${figure}`);
  return row.causes.map((index) => causes[index]?.path ?? causes[index]?.kind ?? "?");
}
const movedIn = ({ rows }: Report): string[] => rows.filter(({ same }) => !same).map(({ figure }) => figure);

describe("an order of which nothing changed", async () => {
  const io = world();
  const { code, out, err, written } = await answer(["reorder", KNIFE], io);
  const report = await reportOf(io);

  it("says so, with what came out the first time, and writes nothing", () => {
    expect([code, err, written]).toEqual([0, "", []]);
    expect(out).toContain("Nothing of it changed.");
    expect(out).not.toContain("WHY");
    expect(wideLines(out)).toEqual([]);
    expect(report).toMatchObject({
      schema: "scantling/reorder/1",
      verdict: "met",
      causes: [],
      unchanging: [],
      unexplained: null,
    });
    expect(movedIn(report)).toEqual([]);
    expect(report.cameOut.map(({ stage, steelG }) => [stage, steelG])).toEqual([
      ["cut", 1024],
      ["billet", 798],
      ["forged", 709],
      ["finished", 530],
    ]);
    for (const { neededOldG, neededNewG } of report.cameOut) expect(neededNewG).toBeCloseTo(neededOldG, 2);
  });

  it("is read by the record's own name too", async () => {
    expect((await answer(["reorder", "harvest.record.yaml"], io)).out).toBe(out);
  });
});

describe("one changed input", () => {
  it("a loss in the shop moves the steel before the forging, and nothing of the knife", async () => {
    const shop = changed(DEMO_SHOP, ["scalePerHeat: 1.2 % +0.8/-0.6 %", "scalePerHeat: 1.6 % +0.8/-0.6 %"]);
    const report = await reportOf(world(DEMO_KNIFE, shop));
    const moved = movedIn(report);
    expect(moved).toEqual(expect.arrayContaining(["needed-cut", "needed-billet"]));
    for (const figure of ["needed-forged", "needed-ready", "needed-finished", "knifeMass", "balance"]) {
      expect(moved).not.toContain(figure);
    }
    for (const figure of moved) expect(causesOf(report, figure)).toEqual(["losses.scalePerHeat"]);
    // Nine heats that take 1.6 % in place of 1.2 %.
    const billet = report.rows.find(({ figure }) => figure === "needed-billet");
    expect(Number(billet?.newG) / Number(billet?.oldG)).toBeCloseTo((0.988 / 0.984) ** 9, 4);
  });

  it("each loss of a group that was not there before is told by itself", async () => {
    const without = changed(DEMO_SHOP, [/^losses:[\s\S]*?\n(?=\S)/mu, ""]);
    expect(without).not.toContain("scalePerHeat");
    const record = await recorded({ ...DEMO_FILES, "shop.yaml": without });
    const losses = "losses: { scalePerHeat: 1.6 %, cropPerEnd: 8 mm }\n";
    const report = await reportOf(world(DEMO_KNIFE, `${without}${losses}`, record));
    expect(causesOf(report, "needed-cut").sort()).toEqual(["losses.cropPerEnd", "losses.scalePerHeat"]);
  });

  it("the rack moves the bars alone", async () => {
    const shop = changed(DEMO_SHOP, [/^ {2}- \{ size: 1\/4 x 2 in.*\n/mu, ""]);
    const report = await reportOf(world(DEMO_KNIFE, shop));
    expect(movedIn(report)).toEqual(expect.arrayContaining(["bars", "steelMass"]));
    expect(movedIn(report)).not.toContain("knifeMass");
    for (const figure of movedIn(report)) expect(causesOf(report, figure)).toEqual(["rack"]);
    const { out } = await answer(["reorder", KNIFE], world(DEMO_KNIFE, shop));
    expect(out).toMatch(/^a {2}rack, shop\.yaml:\d+: 12 entries then, 11 entries today$/mu);
  });

  it("a thickness of the knife moves its mass and balance, and names its line", async () => {
    const knife = changed(DEMO_KNIFE, ["{ at: 60 %, is: 3.6 }", "{ at: 60 %, is: 3.8 }"]);
    const io = world(knife);
    const report = await reportOf(io);
    for (const figure of ["knifeMass", "balance", "needed-finished"]) {
      expect(causesOf(report, figure)).toEqual(["blade.thickness[1].is"]);
    }
    const line = knife.split("\n").findIndex((text) => text.includes("3.8")) + 1;
    const { out } = await answer(["reorder", KNIFE], io);
    expect(out).toContain(`a  blade.thickness[2nd].is, harvest.knife.yaml:${line}: 3.6 then, 3.8 today\n`);
  });

  it("an ask moves its verdict alone, and fails the order: exit code 4", async () => {
    const io = world(changed(DEMO_KNIFE, ["below: 600 g", "below: 560 g"]));
    const { code, out } = await answer(["reorder", KNIFE], io);
    expect(code).toBe(4);
    const report = await reportOf(io);
    expect(movedIn(report)).toEqual(["ask-mass"]);
    expect(causesOf(report, "ask-mass")).toEqual(["order.asks.mass.below"]);
    expect(out).toMatch(/^asked: mass +met +NOT MET +a$/mu);
    expect(report.verdict).toBe("not-met");
  });

  it("that moves nothing is told as such", async () => {
    const report = await reportOf(world(changed(DEMO_KNIFE, ["title: Tall", "title: Another tall"])));
    expect(movedIn(report)).toEqual([]);
    expect(report.unchanging.map(({ path }) => path)).toEqual(["order.title"]);
  });

  it("comments and layout are no inputs", async () => {
    const report = await reportOf(world(DEMO_KNIFE.replaceAll(/ *#.*$/gmu, ""), `${DEMO_SHOP}\n# more\n`));
    expect([movedIn(report), report.causes, report.unchanging]).toEqual([[], [], []]);
  });
});

describe("several changes", async () => {
  const knife = changed(
    DEMO_KNIFE,
    ["{ at: 60 %, is: 3.6 }", "{ at: 60 %, is: 3.8 }"],
    ["below: 600 g", "below: 570 g"],
  );
  const shop = changed(
    DEMO_SHOP,
    ["scalePerHeat: 1.2 %", "scalePerHeat: 1.6 %"],
    [/^ {2}- \{ size: 1\/4 x 2 in.*\n/mu, ""],
    ["currency: EUR", "currency: USD"],
  );
  const old = changed(
    RECORDED,
    [`program: ${version()}`, "program: 0.0.9"],
    [/(forged: \{ low: [\d.]+ g, usual: )[\d.]+/u, "$1703"],
  );
  const io = world(knife, shop, old);
  const report = await reportOf(io);
  const { out, code } = await answer(["reorder", KNIFE], io);

  it("are each told where they move something, the program's own among them", () => {
    expect(causesOf(report, "knifeMass")).toEqual(["blade.thickness[1].is"]);
    expect(causesOf(report, "ask-mass").sort()).toEqual(["blade.thickness[1].is", "order.asks.mass.below"]);
    expect(causesOf(report, "needed-billet").sort()).toEqual([
      "blade.thickness[1].is",
      "losses.scalePerHeat",
    ]);
    expect(causesOf(report, "needed-forged").sort()).toEqual(["blade.thickness[1].is", "program"]);
    expect(causesOf(report, "bars")).toContain("rack");
    expect(report.unchanging.map(({ path }) => path)).toEqual(["currency"]);
  });

  it("stand in a short table of 80 columns, with a letter for each cause and what it is", () => {
    expect(code).toBe(4);
    expect(wideLines(out)).toEqual([]);
    expect(out).toMatch(/^ +then +today +why$/mu);
    expect(out).toMatch(
      new RegExp(`^e {2}scantling 0\\.0\\.9 then, ${version().replaceAll(".", "\\.")} today$`, "mu"),
    );
    expect(flat(out)).toContain("Changed too, and moves nothing here: currency, shop.yaml:7.");
  });

  it("are told in inches as well, in 80 columns", async () => {
    expect(wideLines((await answer(["reorder", KNIFE, "--units", "in"], io)).out)).toEqual([]);
  });
});

test("another plan than then is told as that, not as a change of the files", async () => {
  const report = await reportOf(world(), "--plan", "2");
  expect(causesOf(report, "bars")).toEqual(["choice"]);
  expect(movedIn(report)).not.toContain("knifeMass");
  const { out } = await answer(["reorder", KNIFE, "--plan", "2"], world());
  expect(out).toContain("a  plan 1 of stock was taken, today plan 2\n");
});

test("a file in other units is one change, for all its numbers mean something else", async () => {
  const shop = (units: string): string =>
    `scantling: 1\nunits: ${units}\nkerf: 1.5 mm\ncutStep: 5 mm\nrack:\n  - { size: 6 x 50 mm, steel: "1084", length: 1000 mm }\n`;
  const old = await recorded({ [KNIFE]: DEMO_KNIFE, "shop.yaml": shop("mm") });
  const report = await reportOf(world(DEMO_KNIFE, shop("in"), old));
  const inputs = [...report.causes, ...report.unchanging];
  expect(inputs).toEqual([expect.objectContaining({ file: "shop", path: "" })]);
});

test("a shop file that is gone is named", async () => {
  const io = fakeIo({ files: { [KNIFE]: DEMO_KNIFE, "harvest.record.yaml": RECORDED } });
  const report = await reportOf(io);
  expect(causesOf(report, "bars")).toEqual([""]);
  expect(report.causes[0]).toMatchObject({ kind: "input", file: "shop" });
  expect(flat((await answer(["reorder", KNIFE], io)).out)).toContain("a the shop file: gone");
});

test("losses of the program that changed since are named with it", async () => {
  const bare = { [KNIFE]: DEMO_KNIFE };
  const old = changed(
    await recorded(bare),
    ["scalePerHeat: 1.2 %", "scalePerHeat: 1.1 %"],
    [/(billet: \{ low: [\d.]+ g, usual: )[\d.]+/u, "$1780"],
  );
  const io = fakeIo({ files: { ...bare, "harvest.record.yaml": old } });
  const report = await reportOf(io);
  expect(report.causes).toEqual([expect.objectContaining({ kind: "program", losses: ["scalePerHeat"] })]);
  expect(flat((await answer(["reorder", KNIFE], io)).out)).toContain(
    "it counts on other losses where the shop gives none: scalePerHeat",
  );
});

test("an outline from a drawing is kept with the record, and a new drawing is a change", async () => {
  const drawing = (tip: number): string =>
    `<svg xmlns="http://www.w3.org/2000/svg" width="400mm" height="100mm" viewBox="0 0 400 100">
  <path id="edge" d="M150 60 H250 C290 60 310 50 ${tip} 30"/><path id="spine" d="M${tip} 30 L150 20"/>
  <path id="top" d="M150 20 H30"/><path id="butt" d="M30 20 V44"/><path id="bottom" d="M30 44 H150"/>
</svg>`;
  const knife = `scantling: 1
units: mm
steel: "1084"
blade:
  outline: { drawing: sketch.svg, runs: { edge: edge, spine: spine, tangTop: top, butt: butt, tangBottom: bottom } }
  thickness: [{ at: heel, is: 3 }]
  bevel: { form: flat, height: 15, edgeThickness: 0.5 }
  edgeAngle: 16 deg
tang: { form: full }
`;
  const files = { [KNIFE]: knife, "sketch.svg": drawing(320) };
  const io = fakeIo({ files });
  const begun = await answer(["record", KNIFE, "--note", "begun"], io);
  expect(begun.err).toBe("");
  const record = io.disk.text(RECORD);
  expect(record).toContain("drawing: ");
  const again = await reportOf(fakeIo({ files: { ...files, "harvest.record.yaml": record } }));
  expect([movedIn(again), again.unexplained]).toEqual([[], null]);
  const other = fakeIo({ files: { ...files, "sketch.svg": drawing(325), "harvest.record.yaml": record } });
  const report = await reportOf(other);
  expect(causesOf(report, "knifeMass")).toEqual([""]);
  expect(report.causes[0]).toMatchObject({ kind: "input", file: "drawing" });
  expect((await answer(["reorder", KNIFE], other)).out).toContain("a  sketch.svg: another\n");
});

describe("where it cannot be told", () => {
  test("no record: exit code 3, and what to do", async () => {
    const { code, err } = await answer(["reorder", KNIFE], { files: DEMO_FILES });
    expect(code).toBe(3);
    expect(flat(err)).toContain("there is no harvest.record.yaml");
    expect(err).toContain("scantling plan FILE");
  });

  test("a record begun by hand keeps no plan", async () => {
    const record = `scantling: 1\nunits: mm\nknife: ${KNIFE}\nentries:\n  - { revision: 1, on: 2026-10-05, note: a }\n`;
    const { code, err } = await answer(["reorder", KNIFE], world(DEMO_KNIFE, DEMO_SHOP, record));
    expect(code).toBe(3);
    expect(err).toContain("keeps no plan");
  });

  test("files that today's program does not take: the figures stand, why is not told", async () => {
    const old = changed(RECORDED, ["      currency: EUR", "      money: EUR"]);
    const report = await reportOf(world(changed(DEMO_KNIFE, ["is: 3.6", "is: 3.8"]), DEMO_SHOP, old));
    expect(movedIn(report)).toContain("knifeMass");
    expect(report.unexplained).toContain("makes no plan of the files as they were");
    expect(report.causes).toEqual([]);
  });

  test("a knife file with errors today is told with its lines", async () => {
    const { code, err } = await answer(
      ["reorder", KNIFE],
      world(changed(DEMO_KNIFE, ["heelHeight:", "heelHight:"])),
    );
    expect(code).toBe(3);
    expect(err).toContain("did you mean");
  });
});
