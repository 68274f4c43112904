import { benchCard, checkLayout, flattenItems, paperNamed } from "@scantling/render";
import { describe, expect, it } from "vitest";
import { DEMO_KNIFE, DEMO_SHOP, demoWith } from "../support/demo.js";
import { cardOf, columnOf, figuresOf, panelOf, panelsOf, rowsOf, textOf } from "./card-of.js";

const A4 = paperNamed("A4");
const words = (model: Parameters<typeof benchCard>[0]): string =>
  benchCard(model, A4)
    .flatMap(({ items }) => flattenItems(items))
    .flatMap((item) => (item.kind === "text" ? [item.text] : []))
    .join(" ");

describe("the demo's card, checked by hand", () => {
  it("cuts, marks and weighs", async () => {
    const { card } = await cardOf();
    expect(textOf(panelOf(card, "Cut"))).toMatch(/^3 pieces, each 160 mm \(6 5\/16"\) of 1\/4 x 2 in/u);
    expect(figuresOf(panelOf(card, "Mark"))).toEqual({ "from the butt end": "36.5 mm" });
    const [, , ready] = columnOf(panelOf(card, "Weigh"), "usually enough");
    // Heavier than the finished steel, 528 g, by what is ground and drilled afterwards.
    expect(Number(ready)).toBeGreaterThan(528);
    expect(Number(ready)).toBeLessThan(600);
  });

  it("scribes half of what the blade is thicker than its edge: (4.8 − 0.7) / 2, and lays shims by half of the taper", async () => {
    const { card } = await cardOf();
    const scribe = panelOf(card, "Scribe");
    expect(figuresOf(scribe)).toMatchObject({
      "if 4.80 mm: gauge at": "2.05 mm",
      // Its point lies at half of its diameter.
      "or scribe with a drill": "4.1 mm",
    });
    // It rests on the tang, whose faces are cleaned and still have 0.1 mm on them each: 4.6 + 0.2.
    expect(textOf(scribe)).toMatch(/^thickness of the tang 10\.0 mm behind the heel \[mm\]/u);
    expect(textOf(scribe)).toContain("else at (thickness − 0.70 mm) / 2; scribe both faces");
    expect(rowsOf(scribe)).toEqual([
      // The flats stay as forged: 4.6 at the heel, 3.6 at 60 %, 2.2 at the tip; (4.8 − 2.2) / 2.
      ["225.0", "1.30"],
      // 3.6 − 1.4 · 15 / 40 = 3.075, half of 1.725.
      ["168.8", "0.86"],
      // 4.6 − 50 / 60 = 3.767, half of 1.033.
      ["112.5", "0.52"],
      // 2.4 + 0.2 at the butt.
      ["butt", "1.10"],
    ]);
  });

  it("drills from two edges of the finished profile, and shims the tapered tang", async () => {
    const { card } = await cardOf();
    // Butt at −138, top at 92: the holes lie at −26, −84, −116 and 76.
    expect(rowsOf(panelOf(card, "Drill the steel"))).toEqual([
      ["A pin", "112.00", "16.00", "4.00", "4 mm"],
      ["B pin", "54.00", "16.00", "4.00", "4 mm"],
      ["C thong", "22.00", "16.00", "6.00", "6 mm"],
    ]);
    expect(textOf(panelOf(card, "Drill the steel"))).toContain("Pin play: A, B 0.00 mm.");
    // 2.2 mm over 128 mm: 16, 74 and 128 mm behind the handle front.
    expect(rowsOf(panelOf(card, "Taper the tang"))).toEqual([
      ["16.0", "0.14", "0.28"],
      ["74.0", "0.64", "1.27"],
      ["128.0", "1.10", "2.20"],
    ]);
  });

  it("grinds at atan((4.6 − 0.7) / (2 · 48)) a face at the heel", async () => {
    const { card } = await cardOf();
    const angle = (Math.atan((4.6 - 0.7) / (2 * 48)) * 180) / Math.PI;
    expect(rowsOf(panelOf(card, "Grind"))[0]).toEqual([
      "0.0",
      "48.0",
      `${angle.toFixed(1)}°`,
      "1.95",
      "0.70",
    ]);
    expect(textOf(panelOf(card, "Grind"))).toContain(
      "At 2.3° all along the line drops to 37 % of the height above.",
    );
  });

  it("saws pins 2 mm longer on both sides, says when they are ground flush, and mixes what can be measured", async () => {
    const { card } = await cardOf();
    // Tang at 16 and 74 mm of 128: 4.325 and 3.328 thick, between slabs of 8.
    expect(columnOf(panelOf(card, "Pins"), "saw, to grind flush")).toEqual(["24.3", "23.3"]);
    expect(textOf(panelOf(card, "Pins"))).toContain(
      'Lengths to saw: 2.0 mm (5/64") stand out on each side. Glue in, then grind flush.',
    );
    expect(textOf(panelOf(card, "Pins"))).not.toMatch(/cut flush/u);
    expect(columnOf(panelOf(card, "Pins"), "saw, to peen")).toEqual(["24.3 to 26.3", "23.3 to 25.3"]);
    expect(columnOf(panelOf(card, "Pins"), "drill handle")).toEqual(["#21", "#21"]);
    expect(figuresOf(panelOf(card, "Pins"))).toEqual({ "glue to mix": "4.0 ml" });
    expect(textOf(panelOf(card, "Pins"))).toContain("Drill slabs with the tang shimmed level.");
    expect(textOf(panelOf(card, "Saw the slabs"))).toContain("134 × 36 × 9 mm");
  });

  it("says what is unwise where it is done", async () => {
    const { card } = await cardOf();
    expect(textOf(panelOf(card, "Harden"))).toMatch(
      /^The edge goes into the quench 0\.7 mm thick, with a spine of 4\.6 mm; less than 0\.8 mm warps and cracks easily\./u,
    );
    const careful = await cardOf(demoWith(["minEdge: 0.6", "minEdge: 0.8"]));
    expect(textOf(panelOf(careful.card, "Harden"))).not.toContain("cracks");
  });

  it("tells inches to who works in them, and stops as they are marked", async () => {
    const shop = `${DEMO_SHOP}\n`.replace(
      "press:\n",
      "press:\n  stopBlocks: [4, 5, 6, 8, 10, 12, 16]\n  shims: [0.1, 0.2, 0.5]\n",
    );
    const { card } = await cardOf(DEMO_KNIFE, shop, "in");
    expect(figuresOf(panelOf(card, "Mark"))).toEqual({ "from the butt end": '1 7/16"' });
    expect(columnOf(panelOf(card, "Press the blade down"), "blocks and shims, mm")[0]).toMatch(/^10/u);
    expect(benchCard(card, paperNamed("Letter")).flatMap(checkLayout)).toEqual([]);
  });
});

describe("heat treatment", () => {
  it("gives every figure its source, and marks what is from memory", async () => {
    const { card } = await cardOf();
    // 1600 and 1500 °F: 871.1 and 815.6 °C.
    expect(figuresOf(panelOf(card, "Harden"))).toMatchObject({ normalise: "871 °C", harden: "816 °C" });
    const text = textOf(panelOf(card, "Temper"));
    expect(text).toContain("[a] a handbook on heat treating");
    expect(text).toMatch(/\[c\] from memory, unconfirmed/u);
    expect(textOf(panelOf(card, "Harden"))).toContain("☐ harden 816 °C (1500 °F) fast oil [c]");
  });

  it("tells °F as the source does, and every temperature of an inch card in °F", async () => {
    const of = (steel: string, units: "mm" | "in") =>
      cardOf(demoWith(['steel: "1084"', `steel: "${steel}"`]), DEMO_SHOP, units);
    // A smiths' discussion: 1525 °F. 829.4 °C, not the 830 °C that are 1526 °F.
    const spring = await of("5160", "in");
    expect(figuresOf(panelOf(spring.card, "Harden"))).toMatchObject({ harden: "1525 °F" });
    const text = textOf(panelOf(spring.card, "Harden"));
    expect(text).toContain("harden 1525 °F (829 °C)");
    // 1300 and 1200 °F are 704.4 and 648.9 °C, 20 °F are 11.1 K.
    expect(text).toContain("fast to 1300 °F, then at most 20 °F an hour to 1200 °F");
    expect(textOf(panelOf((await of("5160", "mm")).card, "Harden"))).toContain(
      "fast to 704 °C, then at most 11 °C an hour to 649 °C",
    );
    for (const steel of ["1095", "5160", "52100", "O1", "W2", "D2", "AEB-L", "1084", "80CrV2", "15N20"]) {
      const { card } = await of(steel, "in");
      const said = panelsOf(card).map(textOf).join(" ");
      expect(said, steel).toContain("°F");
      // °C only in brackets behind its °F.
      expect(said.replaceAll(/\([^()]*°C\)/gu, ""), steel).not.toContain("°C");
    }
  });

  it("offers what another source says instead, not after it", async () => {
    const { card } = await cardOf(demoWith(['steel: "1084"', 'steel: "1095"']));
    const text = textOf(panelOf(card, "Harden, 1095"));
    expect(text).toContain("☐ harden 802 °C (1475 °F)");
    expect(text).toContain("or harden 802 °C (1475 °F)");
    expect(text).not.toContain("☐ or harden");
    // Two tables that disagree stand side by side.
    expect(rowsOf(panelOf(card, "Temper"))[1]).toEqual(["60", "253 °C", "205 °C"]);
  });

  it("goes by the shop's own recipe, and leaves the other steps to the sources", async () => {
    const recipe = [
      "recipes:",
      '  - steel: "1084"',
      "    source: sheet of the bar, heat 7",
      "    steps:",
      "      - { step: harden, at: 805 ± 5 °C, minutes: 6, cooling: fast oil at 50 °C }",
      "      - { step: temper, at: 205 °C, minutes: 120, times: 2 }",
      "",
    ].join("\n");
    const { card } = await cardOf(DEMO_KNIFE, `${DEMO_SHOP}\n${recipe}`);
    const harden = panelOf(card, "Harden");
    expect(figuresOf(harden)).toMatchObject({ normalise: "871 °C", harden: "800 to 810 °C" });
    expect(textOf(harden)).toContain("6 min, fast oil at 50 °C");
    const temper = panelOf(card, "Temper");
    expect(textOf(temper)).toContain("☐☐ temper 2 × 205 °C");
    expect(textOf(temper)).toContain("sheet of the bar, heat 7.");
    expect(textOf(temper)).not.toContain("common practice");
  });

  it("has boxes where no source knows the steel", async () => {
    const { card } = await cardOf(
      demoWith(['steel: "1084"', "steel: { name: Grandfather's spring, density: 7.85 g/cm3 }"]),
    );
    const text = textOf(panelOf(card, "Harden and temper"));
    expect(text).toContain(
      "No figures for Grandfather's spring are known here: go by the sheet that came with the bar.",
    );
    expect(text).toContain("harden at [°C] [min]");
    expect(text).toContain("tempered, hardness [°C] [HRC]");
  });
});

describe("a job that cannot be done as planned", () => {
  it("says so in the head of every page, figures and all", async () => {
    const { card } = await cardOf(demoWith(["at: [-116, 76]", "at: [-132, 76]"]));
    expect(card.warnings.join(" ")).toMatch(
      /^STOP: hole C: .* 6 mm from the butt; at least 9 mm is needed\. \(scantling check FILE\)$/u,
    );
    const pages = benchCard(card, A4);
    for (const page of pages) {
      const texts = flattenItems(page.items).flatMap((item) => (item.kind === "text" ? [item.text] : []));
      expect(texts.join(" ")).toContain(card.warnings.join(" "));
    }
  });

  it("is the bench's alone where no bar can become the blade", async () => {
    const shop = DEMO_SHOP.replace(
      /rack:\n(?: {2}- .*\n)+/u,
      'rack:\n  - { size: 3 x 12 mm, steel: "1084", length: 300 mm, count: 1 }\n',
    );
    const { card, setup } = await cardOf(DEMO_KNIFE, shop);
    expect(setup.card).toBeUndefined();
    expect(card.sides.map(({ name }) => name)).toEqual(["At the bench"]);
    expect(card.warnings[0]).toMatch(/^STOP: Nothing on the rack can become this blade\./u);
    expect(textOf(panelOf(card, "Cut"))).toMatch(/The forged blade has to weigh 7\d\d g \(/u);
    expect(panelsOf(card).map(({ title }) => title)).toEqual(
      expect.arrayContaining(["Asked for", "Scribe the edge", "Sharpen"]),
    );
    const pages = benchCard(card, A4);
    expect(pages.length).toBeLessThanOrEqual(2);
    expect(pages.flatMap(checkLayout)).toEqual([]);
  });

  it("stands without a shop file", async () => {
    const { card } = await cardOf(DEMO_KNIFE, "scantling: 1\nunits: mm\n");
    expect(textOf(panelOf(card, "Cut"))).toContain("No bar on the rack is known");
    expect(benchCard(card, A4).flatMap(checkLayout)).toEqual([]);
  });
});

/** The demo with a hidden tang, a guard and a handle of one block. */
const HIDDEN_TANG = demoWith(
  ["form: full", "form: hidden"],
  ["heights: { front: 28, middle: 25, butt: 30 }", "heights: { front: 16, middle: 14, butt: 10 }"],
  [/ {2}holes:.*\n(?: {4}- .*\n)+/u.exec(DEMO_KNIFE)?.[0] ?? "none", ""],
  [
    "  slabs: { material: European ash, thickness: 8, edgeRadius: 6 }\n  pins: { material: brass }\n",
    "  block: { material: European ash, section: oval, length: 130, height: 34, width: 24 }\n  guard: { material: brass, at: -10, length: 6, height: 40, width: 14 }\n",
  ],
);

describe("other knives", () => {
  it("with one bevel have a setting for each face, and none from the face that the edge lies on", async () => {
    const { card, bench } = await cardOf(
      demoWith(
        [
          "  flankTaper: 0.3                         # thinner by this at the bevel line than at the spine\n",
          "",
        ],
        [
          "bevel: { form: flat, height: 48, edgeThickness: 0.5 }",
          "bevel: { form: hollow, height: 30, wheelRadius: 400, edgeThickness: 0.3, apex: -1, left: { form: flat } }",
        ],
        ["edgeAngle: 16 deg  ", "edgeAngle: { right: 15 deg, left: flat }  "],
      ),
    );
    const scribe = panelOf(card, "Scribe");
    const [first] = bench.scribe.stations;
    const heel = rowsOf(scribe).find(([x]) => x === "0.0");
    expect(bench.scribe.oneSetting).toBe(false);
    // The edge lies on the left face: no line is scribed with that face down.
    expect(heel?.slice(1, 3)).toEqual(["–", first?.rightDown.toFixed(2)]);
    expect(textOf(scribe)).toContain("gauge, left face down gauge, right face down");
    // What the dash means stands over the table that has one, and over no other.
    expect(textOf(scribe)).toContain("–: none there.");
    expect(textOf(panelOf((await cardOf()).card, "Scribe"))).not.toContain("–: ");
    const titles = panelsOf(card).map(({ title }) => title);
    expect(titles).toContain("Sharpen the right face");
    expect(titles).not.toContain("Sharpen the left face");
    expect(benchCard(card, A4).flatMap(checkLayout)).toEqual([]);
  });

  it("with a hidden tang have a guard to slot, a mortise to drill and a block to saw", async () => {
    const { card, bench } = await cardOf(HIDDEN_TANG);
    const { guard, mortise } = bench;
    // Its corners are drawn square: there is nothing to ease the slot for.
    expect(textOf(panelOf(card, "Slot the guard"))).not.toContain("radius");
    if (guard === undefined || mortise === undefined) throw new Error("no guard, no mortise");
    expect(figuresOf(panelOf(card, "Slot the guard"))).toMatchObject({
      "slot high": `${guard.height.toFixed(2)} mm`,
      "slot wide": `${guard.thickness.toFixed(2)} mm`,
    });
    expect(columnOf(panelOf(card, "Drill the mortise"), "deep")).toEqual(
      mortise.steps.map(({ depth }) => (depth > 0 ? depth.toFixed(1) : "at the mouth")),
    );
    // 130 × 34 × 24 and 6 mm to saw and sand off.
    expect(figuresOf(panelOf(card, "Saw the block"))).toEqual({
      "long, high, across": "136 × 40 × 30 mm",
    });
    // Holes that do not run into one another: 0.5 mm left between them.
    const { drill, holes = 0, height } = guard;
    expect(holes).toBeGreaterThan(1);
    expect((height - (drill?.diameter ?? 0)) / (holes - 1) - (drill?.diameter ?? 0)).toBeGreaterThanOrEqual(
      0.5,
    );
    expect(textOf(panelOf(card, "Glue"))).toContain("ml");
    const pages = benchCard(card, A4);
    expect(pages.length).toBeLessThanOrEqual(2);
    expect(pages.flatMap(checkLayout)).toEqual([]);
  });

  it("with round corners at the shoulder have the slot of the guard eased for them", async () => {
    const { card } = await cardOf(
      HIDDEN_TANG.replace("heights: { front: 16", "shoulderRadius: 1.5\n  heights: { front: 16"),
    );
    expect(textOf(panelOf(card, "Slot the guard"))).toContain(
      'Round corners at the shoulder, radius 1.50 mm (0.059"): ease the front edges of the slot by as much, until the guard sits on the shoulder.',
    );
    expect(benchCard(card, A4).flatMap(checkLayout)).toEqual([]);
  });

  it("with bevels left from the hammer have none to scribe or grind", async () => {
    const { card } = await cardOf(
      demoWith(["finish: { flats: forged, bevels: ground }", "finish: { flats: forged, bevels: forged }"]),
    );
    const titles = panelsOf(card).map(({ title }) => title);
    expect(titles.filter((title) => /^(?:Scribe|Grind)/u.test(title))).toEqual([]);
    expect(titles).toContain("Sharpen");
  });

  it("without handle or pins have no slabs, pins and glue", async () => {
    const { card } = await cardOf(
      demoWith([
        "handle:\n  slabs: { material: European ash, thickness: 8, edgeRadius: 6 }\n  pins: { material: brass }\n",
        "",
      ]),
    );
    const titles = panelsOf(card).map(({ title }) => title);
    expect(titles.filter((title) => /^(?:Saw|Pins|Glue)/u.test(title))).toEqual([]);
    expect(titles).toContain("Drill the steel");
  });
});

describe("names", () => {
  const hostile = '<b>Ω 料理 & "ножи" №7 '.repeat(9).slice(0, 199);

  it("of any length and script come out as text, and cost no figure", async () => {
    const { card } = await cardOf(
      demoWith(
        ["title: Tall harvest knife for a market garden", `title: ${JSON.stringify(hostile)}`],
        ["material: European ash", `material: { name: ${JSON.stringify(hostile)}, density: 0.7 g/cm3 }`],
        ["material: brass", `material: { name: ${JSON.stringify("W".repeat(200))}, density: 8.5 g/cm3 }`],
      ),
    );
    const pages = benchCard(card, A4);
    expect(pages.flatMap(checkLayout)).toEqual([]);
    expect(pages.length).toBeLessThanOrEqual(3);
    const all = words(card);
    for (const figure of ["160 mm", "36.5 mm", "2.05 mm", "871 °C", "4.0 ml"]) expect(all).toContain(figure);
  });
});
