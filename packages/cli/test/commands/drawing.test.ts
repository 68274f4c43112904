import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { MAX_FILE_BYTES } from "../../src/file/index.js";
import { answer, flat } from "../support/answer.js";
import { fakeIo } from "../support/fake-io.js";

const KNIFE = `scantling: 1
units: mm
steel: "1084"
blade:
  outline: { drawing: sketch.svg, runs: { edge: edge, spine: spine, tangTop: top, butt: butt, tangBottom: bottom } }
  thickness:
    - { at: heel, is: 3 }
  bevel: { form: flat, height: 15, edgeThickness: 0.5 }
  edgeAngle: 16 deg
tang:
  form: full
`;

const SKETCH = `<?xml version="1.0"?>
<svg xmlns="http://www.w3.org/2000/svg" width="400mm" height="100mm" viewBox="0 0 400 100">
  <g transform="translate(0 10)">
    <path id="edge" d="M150 60 H250 C290 60 310 50 320 30"/>
    <path id="spine" d="M320 30 L150 20"/>
    <path id="top" d="M150 20 H30"/>
    <path id="butt" d="M30 20 V44"/>
    <path id="bottom" d="M30 44 H150"/>
  </g>
</svg>`;

const weigh = (files: Readonly<Record<string, string | Uint8Array>>, name = "k.knife.yaml") =>
  answer(["weigh", name], { files });

describe("a knife with a drawing", () => {
  it("weighs the same as one with the same runs", async () => {
    const { code, out } = await weigh({ "k.knife.yaml": KNIFE, "sketch.svg": SKETCH });
    expect(code).toBe(EXIT.done);
    const runs = KNIFE.replace(
      /outline: .*/,
      'outline: { runs: { edge: "H100 C140 0 160 10 170 30", spine: "L0 40", tangTop: "H-120", butt: "V16", tangBottom: "H0" } }',
    );
    // The only difference: the scale of the drawing is said.
    expect((await weigh({ "k.knife.yaml": runs })).out).toBe(
      out.replace("Drawing: 1 unit = 1.0000 mm\n", ""),
    );
    expect(out).toContain("Drawing: 1 unit = 1.0000 mm\n");
  });

  it("that has no viewBox is read in px, and that is said with the scale", async () => {
    const sketch = SKETCH.replace(' viewBox="0 0 400 100"', "");
    const { out } = await weigh({ "k.knife.yaml": KNIFE, "sketch.svg": sketch });
    expect(out).toContain("Drawing: 1 unit = 0.2646 mm\n");
    const { out: checked } = await answer(["check", "k.knife.yaml"], {
      files: { "k.knife.yaml": KNIFE, "sketch.svg": sketch },
    });
    expect(flat(checked)).toContain("note: The drawing has no viewBox, so a unit of it is a px: 0.26 mm");
  });

  it("finds the drawing beside the knife file, or from where it says", async () => {
    const beside = await weigh(
      { "orders/k.knife.yaml": KNIFE, "orders/sketch.svg": SKETCH },
      "orders/k.knife.yaml",
    );
    expect(beside.code).toBe(EXIT.done);
    const knife = KNIFE.replace("sketch.svg", "../drawings/a b.svg");
    const elsewhere = await weigh(
      { "orders/k.knife.yaml": knife, "drawings/a b.svg": SKETCH },
      "orders/k.knife.yaml",
    );
    expect(elsewhere.code).toBe(EXIT.done);
    const { code } = await answer(["weigh", "-"], { stdin: KNIFE, files: { "sketch.svg": SKETCH } });
    expect(code).toBe(EXIT.done);
  });

  it("notes that it was read mirrored", async () => {
    const left = SKETCH.replace("translate(0 10)", "translate(400 10) scale(-1 1)");
    const { out } = await answer(["check", "k.knife.yaml"], {
      files: { "k.knife.yaml": KNIFE, "sketch.svg": left },
    });
    expect(flat(out)).toContain("note: The drawing has its tip to the left");
  });

  it.each<[string, Readonly<Record<string, string | Uint8Array>>, RegExp]>([
    [
      "that is not there",
      {},
      /k\.knife\.yaml:5:23 .*drawing: cannot read sketch\.svg: no such file.* Save the drawing in the folder/,
    ],
    ["of nearly that name", { "sketsch.svg": SKETCH }, /Did you mean sketsch\.svg\?/],
    ["that is a folder", { "sketch.svg/x": "" }, /cannot read sketch\.svg: it is a folder/],
    ["that is too large", { "sketch.svg": " ".repeat(MAX_FILE_BYTES + 1) }, /sketch\.svg: the file is 1 MB/],
    [
      "that is binary",
      { "sketch.svg": Uint8Array.of(60, 0x1f, 0, 8) },
      /sketch\.svg:1:3: the file is not text; give a drawing saved as plain SVG, not compressed/,
    ],
    [
      "that is not UTF-8",
      { "sketch.svg": Uint8Array.of(60, 0xff) },
      /sketch\.svg:1:2: the file is not UTF-8/,
    ],
    [
      "that is not SVG",
      { "sketch.svg": "edge" },
      /k\.knife\.yaml:5:23 .*cannot be read as XML at its line 1/,
    ],
    ["with entities", { "sketch.svg": '<!DOCTYPE svg [<!ENTITY a "b">]><svg/>' }, /declares entities/],
    [
      "without the id",
      { "sketch.svg": SKETCH.replace('id="spine"', 'id="back"') },
      /k\.knife\.yaml:5:62 blade\.outline\.runs\.spine: .*no element with the id spine\. It has: edge, back, top/,
    ],
    [
      "without a scale",
      { "sketch.svg": SKETCH.replace('400mm" height="100mm', '400" height="100') },
      /blade\.outline\.drawing: The drawing has no scale/,
    ],
    [
      "that does not close",
      { "sketch.svg": SKETCH.replace("M150 20 H30", "M150 22 H30 V20") },
      /spine \(spine\) ends at 150, 30 of the drawing.* 2 mm away/,
    ],
    [
      "that crosses itself",
      { "sketch.svg": SKETCH.replace("L150 20", "L200 80 L150 20") },
      /edge with spine, at .* In the drawing: edge and spine, at /,
    ],
  ])("refuses one %s, at its place in the knife file", async (_, files, says) => {
    const { code, out, err, written } = await weigh({ "k.knife.yaml": KNIFE, ...files });
    expect(code).toBe(EXIT.file);
    expect(out).toBe("");
    expect(flat(err)).toMatch(says);
    expect(written).toEqual([]);
  });

  it("says so where reading it is not permitted", async () => {
    const io = fakeIo({ files: { "k.knife.yaml": KNIFE, "sketch.svg": SKETCH } });
    io.disk.faults.push({ step: "readFile", path: "sketch", code: "EACCES" });
    const { code, err } = await answer(["weigh", "k.knife.yaml"], io);
    expect(code).toBe(EXIT.file);
    expect(flat(err)).toContain("blade.outline.drawing: cannot read sketch.svg: permission denied");
  });
});
