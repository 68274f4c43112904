import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { run } from "../../src/run.js";
import { answer, flat, wideLines } from "../support/answer.js";
import { DEMO_FILES, DEMO_KNIFE, demoWith } from "../support/demo.js";
import { type Fault, fakeIo } from "../support/fake-io.js";

const FILE = "harvest.knife.yaml";
const NAMES = [
  "check.json",
  "harvest.jobsheet.pdf",
  "harvest.pattern.svg",
  "harvest.sheets.pdf",
  "setup.json",
  "setup.txt",
  "stock.json",
  "summary.txt",
  "weigh.json",
];
const inOut = NAMES.map((name) => `/shop/out/${name}`);

describe("plan: the main job", () => {
  it("writes everything into one folder and ends with the summary", async () => {
    const { code, out, err, written, io } = await answer(["plan", FILE, "--out", "out"], {
      files: DEMO_FILES,
    });
    expect(err).toBe("");
    expect(code).toBe(EXIT.done);
    expect(written).toEqual(inOut);
    expect(io.disk.text("/shop/out/summary.txt")).toBe(out);
  });

  it("writes the same documents as the commands of each part", async () => {
    const { io } = await answer(["plan", FILE, "--out", "out"], { files: DEMO_FILES });
    for (const part of ["weigh", "stock", "check", "setup"]) {
      const alone = await answer([part, FILE, "--json"], { files: DEMO_FILES });
      expect(io.disk.text(`/shop/out/${part}.json`)).toBe(alone.out);
    }
    const drawing = await answer(["pattern", FILE], { files: DEMO_FILES });
    expect(io.disk.text("/shop/out/harvest.pattern.svg")).toBe(
      drawing.io.disk.text("/shop/harvest.pattern.svg"),
    );
    const card = await answer(["jobsheet", FILE], { files: DEMO_FILES });
    expect(io.disk.files.get("/shop/out/harvest.jobsheet.pdf")).toEqual(
      card.io.disk.files.get("/shop/harvest.jobsheet.pdf"),
    );
  });

  it("gives all of it as one document under --json", async () => {
    const { code, out, io } = await answer(["plan", FILE, "--out", "out", "--json"], { files: DEMO_FILES });
    expect(code).toBe(EXIT.done);
    const document = JSON.parse(out);
    expect(Object.keys(document)).toEqual(["schema", "weigh", "stock", "check", "setup", "pattern", "files"]);
    expect(document.schema).toBe("scantling/plan/1");
    for (const part of ["weigh", "stock", "check", "setup"]) {
      expect(document[part]).toEqual(JSON.parse(io.disk.text(`/shop/out/${part}.json`)));
    }
    expect([...document.files].sort()).toEqual(NAMES.map((name) => `out/${name}`));
  });

  it("makes NAME-plan in the current folder where --out names none", async () => {
    const { written } = await answer(["plan", FILE], { files: DEMO_FILES });
    expect(written).toEqual(NAMES.map((name) => `/shop/harvest-plan/${name}`));
  });

  it("answers 4 where an ask is not met, with everything written: it shows why", async () => {
    const files = { ...DEMO_FILES, [FILE]: demoWith(["below: 600 g", "below: 100 g"]) };
    const { code, out, written } = await answer(["plan", FILE, "--out", "out"], { files });
    expect(code).toBe(EXIT.notMet);
    expect(out).toContain("ASKED: NOT MET");
    expect(written).toEqual(inOut);
  });

  it("has nothing to say of asks where nothing was asked", async () => {
    const text = DEMO_KNIFE.replace(/ {2}asks:[\s\S]*?(?=^units)/m, "");
    const { out } = await answer(["plan", FILE, "--out", "out"], { files: { ...DEMO_FILES, [FILE]: text } });
    expect(out).toContain("\nASKED: nothing\n\nWEIGHT");
  });

  it("plans without a shop too, and says what is missing", async () => {
    const { code, out } = await answer(["plan", FILE, "--out", "out"], { files: { [FILE]: DEMO_KNIFE } });
    expect(code).toBe(EXIT.done);
    expect(out).toContain("BARS TO CUT: none");
    expect(out).toContain("No bars are known");
  });
});

