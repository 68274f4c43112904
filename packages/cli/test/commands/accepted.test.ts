import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { answer, flat, wideLines } from "../support/answer.js";
import { DEMO_FILES, demoWith } from "../support/demo.js";

const FILE = "harvest.knife.yaml";
const check = (text: string, ...options: readonly string[]) =>
  answer(["check", FILE, ...options], { files: { ...DEMO_FILES, [FILE]: text } });

/** A lanyard hole too near the butt: a stop. */
const STOP = demoWith(["at: [-116, 76]", "at: [-131, 76]"]);
const accepting = (text: string, line: string): string => `${text}\naccept:\n  ${line}\n`;

describe("risks that the knife file accepts", () => {
  it("are told all the same, last, with the reason, and answer 0", async () => {
    expect((await check(STOP)).code).toBe(EXIT.notMet);
    const { code, out } = await check(accepting(STOP, "hole-too-near-edge: the loop is only a tag"));
    expect(code).toBe(EXIT.done);
    expect(wideLines(out)).toEqual([]);
    const found = out.slice(out.indexOf("\nFOUND\n"));
    expect(flat(found)).toMatch(
      /accepted STOP: The centre of this .* Accepted: the loop is only a tag\. Limit: /u,
    );
    expect(found.indexOf("accepted STOP")).toBeGreaterThan(found.lastIndexOf("\nnote: "));
  });

  it("keep their severity in JSON, beside the reason", async () => {
    const text = accepting(STOP, "hole-too-near-edge: the loop is only a tag");
    const report = JSON.parse((await check(text, "--json")).out);
    expect(report.verdict).toBe("met");
    const finding = report.findings.find(({ code }: { code: string }) => code === "hole-too-near-edge");
    expect(finding).toMatchObject({ severity: "stop", accepted: "the loop is only a tag" });
    for (const other of report.findings) if (other !== finding) expect(other).not.toHaveProperty("accepted");
  });

  it("are not counted among what stops", async () => {
    const text = accepting(STOP, "hole-too-near-edge: a tag");
    const { out } = await answer(["weigh", FILE], { files: { ...DEMO_FILES, [FILE]: text } });
    expect(out).toMatch(/\n1 warning, 4 notes, 1 accepted: scantling check FILE\n/u);
  });

  it("stay a stop where what they tell of cannot be made", async () => {
    const shop = "scantling: 1\nunits: mm\nrack:\n  - { size: 3 x 20 mm }\n";
    const text = accepting(demoWith(), "no-bars-fit: bars are on their way");
    const { code, out } = await answer(["check", FILE], { files: { [FILE]: text, "shop.yaml": shop } });
    expect(code).toBe(EXIT.notMet);
    expect(flat(out)).toContain("STOP: Nothing on the rack can become this blade.");
    expect(flat(out)).toContain("note: no-bars-fit cannot be accepted");
  });

  it("are questioned where nothing of them is found", async () => {
    const { code, out } = await check(accepting(demoWith(), "bevel-steep: it is an axe"));
    expect(code).toBe(EXIT.done);
    expect(flat(out)).toContain("note: bevel-steep is accepted, and nothing of it is found.");
    // What only the scale can show is not looked for here.
    expect((await check(accepting(demoWith(), "tare-missing: none is welded on"))).out).not.toContain(
      "tare-missing",
    );
  });

  it("have to be findings that there are: the nearest code is told", async () => {
    const { code, err } = await check(accepting(demoWith(), "bevel-steap: it is an axe"));
    expect(code).toBe(EXIT.file);
    expect(err).toContain("bevel-steep");
    expect(err).toMatch(/harvest\.knife\.yaml:\d+:3/u);
  });

  it("need a reason", async () => {
    const { code, err } = await check(accepting(demoWith(), 'bevel-steep: ""'));
    expect(code).toBe(EXIT.file);
    expect(err).toContain("needs a name");
  });
});
