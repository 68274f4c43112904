import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { projectFile } from "../file/files.js";
import { answer, flat, wideLines } from "../support/answer.js";
import { DEMO_FILES, DEMO_KNIFE, DEMO_SHOP } from "../support/demo.js";

const FILE = "harvest.knife.yaml";
const FORGE_LENGTH = "  forgeLength: 450                # longest billet that heats evenly\n";

/** The demo's shop with more keys at the end of its press, and with groups of their own. */
function shopWith(press: string, groups = ""): Readonly<Record<string, string>> {
  if (!DEMO_SHOP.includes(FORGE_LENGTH)) throw new Error("the demo's press has changed");
  const shop = DEMO_SHOP.replace(FORGE_LENGTH, `${FORGE_LENGTH}${press}`);
  return { ...DEMO_FILES, "shop.yaml": `${shop}\n${groups}` };
}

/** The forge card of the whole report: what hangs at the press. */
function forgePart(out: string): string {
  const end = out.indexOf("\nAt the bench: in the order of use");
  expect(end).toBeGreaterThan(0);
  return out.slice(0, end);
}

const STOPS = "  stopBlocks: [3, 5, 8, 12]\n  shims: [1, 0.5, { size: 0.2, count: 2 }, 0.1]\n";

async function card(argv: readonly string[] = [], files: Readonly<Record<string, string>> = DEMO_FILES) {
  const { code, out, err } = await answer(["setup", FILE, "--json", ...argv], { files });
  expect(err).toBe("");
  expect(code).toBe(EXIT.done);
  return JSON.parse(out);
}