describe("the summary", () => {
  const summary = async (units: string): Promise<string> =>
    (await answer(["plan", FILE, "--out", "out", "--units", units], { files: DEMO_FILES })).out;

  for (const units of ["mm", "in"]) {
    it(`is one screen in ${units}: 80 columns, 24 to 40 lines`, async () => {
      const text = await summary(units);
      expect(wideLines(text)).toEqual([]);
      const lines = text.trimEnd().split("\n");
      expect(lines.length).toBeGreaterThanOrEqual(24);
      expect(lines.length).toBeLessThanOrEqual(40);
      expect(text).not.toMatch(/NaN|undefined|Infinity|[{}]/);
      expect(text).not.toContain("\u001b");
    });
  }

  it("has every warning on a line of its own, what stops the job in full, and says where all is told", async () => {
    // Pins near the side, a lanyard hole too near the butt, an edge thin for the quench.
    const knife = demoWith(
      ["at: [-116, 76]", "at: [-132, 76]"],
      ["at: [-26, 76]", "at: [-26, 84.5]"],
      ["at: [-84, 76]", "at: [-84, 84.5]"],
    );
    const { out, io } = await answer(["plan", FILE, "--out", "out"], {
      files: { ...DEMO_FILES, [FILE]: knife },
    });
    const { findings } = JSON.parse(io.disk.text("/shop/out/check.json"));
    const of = (severity: string): { message: string }[] =>
      findings.filter((finding: { severity: string }) => finding.severity === severity);
    expect(of("stop")).toHaveLength(1);
    expect(of("warn").length).toBeGreaterThan(2);
    const lines = out.split("\n");
    expect(lines.filter((line) => line.startsWith("warning: "))).toHaveLength(of("warn").length);
    for (const { message } of of("warn")) {
      const shown = lines.some(
        (line) => line.startsWith("warning: ") && `warning: ${message}`.startsWith(line.replace(/ …$/u, "")),
      );
      expect(shown, message).toBe(true);
    }
    expect(flat(out)).toContain(of("stop")[0]?.message);
    expect(out).toMatch(/^WARNINGS; in full(?:, with \d+ notes?)?: scantling check FILE$/mu);
    expect(wideLines(out)).toEqual([]);
  });

  it("stands in the order in which a smith asks, and ends with what to print", async () => {
    const text = await summary("mm");
    const heads = [
      "MG-14",
      "ASKED",
      "WEIGHT",
      "BARS TO CUT",
      "TO PRINT at 100 %",
      "out/harvest.pattern.svg",
      "out/harvest.sheets.pdf",
      "out/harvest.jobsheet.pdf",
    ];
    const places = heads.map((head) => text.indexOf(head));
    expect(places).not.toContain(-1);
    expect(places).toEqual([...places].sort((a, b) => a - b));
    for (const name of NAMES) expect(text).toContain(`out/${name}`);
  });

  it("agrees with the documents beside it", async () => {
    const { out, io } = await answer(["plan", FILE, "--out", "out"], { files: DEMO_FILES });
    const weigh = JSON.parse(io.disk.text("/shop/out/weigh.json"));
    const [best] = JSON.parse(io.disk.text("/shop/out/stock.json")).plans;
    expect(out).toContain(`${weigh.knife.massG.toFixed(0)} g`);
    expect(out).toContain(`${best.bars} pieces, each ${best.cutLengthMm} mm`);
    expect(out).toContain(best.bar);
    expect(out).toContain(`${(best.reach * 100).toFixed(0)} % of the thinning`);
  });

  it("reads as agreed", async () => {
    await expect(await summary("mm")).toMatchFileSnapshot("../golden/plan-summary-mm.txt");
    await expect(await summary("in")).toMatchFileSnapshot("../golden/plan-summary-in.txt");
  });
});

describe("whole or not at all", () => {
  it("refuses to overwrite any one of its files and writes none of the others", async () => {
    const files = { ...DEMO_FILES, "out/weigh.json": "mine" };
    const { code, out, err, written, io } = await answer(["plan", FILE, "--out", "out"], { files });
    expect(code).toBe(EXIT.write);
    expect(out).toBe("");
    expect(err).toContain("out/weigh.json exists; nothing was written");
    expect(err).toContain("--force");
    expect(written).toEqual([]);
    expect(io.disk.text("/shop/out/weigh.json")).toBe("mine");
  });

  it("replaces under --force and leaves the folder's other files alone", async () => {
    const files = { ...DEMO_FILES, "out/weigh.json": "old", "out/notes.txt": "mine" };
    const { code, io } = await answer(["plan", FILE, "--out", "out", "--force"], { files });
    expect(code).toBe(EXIT.done);
    expect(io.disk.paths()).toEqual(expect.arrayContaining([...inOut, "/shop/out/notes.txt"]));
    expect(io.disk.text("/shop/out/weigh.json")).toContain("scantling/weigh/1");
  });

  const faults: readonly Fault[] = [
    { step: "createFile", call: 0, code: "ENOSPC" },
    { step: "createFile", call: 4, code: "ENOSPC" },
    { step: "makeFolder", code: "EROFS" },
    { step: "link", call: 3, code: "EEXIST" },
  ];
  for (const fault of faults) {
    it(`leaves nothing behind after ${fault.step} ${fault.call ?? ""} ${fault.code}`, async () => {
      const io = fakeIo({ files: DEMO_FILES });
      io.disk.faults.push(fault);
      const before = io.disk.paths();
      expect(await run(["plan", FILE, "--out", "out", "--json"], io)).toBe(EXIT.write);
      expect(io.disk.paths()).toEqual(before);
      expect(io.disk.folders).not.toContain("/shop/out");
      expect(JSON.parse(io.out())).toMatchObject({ schema: "scantling/error/1", exitCode: 5 });
    });
  }
});
