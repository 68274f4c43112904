import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { SHEET_NAMES } from "../../src/sheets/sheet-names.js";
import { answer } from "../support/answer.js";
import { DEMO_FILES, DEMO_SHOP } from "../support/demo.js";

const FILE = "harvest.knife.yaml";

describe("pattern", () => {
  it("writes NAME.pattern.svg into the current folder and answers with its path", async () => {
    const { code, out, err, written } = await answer(["pattern", FILE], { files: DEMO_FILES });
    expect(code).toBe(EXIT.done);
    expect(out).toBe("harvest.pattern.svg\n");
    expect(err).toContain("Print at 100 %");
    expect(written).toEqual(["/shop/harvest.pattern.svg"]);
  });

  it("says beside the drawing what check would stop, and on standard output the path alone", async () => {
    const files = { ...DEMO_FILES, "shop.yaml": `${DEMO_SHOP}quenchTank: { depth: 100 mm }\n` };
    const { code, out, err } = await answer(["pattern", FILE], { files });
    expect(code).toBe(EXIT.done);
    expect(out).toBe("harvest.pattern.svg\n");
    expect(err).toMatch(/^1 STOP(?:, \d+ (?:warning|note)s?)*: scantling check FILE$/mu);
    expect((await answer(["pattern", FILE], { files: DEMO_FILES })).err).not.toContain("STOP");
  });

  it("is at true size: page and user units agree exactly, one to one", async () => {
    const { io, out } = await answer(["pattern", FILE, "--json", "--out", "sheets"], { files: DEMO_FILES });
    const { schema, sheets } = JSON.parse(out);
    expect(schema).toBe("scantling/pattern/1");
    const [sheet] = sheets;
    expect(sheet).toMatchObject({
      file: "sheets/harvest.pattern.svg",
      format: "svg",
      state: "finished",
      ratio: 1,
    });
    const [, root = ""] = /<svg([^>]*)>/.exec(io.disk.text("/shop/sheets/harvest.pattern.svg")) ?? [];
    const [, width] = / width="([\d.]+)mm"/.exec(root) ?? [];
    const [, height] = / height="([\d.]+)mm"/.exec(root) ?? [];
    expect(root).toContain(`viewBox="0 0 ${width} ${height}"`);
    expect(Number(width)).toBe(sheet.widthMm);
    expect(Number(height)).toBe(sheet.heightMm);
    // The page holds the whole knife: 363 mm overall.
    expect(Number(width)).toBeGreaterThan(363);
  });

  it("draws the same bytes every time", async () => {
    const draw = async () =>
      (await answer(["pattern", FILE], { files: DEMO_FILES })).io.disk.text("/shop/harvest.pattern.svg");
    expect(await draw()).toBe(await draw());
  });

  it("carries the order, the steel and the units that were asked for", async () => {
    const { io } = await answer(["pattern", FILE, "--units", "in"], { files: DEMO_FILES });
    const svg = io.disk.text("/shop/harvest.pattern.svg");
    for (const text of ["MG-14", "Tall harvest knife", "1084", "100 %"]) expect(svg).toContain(text);
    const metric = (await answer(["pattern", FILE], { files: DEMO_FILES })).io.disk.text(
      "/shop/harvest.pattern.svg",
    );
    expect(svg).not.toBe(metric);
  });

  it("refuses to overwrite, and replaces under --force", async () => {
    const files = { ...DEMO_FILES, "harvest.pattern.svg": "mine" };
    const refused = await answer(["pattern", FILE], { files });
    expect(refused.code).toBe(EXIT.write);
    expect(refused.out).toBe("");
    expect(refused.err).toContain("harvest.pattern.svg exists");
    expect(refused.io.disk.text("/shop/harvest.pattern.svg")).toBe("mine");
    const forced = await answer(["pattern", FILE, "--force"], { files });
    expect(forced.code).toBe(EXIT.done);
    expect(forced.io.disk.text("/shop/harvest.pattern.svg")).toContain("<svg");
  });

  it("names the drawing after the order where the knife comes from standard input", async () => {
    const { written } = await answer(["pattern", "-"], { stdin: DEMO_FILES[FILE] });
    expect(written).toEqual(["/shop/MG-14.pattern.svg"]);
  });
});