describe("setup", () => {
  for (const units of ["mm", "in"]) {
    for (const [name, files] of [
      ["without stop blocks", DEMO_FILES],
      ["with stop blocks", shopWith(STOPS)],
      [
        "with many shims",
        shopWith("  stopBlocks: [2]\n  shims: [5, 3, 2, 1.5, 1.2, 1.1, 0.9, 0.7, 0.3, 0.1]\n"),
      ],
    ] as const) {
      it(`reports on 80 columns in ${units}, ${name}`, async () => {
        const { code, out, err } = await answer(["setup", FILE, "--units", units], { files });
        expect(err).toBe("");
        expect(code).toBe(EXIT.done);
        expect(wideLines(out)).toEqual([]);
        expect(out).not.toMatch(/NaN|undefined|Infinity/);
      });
    }
  }

  it("tells the steps in the order of the work", async () => {
    const { out } = await answer(["setup", FILE], { files: DEMO_FILES });
    const titles = [
      "Cut",
      "Weigh",
      "Squeeze the weld",
      "Mark",
      "Heats left",
      "Shoulder",
      "Press the blade down",
      "Preform",
      "Distal taper",
    ];
    const places = titles.map((title) => out.indexOf(title));
    expect(Math.min(...places)).toBeGreaterThan(0);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  it("gives marks that add up to the billet, on either side of the losses", async () => {
    const { marks, billet, bars, cutLengthMm } = await card();
    expect(bars).toBeGreaterThan(1);
    expect(cutLengthMm).toBeGreaterThan(0);
    for (const side of [marks.usual, marks.highLosses]) {
      expect(Math.abs(side.tangMm + side.bladeMm - side.neededMm)).toBeLessThan(1e-12 * side.neededMm);
      expect(Math.abs(side.neededMm + side.spareMm - side.availableMm)).toBeLessThan(1e-9);
      expect(side.spareMm).toBeGreaterThanOrEqual(-1e-9);
    }
    expect(marks.usual.availableMm).toBe(billet.lengthMm);
    expect(marks.atMm).toBe(marks.highLosses.tangMm);
  });

  it("marks what the ledger of the same plan needs", async () => {
    const { marks, billet } = await card();
    const { plans } = JSON.parse((await answer(["stock", FILE, "--json"], { files: DEMO_FILES })).out);
    const row = plans[0].ledger.find(({ row: name }: { row: string }) => name === "dressed-billet");
    const length = row.volumeMm3 / (billet.heightMm * billet.thicknessMm);
    expect(Math.abs(marks.usual.neededMm / length - 1)).toBeLessThan(1e-12);
  });

  it("names what is to be laid in, with what it is off by", async () => {
    const { thickness, taper } = await card([], shopWith(STOPS));
    expect(thickness.passes.length).toBeGreaterThan(1);
    for (const { stopWantedMm, stop, comesOut } of [...thickness.passes, ...taper]) {
      if (stop === null) continue;
      // 950 °C, no offset.
      expect(comesOut.coldMm).toBeCloseTo(stop.heightMm / 1.0128, 9);
      const sum = stop.shimsMm.reduce((all: number, shim: number) => all + shim, stop.blockMm);
      expect(sum).toBeCloseTo(stop.heightMm, 9);
      expect(stop.heightMm - stopWantedMm).toBeCloseTo(stop.errorMm, 9);
    }
    const last = thickness.passes.at(-1);
    expect(last.coldMm).toBeCloseTo(thickness.toMm, 9);
  });

  it("does without a press, and says which keys to add", async () => {
    const { thickness } = await card();
    expect(thickness.passes[0].stop).toBeNull();
    const { out } = await answer(["setup", FILE], { files: DEMO_FILES });
    expect(flat(out)).toContain("stopBlocks: [6, 8, 10]");
    const told = await answer(["setup", FILE], { files: shopWith(STOPS) });
    expect(told.out).not.toContain("No stop blocks are known");
    expect(told.out).toMatch(/lay in/);
  });

  it("works at the shop's own temperature and spread", async () => {
    const hotter = await card([], shopWith("  temperature: 1100 C\n"));
    expect(hotter.temperatureC).toBe(1100);
    const heel = hotter.taper[0];
    expect(heel.hotMm / heel.coldMm).toBeCloseTo(1.0158, 9);
    const shop = DEMO_SHOP.replace("losses: ", "limits: { forge: { bevelSpreadShare: 1 } }\nlosses: ");
    const { preform } = await card([], { ...DEMO_FILES, "shop.yaml": shop });
    expect(preform.spreadShare).toBe(1);
    // All into height: the preform is as long as the blade.
    const last = preform.stations.at(-1);
    expect(last.alongMm).toBeCloseTo(last.becomesXMm, 5);
  });

  it("bends the preform by what an earlier blade did", async () => {
    expect((await card()).preform.bendDownMm).toBeNull();
    const files = shopWith("", "preCurve: { sweep: 8, length: 228 }\n");
    expect((await card([], files)).preform.bendDownMm).toBeCloseTo(8, 6);
    const { out } = await answer(["setup", FILE], { files });
    expect(flat(out)).toContain("Bend the point down by 8 mm");
  });

  it("takes the fullers of the shop, and warns of one that is too sharp", async () => {
    const { shoulder } = await card([], shopWith("", "fullers: [10, 5]\n"));
    expect(shoulder.passes[0].fullerRadiusMm).toBe(10);
    const sharp = await card([], shopWith("", "fullers: [1]\n"));
    const codes = sharp.findings.map(({ code }: { code: string }) => code);
    expect(codes).toContain("shoulder-corner-sharp");
    const found = sharp.findings.find(({ code }: { code: string }) => code === "shoulder-corner-sharp");
    expect(found.file).toBe("shop.yaml");
  });

  it("gives any of the plans, the best one by default", async () => {
    const { plans } = JSON.parse((await answer(["stock", FILE, "--json"], { files: DEMO_FILES })).out);
    expect(await card()).toMatchObject({ plan: 1, bar: plans[0].bar, bars: plans[0].bars });
    expect(await card(["--plan", "2"])).toMatchObject({ plan: 2, bar: plans[1].bar, bars: plans[1].bars });
  });

  it("says how many plans there are where another is asked for", async () => {
    const { code, err } = await answer(["setup", FILE, "--plan", "999"], { files: DEMO_FILES });
    expect(code).toBe(EXIT.usage);
    expect(err).toMatch(/there is no plan 999: there are \d+ plans/);
    for (const place of ["0", "-1", "two", "1.5"]) {
      const { code: wrong } = await answer(["setup", FILE, `--plan=${place}`], { files: DEMO_FILES });
      expect(wrong, place).toBe(EXIT.usage);
    }
  });

  it("has nothing to set up where the rack is empty, and says so", async () => {
    const files = { [FILE]: DEMO_KNIFE };
    const { code, out } = await answer(["setup", FILE], { files });
    expect(code).toBe(EXIT.done);
    expect(out).toContain("No plan");
    const none = { schema: "scantling/setup/1", plan: null, stopFindings: [], asksNotMet: [] };
    const setup = await card([], files);
    expect(setup).toMatchObject(none);
    // What is done after the forge needs no bars.
    expect(Object.keys(setup).sort()).toEqual([...Object.keys(none), "bench", "heatTreatment"].sort());
    expect(out).toContain("At the bench: in the order of use");
  });
});

describe("a stack of two steels", () => {
  const read = (name: string): string => projectFile(`examples/pattern-welded-bowie/${name}`);
  const files = {
    [FILE]: read("pattern-welded-bowie.knife.yaml"),
    "shop.yaml": read("shop.yaml"),
  };

  it("starts from the last bar, which feeds the blade on either side of the losses", async () => {
    const setup = await card([], files);
    expect(setup).toMatchObject({ plan: 1, bar: null, weld: null });
    expect(setup.billet).toMatchObject({ heightMm: 38.1, thicknessMm: 12.7 });
    for (const side of [setup.marks.usual, setup.marks.highLosses]) {
      expect(Math.abs(side.tangMm + side.bladeMm + side.spareMm - side.availableMm)).toBeLessThan(1e-9);
      expect(side.spareMm).toBeGreaterThan(-1e-9);
    }
    expect(setup.heats.highLosses.more).toBeGreaterThanOrEqual(0);
  });

  it("has a line for each weld: pieces, what to draw to, as cut", async () => {
    const { out } = await answer(["setup", FILE], { files });
    expect(wideLines(out)).toEqual([]);
    expect(flat(out)).toMatch(/Cut, each 110 mm \(4 11\/32"\) long: 7 of 1084 .*; 6 of 15N20/u);
    expect(flat(out)).toMatch(
      /Weld 1: 13 pieces, 26\.8 mm high cleaned; draw to 44\.5 mm × 6\.7 mm, \d+(?:\.5)? mm long; cut in 4\./u,
    );
    expect(flat(out)).toMatch(/Weld 3: 4 pieces, .* draw to 38\.1 mm × 12\.7 mm, \d+(?:\.5)? mm long/u);
    const { welds } = await card([], files);
    const { stack } = JSON.parse((await answer(["stock", FILE, "--json"], { files })).out);
    expect(welds).toHaveLength(stack.welds.length);
    expect(welds[0]).toMatchObject({ pieces: 13, draw: { cutIn: 4, widthMm: 44.45 } });
    expect(welds.at(-1).draw).toBeNull();
    const { code } = await answer(["setup", FILE, "--plan", "2"], { files });
    expect(code).toBe(EXIT.usage);
  });
});

describe("oven and quench tank", () => {
  const SMALL = shopWith("", "oven: { length: 300 }\nquenchTank: { depth: 200 }\n");

  it("stop a check where the blade does not fit, with the place in the shop file", async () => {
    const { code, out } = await answer(["check", FILE, "--json"], { files: SMALL });
    expect(code).toBe(EXIT.notMet);
    const { findings } = JSON.parse(out);
    for (const expected of ["longer-than-oven", "longer-than-tank"]) {
      const found = findings.find((one: { code: string }) => one.code === expected);
      expect(found).toMatchObject({ severity: "stop", file: "shop.yaml" });
      expect(found.line).toBeGreaterThan(1);
    }
  });

  it("stop a plan as well", async () => {
    const { code, out } = await answer(["plan", FILE, "--out", "out"], { files: SMALL });
    expect(code).toBe(EXIT.notMet);
    expect(flat(out)).toContain("an oven of 300 mm");
  });

  it("say nothing where the blade fits", async () => {
    const files = shopWith("", "oven: { length: 400 }\nquenchTank: { depth: 290 }\n");
    const { code } = await answer(["check", FILE], { files });
    expect(code).toBe(EXIT.done);
  });

  it("are read in the units of the file, and refused where they cannot be", async () => {
    const files = shopWith("", "oven: { length: 12 in, temperature: 1500 F }\nquenchTank: { depth: -3 }\n");
    const { code, err } = await answer(["check", FILE], { files });
    expect(code).toBe(EXIT.file);
    expect(err).toContain("quenchTank");
    expect(err).not.toContain("oven");
  });
});

describe("the card as a sheet", () => {
  const camp = {
    [FILE]: projectFile("examples/camp-knife/camp-knife.knife.yaml"),
    "shop.yaml": projectFile("examples/shop.yaml"),
  };

  it("fits one page with stops", async () => {
    for (const files of [shopWith(STOPS), camp]) {
      const { out } = await answer(["setup", FILE], { files });
      expect(forgePart(out).trimEnd().split("\n").length).toBeLessThanOrEqual(75);
    }
  });

  it("shows at its head what check says stop to, in text and in JSON, and still ends well", async () => {
    const files = { ...camp, "shop.yaml": `${camp["shop.yaml"]}\noven: { length: 300 }\n` };
    const { code, out } = await answer(["setup", FILE], { files });
    expect(code).toBe(EXIT.done);
    const head = flat(out.slice(0, out.indexOf("\nCut")));
    expect(head).toContain("STOP: hole C: The centre of this 6.5 mm hole is 9 mm from the butt");
    expect(head).toMatch(
      /STOP: Hot, the blade with its tang is 372\.\d+ mm long; .* \(scantling check FILE\)/u,
    );
    const { stopFindings } = await card([], files);
    const checked = JSON.parse((await answer(["check", FILE, "--json"], { files })).out);
    expect(stopFindings).toEqual(
      checked.findings.filter(({ severity }: { severity: string }) => severity === "stop"),
    );
    expect(stopFindings.length).toBe(2);
  });

  it("names the asks that are not met", async () => {
    const knife = DEMO_KNIFE.replace(/mass: .*/u, "mass: { below: 200 g }");
    expect(knife).not.toBe(DEMO_KNIFE);
    const files = { ...DEMO_FILES, [FILE]: knife };
    expect((await answer(["setup", FILE], { files })).out).toContain("NOT MET: mass (scantling check FILE)");
    expect((await card([], files)).asksNotMet).toEqual(["mass"]);
  });

  it("tells what the scale has to show as gate does, with room to write", async () => {
    const { out } = await answer(["setup", FILE], { files: DEMO_FILES });
    expect(out).toMatch(/^ {2}dressed billet +742 g +785 g +848 g +_+ g$/mu);
    const { masses } = await card();
    expect(masses.map(({ stage }: { stage: string }) => stage)).toEqual(["billet", "forged", "ready"]);
    const gate = JSON.parse(
      (await answer(["gate", FILE, "--stage", "billet", "--mass", "800 g", "--json"], { files: DEMO_FILES }))
        .out,
    );
    for (const { stage, lowG, usualG, highG } of masses) {
      const target = gate.targets.find((each: { stage: string }) => each.stage === stage);
      expect(Object.values(target)).toEqual(expect.arrayContaining([lowG, usualG, highG]));
    }
  });

  it("has no limits' sources and no places in files; JSON keeps both", async () => {
    const files = shopWith("  stopBlocks: [30, 40]\n");
    const { out } = await answer(["setup", FILE], { files });
    expect(out).not.toContain("Limit:");
    expect(out).not.toMatch(/shop\.yaml:\d/u);
    expect(flat(out)).toContain("Weld, pass 2: no stop in hand is low enough: make a block of 12.99 mm");
    expect(out).toMatch(/12\.99 {2}make 12\.99$/mu);
    const { findings, weld } = await card([], files);
    expect(findings[0]).toMatchObject({ file: "shop.yaml", basis: expect.stringMatching(/./u) });
    expect(weld.passes.at(-1)).toMatchObject({ stop: null, comesOut: null });
    expect(weld.passes.at(-1).makeBlockMm).toBeCloseTo(18.25 * 0.7 * 1.0168, 1);
  });

  it("gives the handle its stops: those of the blade by number, others in full", async () => {
    const same = await answer(["setup", FILE], { files: shopWith(STOPS) });
    expect(same.out).toMatch(/fuller R {2}blade's pass$/mu);
    const pressed = (await card([], shopWith(STOPS))).shoulder.passes.flatMap(
      ({ press }: { press: unknown[] }) => press,
    );
    expect(pressed).toEqual((await card([], shopWith(STOPS))).handle.passes);
    const bowie = "examples/pattern-welded-bowie";
    const thinner = {
      [FILE]: projectFile(`${bowie}/pattern-welded-bowie.knife.yaml`),
      "shop.yaml": `${projectFile(`${bowie}/shop.yaml`)}\npress:\n${STOPS}`,
    };
    const { out } = await answer(["setup", FILE], { files: thinner });
    expect(out).toMatch(/fuller R {2}lay in$/mu);
  });

  it("lays off hot steel in halves of a mm and 1/32 in, everywhere", async () => {
    const { out } = await answer(["setup", FILE, "--units", "in"], { files: shopWith(STOPS) });
    const card = forgePart(out).slice(out.indexOf("Squeeze the weld"));
    expect(card).not.toMatch(/\/64\b/u);
    expect(card).not.toMatch(/[−-]0["\s]|"\+/u);
    const metric = forgePart((await answer(["setup", FILE], { files: shopWith(STOPS) })).out);
    const marks = metric.slice(metric.indexOf("handle takes"), metric.indexOf("Shoulder:"));
    expect(marks.match(/(?<![.\d])\d+(?:\.5)? mm/gu)).toHaveLength(8);
  });

  it("warns of heats that are none, as check does", async () => {
    const files = shopWith("  temperature: 950 F\n  weldingTemperature: 800 C\n");
    const { out } = await answer(["setup", FILE], { files });
    expect(flat(out)).toContain("510 °C is no forging heat");
    const checked = await answer(["check", FILE], { files });
    expect(flat(checked.out)).toContain("800 °C is no welding heat");
    expect(checked.code).toBe((await answer(["check", FILE], { files: DEMO_FILES })).code);
  });
});
