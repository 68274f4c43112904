import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { answer } from "../support/answer.js";
import { DEMO_FILES, DEMO_KNIFE, DEMO_SHOP, demoWith } from "../support/demo.js";

const FILE = "harvest.knife.yaml";
/** Layers of two steels in turn, in place of bars from the rack. */
const STACK = `stack:
  alternate:
    - { steel: "1084", thickness: 1/8 in, count: 7 }
    - { steel: 15N20, thickness: 1.57 mm, count: 6 }
  width: 2 in
  restacks: [4]
  yield: 85 %
  lastBar: 12.7 x 50 mm
`;
const pagesIn = (pdf: string): number => [...pdf.matchAll(/\/Type \/Page\b/gu)].length;

describe("jobsheet", () => {
  it("writes NAME.jobsheet.pdf into the current folder and answers with its path", async () => {
    const { code, out, err, written, io } = await answer(["jobsheet", FILE], { files: DEMO_FILES });
    expect(code).toBe(EXIT.done);
    expect(out).toBe("harvest.jobsheet.pdf\n");
    expect(written).toEqual(["/shop/harvest.jobsheet.pdf"]);
    expect(err).toMatch(/^1 warning, \d+ notes: scantling check FILE$/mu);
    const pdf = io.disk.text("/shop/harvest.jobsheet.pdf");
    expect(pagesIn(pdf)).toBe(2);
    expect(pdf).toContain("/PrintScaling /None");
  });

  it("writes each page as an SVG on request", async () => {
    const argv = ["jobsheet", FILE, "--format", "svg", "--out", "card"];
    const { code, out, io } = await answer(argv, { files: DEMO_FILES });
    expect(code).toBe(EXIT.done);
    expect(out).toBe("card/harvest.jobsheet-1.svg\ncard/harvest.jobsheet-2.svg\n");
    const svg = io.disk.text("/shop/card/harvest.jobsheet-1.svg");
    expect(svg).toContain('width="210mm" height="297mm"');
    expect(svg).toContain("MG-14 Tall harvest knife for a market garden: bench card, page 1 of 2</title>");
    for (const text of ["At the forge", "160 mm", "36.5 mm", "Take care: hot steel"])
      expect(svg).toContain(text);
  });

  it("is the same bytes every time", async () => {
    const draw = async () =>
      (await answer(["jobsheet", FILE], { files: DEMO_FILES })).io.disk.text("/shop/harvest.jobsheet.pdf");
    expect(await draw()).toBe(await draw());
  });

  it("tells programs its files, pages and contents", async () => {
    const { code, out } = await answer(["jobsheet", FILE, "--json", "--paper", "letter"], {
      files: DEMO_FILES,
    });
    expect(code).toBe(EXIT.done);
    const json = JSON.parse(out);
    expect(json).toMatchObject({
      schema: "scantling/jobsheet/1",
      files: ["harvest.jobsheet.pdf"],
      pages: [
        { widthMm: 215.9, heightMm: 279.4, paper: "Letter" },
        { widthMm: 215.9, heightMm: 279.4, paper: "Letter" },
      ],
      warnings: [],
    });
    const [forge, bench] = json.sides;
    expect([forge.name, bench.name]).toEqual(["At the forge", "At the bench"]);
    const weigh = forge.panels.find(({ title }: { title: string }) => title.startsWith("Weigh"));
    expect(weigh.tool).toBe("scale, g");
    expect(weigh.blocks[0]).toMatchObject({
      kind: "table",
      heads: ["", "short below", "usually enough", "surely enough", "on the scale"],
    });
    expect(weigh.blocks[0].rows[0].at(-1)).toEqual({ box: "" });
    // The same masses as those of the forge card.
    const setup = JSON.parse((await answer(["setup", FILE, "--json"], { files: DEMO_FILES })).out);
    expect(weigh.blocks[0].rows.map((row: string[]) => Number(row[2]))).toEqual(
      setup.masses.map(({ usualG }: { usualG: number }) => Math.round(usualG)),
    );
  });

  it("is for the plan that is asked for, and says which", async () => {
    const { code, out } = await answer(["jobsheet", FILE, "--json", "--plan", "2"], { files: DEMO_FILES });
    expect(code).toBe(EXIT.done);
    const titles = JSON.parse(out).sides[0].panels.map(({ title }: { title: string }) => title);
    expect(titles).toContain("Cut, plan 2");
    const far = await answer(["jobsheet", FILE, "--plan", "99"], { files: DEMO_FILES });
    expect(far.code).toBe(EXIT.usage);
    expect(far.err).toContain("there is no plan 99");
    expect(far.written).toEqual([]);
  });

  it("says where a plan that is asked for changes nothing", async () => {
    const idle = "--plan changed nothing: ";
    const own = await answer(["jobsheet", FILE, "--plan", "1"], {
      files: { ...DEMO_FILES, [FILE]: `${DEMO_KNIFE}${STACK}` },
    });
    expect(own.code).toBe(EXIT.done);
    expect(own.err).toContain(`${idle}the knife file describes its own stack.`);
    const none = await answer(["jobsheet", FILE, "--plan", "1"], { files: { [FILE]: DEMO_KNIFE } });
    expect(none.err).toContain(`${idle}no bar on the rack can become this blade.`);
    const counts = await answer(["jobsheet", FILE, "--plan", "1"], { files: DEMO_FILES });
    expect(counts.err).not.toContain(idle);
  });

  it("is on the shop's own paper, else on A4, or Letter for inches", async () => {
    const paperOf = async (...argv: string[]) =>
      JSON.parse((await answer(["jobsheet", FILE, "--json", ...argv], { files: DEMO_FILES })).out).pages[0]
        .paper;
    expect(await paperOf()).toBe("A4");
    expect(await paperOf("--units", "in")).toBe("Letter");
    const files = { ...DEMO_FILES, "shop.yaml": `${DEMO_SHOP}paper: a3\n` };
    const { out } = await answer(["jobsheet", FILE, "--json"], { files });
    expect(JSON.parse(out).pages[0].paper).toBe("A3");
  });

  it.each([
    [["--paper", "fit"], "a bench card has no size of its own"],
    [["--paper", "60x70"], "does not fit on paper of 60 × 70 mm"],
    [["--paper", "quarto"], "--paper"],
    [["--format", "dxf"], "--format"],
  ])("refuses %j", async (more, message) => {
    const { code, err, written } = await answer(["jobsheet", FILE, ...more], { files: DEMO_FILES });
    expect(code).toBe(EXIT.usage);
    expect(err).toContain(message);
    expect(written).toEqual([]);
  });

  it("does not write over a card without being told to", async () => {
    const { io } = await answer(["jobsheet", FILE], { files: DEMO_FILES });
    const again = await answer(["jobsheet", FILE], io);
    expect(again.code).not.toBe(EXIT.done);
    expect((await answer(["jobsheet", FILE, "--force"], io)).code).toBe(EXIT.done);
  });

  it("is written for a job that cannot be done, with STOP in its head", async () => {
    const files = { [FILE]: demoWith(["at: [-116, 76]", "at: [-132, 76]"]), "shop.yaml": DEMO_SHOP };
    const { code, out, err } = await answer(["jobsheet", FILE, "--json"], { files });
    expect(code).toBe(EXIT.done);
    expect(JSON.parse(out).warnings[0]).toMatch(/^STOP: hole C: /u);
    expect(err).toContain("1 STOP");
  });

  it("is written without a shop file: no bars, the bench alone", async () => {
    const { code, out } = await answer(["jobsheet", FILE, "--json"], { files: { [FILE]: DEMO_KNIFE } });
    expect(code).toBe(EXIT.done);
    expect(JSON.parse(out).sides.map(({ name }: { name: string }) => name)).toEqual(["At the bench"]);
  });

  it("names a knife file that cannot be read", async () => {
    const { code, err } = await answer(["jobsheet", "missing.yaml"], { files: DEMO_FILES });
    expect(code).toBe(EXIT.file);
    expect(err).toContain("missing.yaml");
  });
});
