import { signedArea } from "@scantling/geometry";
import { cleanText, type Drawing, type DrawingItem, patternSheet, polyline, toDxf } from "@scantling/render";
import dxfParser, { type IArcEntity, type ICircleEntity, type IDxf, type ITextEntity } from "dxf-parser";
import { describe, expect, test } from "vitest";
import { harvestKnife } from "../../packages/render/test/fixtures.js";

// The files as an independent reader in JavaScript takes them; ezdxf reads them in tests/system.
// Its types are those of another module format: what comes is the class itself.
const Parser = dxfParser as unknown as new () => { parseSync(text: string): IDxf | null };

function parse(dxf: string): IDxf {
  const parsed = new Parser().parseSync(dxf);
  if (parsed === null) throw new Error("not parsed");
  return parsed;
}

const RULE: Drawing = {
  width: 220,
  height: 220,
  origin: { x: 10, y: 10 },
  title: "rule",
  description: "",
  items: [
    {
      kind: "path",
      role: "outline",
      paths: [
        polyline([
          { x: 0, y: 0 },
          { x: 200, y: 0 },
        ]),
      ],
    },
    {
      kind: "path",
      role: "outline",
      paths: [
        polyline([
          { x: 0, y: 0 },
          { x: 0, y: 200 },
        ]),
      ],
    },
  ],
};

describe("DXF files in dxf-parser", () => {
  test("a rule of 200 mm is 200 mm long in both directions", () => {
    const { entities } = parse(toDxf(RULE, { content: "geometry" }));
    const lengths = entities.map((entity) => {
      const [a, b] = (entity as unknown as { vertices: { x: number; y: number }[] }).vertices;
      return Math.hypot((b?.x ?? 0) - (a?.x ?? 0), (b?.y ?? 0) - (a?.y ?? 0));
    });
    expect(lengths).toEqual([200, 200]);
  });

  test("the pattern comes with its header, layers and line types", () => {
    const { header, tables } = parse(toDxf(patternSheet(harvestKnife())));
    const variables = new Map(Object.entries(header));
    expect(variables.get("$ACADVER")).toBe("AC1009");
    expect(Object.keys(tables.layer.layers).sort()).toEqual(
      ["0", "BEVEL", "CENTRE", "CHECK", "DIMENSION", "OUTLINE", "TEXT", "THIN"].sort(),
    );
    expect(new Map(Object.entries(tables.lineType.lineTypes)).get("CENTRE")?.pattern).toEqual(
      ["6.0", "-0.75", "0.125", "-0.75"].map(Number),
    );
    const { $EXTMIN: low, $EXTMAX: high } = header as Record<string, { x: number; y: number }>;
    expect(low?.x).toBeLessThan(-138);
    expect(high?.x).toBeGreaterThan(225);
  });

  test("outline, holes and lettering are what was drawn", () => {
    const model = harvestKnife();
    const sheet = patternSheet(model);
    const { entities } = parse(toDxf(sheet));
    const outline = entities.filter(({ type, layer }) => type === "POLYLINE" && layer === "OUTLINE");
    expect(outline).toHaveLength(1);
    const [only] = outline as unknown as {
      shape: boolean;
      vertices: { x: number; y: number; bulge?: number }[];
    }[];
    if (only === undefined) throw new Error("no outline");
    expect(only.shape).toBe(true);
    // Chords between the vertices and the segments of circle on them, by the bulge b = tan(sweep / 4).
    const area = only.vertices.reduce((sum, a, index) => {
      const b = only.vertices[(index + 1) % only.vertices.length] ?? a;
      const sweep = 4 * Math.atan(a.bulge ?? 0);
      const radius = sweep === 0 ? 0 : Math.hypot(b.x - a.x, b.y - a.y) / (2 * Math.sin(sweep / 2));
      return sum + (a.x * b.y - b.x * a.y) / 2 + (radius ** 2 * (sweep - Math.sin(sweep))) / 2;
    }, 0);
    expect(Math.abs(area - signedArea(model.outline))).toBeLessThan(0.01);

    const circles = entities.filter(({ type }) => type === "CIRCLE") as ICircleEntity[];
    expect(circles.map(({ center, radius }) => [center.x, center.y, 2 * radius])).toEqual(
      model.holes.map(({ centre, diameter }) => [centre.x, centre.y, diameter]),
    );

    const read = entities.flatMap((entity) =>
      entity.type === "TEXT" ? [decoded((entity as ITextEntity).text)] : [],
    );
    const given = textsOf(sheet.items);
    expect(read.filter((text) => text !== "100 mm")).toEqual(given.map(inAscii));
    expect(given.some((text) => /[^\x20-\x7e]/.test(text))).toBe(true);
  });

  test("an arc by itself turns the way that it was drawn", () => {
    const quarter: DrawingItem = {
      kind: "path",
      role: "cut",
      paths: [
        {
          closed: false,
          segments: [
            {
              kind: "arc",
              from: { x: 0, y: 25 },
              to: { x: 25, y: 0 },
              centre: { x: 0, y: 0 },
              radius: 25,
              startAngle: Math.PI / 2,
              sweep: -Math.PI / 2,
            },
          ],
        },
      ],
    };
    const { entities } = parse(toDxf({ ...RULE, items: [quarter] }, { content: "geometry" }));
    const [arc] = entities as IArcEntity[];
    expect(arc?.layer).toBe("CUT");
    expect([arc?.startAngle, arc?.endAngle, arc?.radius]).toEqual([0, Math.PI / 2, 25]);
  });
});

/** Lettering that is not of the paper, in order. */
const textsOf = (items: readonly DrawingItem[]): string[] =>
  items.flatMap((item) => {
    if (item.kind === "group") return item.ofPaper ? [] : textsOf(item.items);
    return item.kind === "text" ? [cleanText(item.text)] : [];
  });

/** Signs that are written by a like one. */
const inAscii = (text: string): string => text.replace(/[−–]/g, "-").replaceAll("×", "x");

const decoded = (text: string): string =>
  text
    .replaceAll("%%c", "Ø")
    .replaceAll("%%d", "°")
    .replaceAll("%%p", "±")
    .replace(/\\U\+([0-9A-F]{4})/g, (_, digits: string) => String.fromCharCode(Number.parseInt(digits, 16)));
