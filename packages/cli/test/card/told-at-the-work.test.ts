import { describe, expect, it } from "vitest";
import { makeDrillingModel } from "../../src/models/drilling-model.js";
import { fewerPreformRows, preformRows } from "../../src/report/setup-shape.js";
import { DEMO_KNIFE, DEMO_SHOP, demoWith } from "../support/demo.js";
import { cardOf, columnOf, figuresOf, panelOf, panelsOf, rowsOf, textOf } from "./card-of.js";

/** A bowie with a swedge, a guard, and a balance that is asked for. */
const BOWIE = `scantling: 1
order:
  code: BO-1
  title: Bowie with a swedge
  asks: { balance: { between: [10 mm, 60 mm] }, hardness: { about: 58 ± 1 } }
units: mm
steel: "5160"
blade:
  outline: { family: clip-point, edgeLength: 262, heelHeight: 41, spineBreak: 170, tipHeight: 24 }
  ricasso: 14
  thickness: [{ at: heel, is: 6.4 }, { at: 170, is: 5 }, { at: tip, is: 1.8 }]
  plunge: { at: 2, length: 8 }
  bevel: { form: flat, height: 30, edgeThickness: 0.6 }
  edgeAngle: 20 deg
  swedge: { from: 180, to: 250, angle: 25 deg, thickness: 1.5 }
tang: { form: hidden, length: 120, heights: { front: 20, middle: 16, butt: 9 }, shoulderRadius: 3 }
handle:
  guard: { material: brass, at: -14, length: 7, height: 66, width: 18, centre: 20, section: oval }
  block: { material: African blackwood, section: oval, length: 118, height: 34, width: 26, centre: 20 }
`;
const BAR = `scantling: 1
units: mm
rack: [{ size: 10 x 40, steel: "5160", length: 1500 }]
`;

describe("a swedge", () => {
  it("is a step of its own after the bevels: from where to where, its angle, how wide its strip comes out", async () => {
    const { card } = await cardOf(BOWIE, BAR);
    const titles = panelsOf(card).map(({ title }) => title.replace(/,.*/u, ""));
    const place = titles.indexOf("Grind the swedge");
    expect(titles.slice(place - 1, place + 2)).toEqual(["Grind the bevels", "Grind the swedge", "Harden"]);
    const panel = panelOf(card, "Grind the swedge");
    expect(textOf(panel)).toContain("From 180.0 to 250.0, 25.0° on each face.");
    expect(columnOf(panel, "from heel")).toEqual(["180.0", "215.0", "250.0"]);
    // 5 − 3.2·45/92 = 3.43 mm half way, and 0.1 mm more on each face before hardening.
    expect(columnOf(panel, "spine before")[1]).toBe("3.63");
    expect(columnOf(panel, "spine left")).toEqual(["1.50", "1.50", "1.50"]);
    // At its beginning 5 − 3.2·10/92 + 0.2 = 4.85 mm: (4.85 − 1.5)/2/tan 25° = 3.59.
    expect(columnOf(panel, "strip wide")[0]).toBe("3.59");
  });

  it("is told where the finished blade's spine drops, and only there", async () => {
    const { card } = await cardOf(BOWIE, BAR);
    const panel = panelOf(card, "Finished blade");
    expect(columnOf(panel, "thick at spine").map((cell) => String(cell).endsWith(" *"))).toEqual([
      false,
      false,
      false,
      true,
      true,
    ]);
    expect(textOf(panel)).toContain("* with swedge");
    expect(textOf(panelOf((await cardOf()).card, "Finished blade"))).not.toContain("swedge");
  });

  it("is what the spine is held over the stone by", async () => {
    const { card } = await cardOf(BOWIE, BAR);
    // 6.3·sin 20° − 0.75·cos 20° = 1.45; with the spine before it, 2.26 mm, it would be 1.1.
    expect(columnOf(panelOf(card, "Sharpen"), "spine over stone").at(-1)).toBe("1.4");
  });
});

it("a guard is told with its sizes over all", async () => {
  const { card } = await cardOf(BOWIE, BAR);
  expect(figuresOf(panelOf(card, "Slot the guard"))["guard long, high, across"]).toBe("7.0 × 66.0 × 18.0 mm");
});

it("a balance is told with where it is measured from, before and after the work", async () => {
  const told = "balance from the heel (ahead +)";
  const asked = await cardOf(BOWIE, BAR);
  expect(panelOf(asked.card, "Asked for").tool).toBe("finished knife; balance from the heel, ahead +");
  for (const { card } of [asked, await cardOf()])
    expect(Object.keys(figuresOf(panelOf(card, "The knife as made")))).toContain(told);
});

