import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathLength, signedArea } from "@scantling/geometry";
import {
  cleanText,
  type Drawing,
  type DrawingItem,
  lettering,
  patternSheet,
  polyline,
  toDxf,
} from "@scantling/render";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { harvestKnife } from "../../packages/render/test/fixtures.js";

// An independent reader of DXF, Debian's python3-ezdxf: it audits the file, takes its entities, follows the bulges and
// decodes the lettering by itself.
const PYTHON = "/usr/bin/python3";
const READER = `
import json, sys
try:
    import ezdxf
    from ezdxf import path
    from ezdxf.tools.text import plain_text
except ImportError:
    sys.exit("no ezdxf: install the Debian package python3-ezdxf; this check is not skipped")
doc = ezdxf.readfile(sys.argv[1])
audit = doc.audit()
found = []
for e in doc.modelspace():
    one = {"type": e.dxftype(), "layer": e.dxf.layer}
    if e.dxftype() == "LINE":
        one["length"] = (e.dxf.end - e.dxf.start).magnitude
    elif e.dxftype() == "CIRCLE":
        one["circle"] = [e.dxf.center.x, e.dxf.center.y, e.dxf.radius]
    elif e.dxftype() == "POLYLINE":
        one["closed"] = e.is_closed
        one["points"] = [[v.x, v.y] for v in path.make_path(e).flattening(1e-6)]
    elif e.dxftype() == "TEXT":
        one["text"] = plain_text(ezdxf.decode_dxf_unicode(e.dxf.text)).encode("utf-16", "surrogatepass").decode("utf-16")
        one["plain"] = plain_text(e.dxf.text)
        one["height"] = e.dxf.height
        one["rotation"] = e.dxf.rotation
        one["align"] = e.get_align()
    found.append(one)
print(json.dumps({
    "version": doc.dxfversion,
    "errors": [str(e.message) for e in audit.errors],
    "fixes": [str(e.message) for e in audit.fixes],
    "layers": sorted(l.dxf.name for l in doc.layers),
    "entities": found,
}))
`;

interface Found {
  readonly type: string;
  readonly layer: string;
  readonly length?: number;
  readonly circle?: readonly number[];
  readonly closed?: boolean;
  readonly points?: readonly (readonly [number, number])[];
  readonly text?: string;
  /** Read with the codes of release 12 alone. */
  readonly plain?: string;
  readonly height?: number;
  readonly rotation?: number;
  readonly align?: string;
}

interface ReadFile {
  readonly version: string;
  readonly errors: readonly string[];
  readonly fixes: readonly string[];
  readonly layers: readonly string[];
  readonly entities: readonly Found[];
}

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "scantling-dxf-"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function readBack(dxf: string): ReadFile {
  const file = join(folder, "drawing.dxf");
  writeFileSync(file, dxf);
  return JSON.parse(
    execFileSync(PYTHON, ["-c", READER, file], { encoding: "utf8", maxBuffer: 1 << 28 }),
  ) as ReadFile;
}

const drawingOf = (items: readonly DrawingItem[]): Drawing => ({
  width: 220,
  height: 220,
  origin: { x: 10, y: 10 },
  title: "Rule",
  description: "",
  items,
});