describe("other sheets, formats and papers", () => {
  const pagesOf = (
    out: string,
  ): { file: string; sheet: string; page: number; pages: number; paper?: string }[] => JSON.parse(out).sheets;

  it("writes one PDF of every sheet, on the shop's paper", async () => {
    const { code, out, io } = await answer(["pattern", FILE, "--sheet", "all", "--format", "pdf", "--json"], {
      files: DEMO_FILES,
    });
    expect(code).toBe(EXIT.done);
    const pages = pagesOf(out);
    expect(new Set(pages.map(({ file }) => file))).toEqual(new Set(["harvest.sheets.pdf"]));
    expect([...new Set(pages.map(({ sheet }) => sheet))]).toEqual([...SHEET_NAMES]);
    expect(new Set(pages.map(({ paper }) => paper))).toEqual(new Set(["A4"]));
    expect(io.disk.text("/shop/harvest.sheets.pdf").startsWith("%PDF-1.7")).toBe(true);
  });

  it("tiles an SVG on the paper asked for, a file a page", async () => {
    const { out, written } = await answer(["pattern", FILE, "--paper", "letter", "--json"], {
      files: DEMO_FILES,
    });
    const pages = pagesOf(out);
    expect(pages.length).toBeGreaterThan(1);
    expect(pages.map(({ page }) => page)).toEqual(pages.map((_, index) => index + 1));
    expect(written).toEqual(pages.map((_, index) => `/shop/harvest.pattern-${index + 1}.svg`));
    expect(new Set(pages.map(({ paper }) => paper))).toEqual(new Set(["Letter"]));
  });

  it("draws several states in one another, with a line to saw along", async () => {
    const { written, io } = await answer(
      ["pattern", FILE, "--state", "forged,finished", "--offset", "0.5mm"],
      {
        files: DEMO_FILES,
      },
    );
    expect(written).toEqual(["/shop/harvest.pattern-finished-forged-offset.svg"]);
    const svg = io.disk.text(written[0] ?? "");
    expect(svg).toContain("as forged");
    expect(svg).toContain("0.5 mm");
  });

  it("writes DXF in the knife's own coordinates", async () => {
    const { written, io, err } = await answer(["pattern", FILE, "--format", "dxf"], { files: DEMO_FILES });
    expect(written).toEqual(["/shop/harvest.pattern.dxf"]);
    expect(io.disk.text(written[0] ?? "")).toContain("AC1009");
    expect(err).toContain("100 mm line");
  });

  it.each([
    [["--format", "dxf", "--paper", "a4"], ["--paper changed nothing: it is for SVG and PDF"]],
    [["--format", "dxf", "--margin", "9mm"], ["--margin changed nothing: it is for SVG and PDF"]],
    [["--overlap", "20mm"], ["--overlap changed nothing: it is for pages that are joined"]],
    // Packed pages are several and not joined.
    [
      ["--sheet", "gauges", "--format", "pdf", "--overlap", "20mm", "--margin", "9mm"],
      ["--overlap changed nothing", "--margin changed nothing"],
    ],
    [["--at", "60 %"], ["--at changed nothing: it is for the sheet sections. Add --sheet sections."]],
    [
      ["--sheet", "slabs", "--state", "forged", "--offset", "0.5mm"],
      [
        "--state changed nothing: it is for the sheets pattern and mirrored. Add --sheet pattern.",
        "--offset changed nothing: it is for the sheets pattern and mirrored.",
      ],
    ],
  ])("says that %s means nothing", async (words, says) => {
    const { code, err } = await answer(["pattern", FILE, ...words], { files: DEMO_FILES });
    expect(code).toBe(EXIT.done);
    for (const text of says) expect(err).toContain(text);
    expect(err.split("\n").filter((line) => line.includes("changed nothing"))).toHaveLength(says.length);
  });

  it.each([
    [["--format", "pdf", "--paper", "letter", "--overlap", "20mm", "--margin", "9mm"]],
    [["--sheet", "sections,mirrored", "--at", "60 %", "--state", "forged", "--offset", "0.5mm"]],
  ])("says nothing of the kind where each of %s counts", async (words) => {
    const { err } = await answer(["pattern", FILE, ...words], { files: DEMO_FILES });
    expect(err).not.toContain("changed nothing");
  });

  it("says which sheet there is none of, and goes on with the others", async () => {
    const files = { [FILE]: DEMO_FILES[FILE] };
    const { code, err, out } = await answer(["pattern", FILE, "--sheet", "preform,drilling"], { files });
    expect(code).toBe(EXIT.done);
    expect(err).toContain("No preform sheet: no bar on the rack can become this blade.");
    expect(out).toBe("harvest.drilling.svg\n");
    const alone = await answer(["pattern", FILE, "--sheet", "preform"], { files });
    expect(alone.code).toBe(EXIT.usage);
    expect(alone.err).toContain("there is no preform sheet");
  });

  it.each([
    [["--offset", "wide"], /--offset: "wide" is not a length/],
    [["--offset", "-200mm"], /within 6\s+mm\s+of\s+the\s+outline/],
    [["--offset", "1in"], /within 6\s+mm\s+of\s+the\s+outline/],
    [["--paper", "60x60mm"], /does not fit/],
    [["--paper", "a44"], /a44/],
    [["--paper", "a4", "--overlap", "2mm"], /overlap/],
  ])("answers %s with what is wrong and what to do", async (words, says) => {
    const { code, err, written } = await answer(["pattern", FILE, ...words], { files: DEMO_FILES });
    expect(code).toBe(EXIT.usage);
    expect(err).toMatch(says);
    expect(written).toEqual([]);
  });
});