describe("holes", () => {
  const crowded = demoWith(["at: [-116, 76]", "at: [-128, 76]"]);

  it("that are warned of are told where they are drilled, each by its letter, in two sentences at the most", async () => {
    const { card, measured } = await cardOf(crowded);
    const warned = measured.findings.filter(
      ({ severity, path }) => severity === "warn" && path.includes("holes["),
    );
    expect(warned.length).toBeGreaterThan(0);
    const said = textOf(panelOf(card, "Drill the steel"));
    const warnings = makeDrillingModel(measured)?.warnings ?? [];
    expect(warnings).toHaveLength(warned.length);
    for (const warning of warnings) {
      expect(warning).toMatch(/^Hole [A-Z]: [^.]+(?:\.\d[^.]*)*\./u);
      expect(said).toContain(warning);
    }
  });

  it("that are not are not, nor those that the file accepts", async () => {
    expect(makeDrillingModel((await cardOf()).measured)?.warnings).toBeUndefined();
    const codes = [...new Set((await cardOf(crowded)).measured.findings.map(({ code }) => code))];
    const accept = codes
      .filter((code) => code.startsWith("hole"))
      .map((code) => `  ${code}: it was made so before`)
      .join("\n");
    const { measured } = await cardOf(`${crowded}\naccept:\n${accept}\n`);
    expect(makeDrillingModel(measured)?.warnings).toBeUndefined();
  });
});

describe("the fire", () => {
  it("has the soak of steels that a source counts by thickness, and what files prove the hardness", async () => {
    const { card } = await cardOf(demoWith(['steel: "1084"', 'steel: "1095"']));
    expect(textOf(panelOf(card, "Harden"))).toMatch(/Soak by thickness, \d\.\d+ mm[^:]*: \d+ min \(/u);
    expect(textOf(panelOf((await cardOf()).card, "Harden"))).not.toContain("Soak");
    // A file skates on what is 2 HRC harder and cuts what is 2 HRC softer.
    const asked = await cardOf(BOWIE, BAR);
    expect(textOf(panelOf(asked.card, "Temper"))).toContain("at 58 HRC file 55 skates, 60 cuts");
    const plain = await cardOf(BOWIE.replace(", hardness: { about: 58 ± 1 }", ""), BAR);
    expect(textOf(panelOf(plain.card, "Temper"))).toContain("File 60 barely skates, 65 cuts: 60 to 62 HRC");
  });
});

describe.each([
  ["the demo", DEMO_KNIFE, DEMO_SHOP],
  ["the bowie", BOWIE, BAR],
])("the preform of %s", (_, knife, shop) => {
  it.each(["mm", "in"] as const)("can be drawn from row to row in %s", async (units) => {
    const { setup, card } = await cardOf(knife, shop, units);
    if (setup.card === undefined) throw new Error("there is a bar for it");
    const inMm = (cell: string): number => {
      const [whole = "0", part = "0/1"] =
        cell.includes("/") && !cell.includes(" ") ? ["0", cell] : cell.split(" ");
      const [over = 0, under = 1] = part.split("/").map(Number);
      return units === "mm" ? Number(cell) : 25.4 * (Number(whole) + over / under);
    };
    const numbers = (rows: readonly (readonly string[])[]) =>
      rows.slice(1).map(([at = "", high = "", , , then = ""]) => [at, high, then].map(inMm));
    const all = numbers(preformRows(setup.card, units));
    const few = numbers(fewerPreformRows(setup.card, units));
    expect(rowsOf(panelOf(card, "Preform"))).toHaveLength(few.length);
    expect(few.length).toBeLessThan(all.length);
    expect([few[0], few.at(-1)]).toEqual([all[0], all.at(-1)]);
    for (const [at = 0, ...sizes] of all) {
      const next = Math.max(
        1,
        few.findIndex(([place = 0]) => place >= at),
      );
      const [[from = 0, ...low], [to = 0, ...high]] = [few[next - 1] ?? [], few[next] ?? []];
      sizes.forEach((size, i) => {
        const drawn = (low[i] ?? 0) + (((high[i] ?? 0) - (low[i] ?? 0)) * (at - from)) / (to - from);
        // What is told of a place is itself half a mm or 1/64 in off along the bar at the most.
        expect(Math.abs(drawn - size)).toBeLessThan(0.52 + 0.04);
      });
    }
  });
});