describe("DXF in ezdxf", () => {
  test("a rule of 200 mm is 200.00 ± 0.01 mm in both directions", () => {
    const rule = (x: number, y: number): DrawingItem => ({
      kind: "path",
      role: "outline",
      paths: [
        polyline([
          { x: 0, y: 0 },
          { x, y },
        ]),
      ],
    });
    const { entities, errors } = readBack(toDxf(drawingOf([rule(200, 0), rule(0, 200), rule(120, 160)])));
    expect(errors).toEqual([]);
    const lengths = entities.filter(({ layer }) => layer === "OUTLINE").map(({ length = 0 }) => length);
    expect(lengths).toHaveLength(3);
    for (const length of lengths) expect(Math.abs(length - 200)).toBeLessThan(0.01);
  });

  test.each(["page", "view", "geometry"] as const)("the pattern is audited without errors: %s", (content) => {
    const read = readBack(toDxf(patternSheet(harvestKnife()), { content }));
    expect([read.version, read.errors, read.fixes]).toEqual(["AC1009", [], []]);
    const used = new Set(read.entities.map(({ layer }) => layer));
    for (const layer of used) expect(read.layers).toContain(layer);
    expect(read.entities.length).toBeGreaterThan(10);
  });

  test("outline and holes are the model's", () => {
    const model = harvestKnife();
    const chordError = 0.005;
    const { entities } = readBack(toDxf(patternSheet(model), { chordError }));
    const [outline] = entities.filter(({ type, layer }) => type === "POLYLINE" && layer === "OUTLINE");
    expect(outline?.closed).toBe(true);
    const points = outline?.points ?? [];
    const area = points.reduce((sum, [x, y], index) => {
      const [toX, toY] = points[(index + 1) % points.length] ?? [x, y];
      return sum + (x * toY - toX * y) / 2;
    }, 0);
    expect(Math.abs(area - signedArea(model.outline))).toBeLessThan(pathLength(model.outline) * chordError);
    const circles = entities.flatMap(({ circle }) => (circle === undefined ? [] : [circle]));
    expect(circles).toHaveLength(model.holes.length);
    for (const [index, { centre, diameter }] of model.holes.entries()) {
      const [x = Number.NaN, y = Number.NaN, radius = Number.NaN] = circles[index] ?? [];
      expect(Math.abs(x - centre.x)).toBeLessThan(1e-6);
      expect(Math.abs(y - centre.y)).toBeLessThan(1e-6);
      expect(Math.abs(2 * radius - diameter)).toBeLessThan(2e-6);
    }
  });

  test("lettering reads back as it was given, hostile strings among it", () => {
    const given = [
      'heel 7 7/8" [200 mm]',
      "Ø 4 mm ± 0.1, 15°, 50 %°",
      "Küchenmesser für Žofia, 包丁, нож",
      "forge 🔪 mark",
      "a ^J b ^ c",
      "\\U+0041 \\P {\\fArial;x}",
      "<b>&amp;</b> 50 %",
      "line\nbreak\r\u0007  0",
      "%%u under %%d",
    ];
    const items = given.map((text, index) =>
      lettering(text, { x: 0, y: 10 * index }, { height: 2.5, anchor: "middle", rotation: Math.PI / 6 }),
    );
    const { entities, errors } = readBack(toDxf(drawingOf(items), { content: "page" }));
    expect(errors).toEqual([]);
    // Two per cent signs would begin a control code, so they are set apart.
    expect(entities.map(({ text }) => text)).toEqual(
      given.map((text) => cleanText(text).replaceAll("%%", "% %").replace("%°", "% °")),
    );
    for (const { height, rotation, align } of entities) {
      expect(height).toBe(2.5);
      expect(rotation).toBeCloseTo(30, 9);
      expect(align).toBe("CENTER");
    }
  });

  test("figures read without any decoding that release 12 does not have", () => {
    const given: readonly (readonly [string, string])[] = [
      ["−110 mm", "-110 mm"],
      ["Ø 4 mm × 2", "Ø 4 mm x 2"],
      ["15° ± 0.5", "15° ± 0.5"],
      ["7⅞ “in”", '7 7/8 "in"'],
    ];
    const items = given.map(([text], index) => lettering(text, { x: 0, y: 10 * index }, { height: 2.5 }));
    const { entities } = readBack(toDxf(drawingOf(items), { content: "page" }));
    expect(entities.map(({ plain }) => plain)).toEqual(given.map(([, read]) => read));
    for (const content of ["page", "view"] as const) {
      const texts = readBack(toDxf(patternSheet(harvestKnife()), { content })).entities.flatMap(
        ({ plain }) => plain ?? [],
      );
      expect(texts.length).toBeGreaterThan(10);
      for (const text of texts) expect(text).not.toMatch(/\\U\+|%%/);
    }
  });
});
