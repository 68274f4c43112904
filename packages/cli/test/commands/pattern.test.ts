import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
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
