import { describe, expect, it } from "vitest";
import { findElement, findOnlyShape, readDrawing, strokeOf } from "../../src/drawing/drawing.js";
import { signedArea } from "../../src/plane/measure.js";
import { pointAt, type Segment } from "../../src/plane/segment.js";
import { codes, sentences, svg } from "./drawings.js";

/** The stroke of the only shape of a drawing; one unit is one mm on a page of 400 × 100 mm. */
const strokeIn = (inside: string, page?: string): readonly Segment[] => {
  const drawing = readDrawing(svg(inside, page));
  return strokeOf(drawing, findOnlyShape(drawing), drawing.viewport.unit);
};
const area = (segments: readonly Segment[]): number => signedArea({ segments, closed: true });
const kinds = (segments: readonly Segment[]): string => segments.map(({ kind }) => kind[0]).join("");

describe("shapes", () => {
  // Areas in closed form; y is turned up, so what runs clockwise on the screen has a negative area.
  it.each<[string, string, string, number]>([
    ["a rectangle", '<rect x="10" y="20" width="30" height="5"/>', "llll", -150],
    ["a rounded one", '<rect width="30" height="20" rx="4"/>', "lalalala", -(600 - (4 - Math.PI) * 16)],
    ["one with radii too large", '<rect width="30" height="20" rx="40" ry="40"/>', "?", -Math.PI * 150],
    ["a circle", '<circle cx="50" cy="40" r="10"/>', "aaaa", -Math.PI * 100],
    ["an ellipse", '<ellipse cx="50" cy="40" rx="30" ry="10"/>', "?", -Math.PI * 300],
    ["a polygon", '<polygon points="0,0 10,0 10,10"/>', "lll", -50],
    ["a closed polyline", '<polyline points="0 0 0 10-10 10 0 0"/>', "lll", -50],
    ["a path", '<path d="m1 1h10v5h-10z"/>', "llll", -50],
    ["lengths with units", '<rect width="1cm" height="0.5in"/>', "llll", (-10 * 12.7 * 96 * 96) / 25.4 ** 2],
  ])("%s", (_, inside, pieces, wanted) => {
    const stroke = strokeIn(inside);
    if (pieces !== "?") expect(kinds(stroke)).toBe(pieces);
    // Ellipses are cubics within 1e-7 mm, over at most 200 mm of length.
    expect(Math.abs(area(stroke) - wanted)).toBeLessThan(pieces === "?" ? 2e-5 : 1e-9);
  });

  it("as in the documentation's example", () => {
    const drawing = readDrawing(
      '<svg xmlns="http://www.w3.org/2000/svg" width="30mm" viewBox="0 0 30 10"><path id="a" d="M0 0H30"/></svg>',
    );
    const stroke = strokeOf(drawing, findElement(drawing, "a"), drawing.viewport.unit);
    expect(stroke).toMatchObject([{ kind: "line", to: { x: 30 } }]);
  });

  it("a line", () => {
    expect(strokeIn('<line x1="1" y1="2" x2="3" y2="4"/>')).toEqual([
      { kind: "line", from: { x: 1, y: -2 }, to: { x: 3, y: -4 } },
    ]);
  });

  it("quadratics and short forms", () => {
    // The parabola y = x²/10 from (0, 0) to (10, 10), its mirror image after it.
    const [first, second] = strokeIn('<path d="M0 0 Q5 0 10 10 T20 20"/>');
    const on = (segment: Segment | undefined, t: number) => segment && pointAt(segment, t);
    expect(on(first, 0.5)?.x).toBeCloseTo(5, 12);
    expect(on(first, 0.5)?.y).toBeCloseTo(-2.5, 12);
    expect(on(second, 0.5)?.y).toBeCloseTo(-17.5, 12);
    expect(strokeIn('<path d="M0 0c0 5 5 10 10 10s10-5 10-10"/>')[1]).toMatchObject({
      control1: { x: 15, y: -10 },
      control2: { x: 20, y: -5 },
    });
  });

  it("a circular arc stays one under similarities, and becomes cubics under others", () => {
    const arc = '<path d="M10 0 A10 10 0 0 1 0 10"/>';
    const [turned] = strokeIn(`<g transform="rotate(30) scale(-2 2) translate(3 4)">${arc}</g>`);
    expect(turned?.kind === "arc" ? turned.radius : Number.NaN).toBeCloseTo(20, 12);
    const cubics = strokeIn(`<g transform="scale(2 1)">${arc}</g>`);
    expect(new Set(cubics.map(({ kind }) => kind))).toEqual(new Set(["cubic"]));
    let worst = 0;
    for (const segment of cubics) {
      for (let i = 0; i <= 20; i++) {
        const { x, y } = pointAt(segment, i / 20);
        worst = Math.max(worst, Math.abs(Math.hypot(x / 2, y) - 10));
      }
    }
    expect(worst).toBeLessThan(1e-6);
    expect(worst).toBeGreaterThan(0);
  });

  it("an ellipse whose transform makes it a circle is an exact arc", () => {
    const stroke = strokeIn('<ellipse rx="10" ry="5" transform="scale(1 2)"/>');
    expect(kinds(stroke)).toBe("aaaa");
    expect(area(stroke)).toBeCloseTo(-Math.PI * 100, 9);
  });

  it("nested groups add up", () => {
    const inside =
      '<g transform="translate(100 50)"><g transform="rotate(90)"><path d="M0 0H10" transform="scale(2)"/></g></g>';
    const [segment] = strokeIn(inside);
    expect(segment?.from).toEqual({ x: 100, y: -50 });
    expect(segment?.to.x).toBeCloseTo(100, 12);
    expect(segment?.to.y).toBeCloseTo(-70, 12);
  });

  it("dust of an editor is left out", () => {
    expect(kinds(strokeIn('<path d="M0 0H10l1e-8 0V10l0 0H0L0 1e-9Z"/>'))).toBe("llll");
  });
});

describe("units", () => {
  const unit = (page: string) => readDrawing(svg("", page)).viewport.unit;

  // Source: W3C, CSS Values and Units 3, section 6.2: 1 in = 2.54 cm = 96 px = 72 pt = 6 pc.
  it.each<[string, number, number]>([
    ['width="100mm" height="50mm" viewBox="0 0 100 50"', 1, 1],
    ['width="10cm" height="5cm" viewBox="7 8 200 100"', 0.5, 0.5],
    ['width="1in" height="1in" viewBox="0,0,96,96"', 25.4 / 96, 25.4 / 96],
    ['width="96px" height="48px" viewBox="0 0 96 48"', 25.4 / 96, 25.4 / 96],
    ['width="72pt" viewBox="0 0 1 1"', 25.4, 25.4],
    ['height="6pc" viewBox="0 0 2 2"', 12.7, 12.7],
    ['width="40Q" viewBox="0 0 10 10"', 1, 1],
    ['width="210mm" height="297mm"', 25.4 / 96, 25.4 / 96],
    // Meet takes the smaller, slice the greater, none each its own.
    ['width="100mm" height="100mm" viewBox="0 0 100 50"', 1, 1],
    ['width="100mm" height="100mm" viewBox="0 0 100 50" preserveAspectRatio="xMinYMax slice"', 2, 2],
    ['width="100mm" height="100mm" viewBox="0 0 100 50" preserveAspectRatio="none"', 1, 2],
    ['width="100mm" height="auto" viewBox="0 0 50 50" preserveAspectRatio="none"', 2, 2],
  ])("%s", (page, x, y) => {
    const found = unit(page);
    expect(found.x / x).toBeCloseTo(1, 14);
    expect(found.y / y).toBeCloseTo(1, 14);
    expect(readDrawing(svg("", page)).viewport.unscaled).toBeUndefined();
  });

  it.each<[string, RegExp]>([
    ['viewBox="0 0 100 50"', /does not say how large it is.*scale: \{ from/],
    ['width="100%" height="100%" viewBox="0 0 100 50"', /"100%" depends on where it is shown/],
    ['width="100mm" height="50%" viewBox="0 0 100 50"', /no scale/],
    ['width="800" height="400" viewBox="0 0 800 400"', /"800" has no unit, and editors differ/],
    ['width="800" height="400"', /"800" has no unit/],
    ["", /does not say how large it is/],
    ['width="10em" viewBox="0 0 10 10"', /"10em" depends/],
  ])("no scale: %s", (page, says) => {
    const { unscaled } = readDrawing(svg("", page)).viewport;
    expect(unscaled?.issues.map(({ code }) => code)).toEqual(["drawing-no-scale"]);
    expect(
      sentences(() => {
        throw unscaled;
      })[0],
    ).toMatch(says);
  });

  it.each([
    'width="0mm" viewBox="0 0 1 1"',
    'width="-5mm"',
    'width="wide"',
    'width="1e999mm"',
    'width="1mm" viewBox="0 0 0 5"',
    'width="1mm" viewBox="0 0 5"',
    'width="1mm" viewBox="0 0 5 5 5"',
    'width="1mm" viewBox="0 0 5 5" preserveAspectRatio="xMid"',
  ])("unreadable: %s", (page) => {
    expect(codes(() => readDrawing(svg("", page)))).toEqual(["drawing-size-unreadable"]);
  });
});

describe("elements", () => {
  const stroke = (inside: string, id: string) => {
    const drawing = readDrawing(svg(inside));
    return strokeOf(drawing, findElement(drawing, id), drawing.viewport.unit);
  };
  const LINE = '<path id="a" d="M0 0H10"/>';

  it("are found by id, through groups and links, or as the one shape of a group", () => {
    expect(stroke(`<g><a>${LINE}</a></g>`, "a")).toHaveLength(1);
    expect(stroke(`<g id="layer">${LINE}<path display="none" d="M0 0H5"/></g>`, "layer")).toHaveLength(1);
  });

  it("of other formats are passed over", () => {
    const inside = `<x:namedview xmlns:x="urn:editor"><x:path id="a"/></x:namedview><metadata/>${LINE.replace('"a"', '"b"')}`;
    expect(stroke(inside, "b")).toHaveLength(1);
    expect(codes(() => stroke(inside, "a"))).toEqual(["drawing-not-a-line"]);
  });

  it.each<[string, string, string, RegExp]>([
    ["no such id", LINE, "b", /no element with the id b\. It has: a\.$/],
    ["a label only", LINE.replace("/>", ' xmlns:k="urn:k" k:label="b"/>'), "b", /a has it as its label/],
    ["two of the id", LINE + LINE, "a", /2 elements with the id a/],
    [
      "several paths",
      `<g id="g">${LINE}${LINE.replace('"a"', '"b"')}</g>`,
      "g",
      /group g has several paths: a, b/,
    ],
    ["an empty group", '<g id="g"/>', "g", /shows no path/],
    ["a clone", `${LINE}<use id="u" href="#a"/>`, "u", /u is a clone \(<use>\)/],
    ["a clone in a group", `<g id="g"><use id="u" href="#a"/></g>`, "g", /u is a clone/],
    ["text", '<text id="t">edge</text>', "t", /t is a <text>/],
    ["two strokes", '<path id="a" d="M0 0H10M0 5H10"/>', "a", /2 separate strokes/],
    ["no lines", '<path id="a" d=" "/>', "a", /a has no lines/],
    ["a point", '<path id="a" d="M5 5"/>', "a", /a has no lines/],
    ["broken data", '<path id="a" d="M0 0 L10 x"/>', "a", /path a cannot be read/],
    ["endless data", '<path id="a" d="M0 0 L1e999 0"/>', "a", /not finite/],
    ["far away", '<path id="a" d="M0 0 L1e300 0"/>', "a", /more than a kilometre/],
    ["bad numbers", '<line id="a" x2="5%" y2="1"/>', "a", /The x2 of a, "5%"/],
    ["odd points", '<polygon id="a" points="0 0 1"/>', "a", /The points of a/],
    ["a negative radius", '<circle id="a" r="-1"/>', "a", /The r of a/],
    ["pressed flat", `<g transform="scale(1 0)">${LINE}</g>`, "a", /pressed flat/],
    ["blown up", `<g transform="scale(1e200)"><g transform="scale(1e200)">${LINE}</g></g>`, "a", /blown up/],
    ["a strange transform", `<g transform="spin(1)">${LINE}</g>`, "a", /"spin\(1\)"/],
    ["hidden", `<g display="none">${LINE}</g>`, "a", /a is hidden/],
    ["hidden by style", `<g style="display:none">${LINE}</g>`, "a", /a is hidden/],
    ["invisible", `<g visibility="hidden">${LINE}</g>`, "a", /a is hidden/],
    ["hidden by class", `<style>.x{display:none}</style><g class="y x">${LINE}</g>`, "a", /a is hidden/],
    ["clipped", `<g clip-path="url(#c)">${LINE}</g>`, "a", /cut by a clip-path/],
    [
      "masked by class",
      `<style>/* } */ @media all { p, .m > #a { mask : url(#m) } }</style>${LINE}`,
      "a",
      /cut by a mask/,
    ],
    ["kept aside", `<defs>${LINE}</defs>`, "a", /inside <defs>/],
    ["in a symbol", `<symbol><g>${LINE}</g></symbol>`, "a", /inside <symbol>/],
    ["in a page of its own", `<svg width="5">${LINE}</svg>`, "a", /inside <svg>/],
    ["moved by style", `<g style="transform: rotate(5deg)">${LINE}</g>`, "a", /the style "transform"/],
    [
      "moved by class",
      `<style>.m{fill:red;translate:5px}</style><g class="m">${LINE}</g>`,
      "a",
      /"translate"/,
    ],
    ["shaped by style", `<style>path{d:path("M0 0H5")}</style>${LINE}`, "a", /the style "d"/],
    [
      "turned about a place",
      `<g transform="scale(2)" transform-origin="5 5">${LINE}</g>`,
      "a",
      /transform-origin/,
    ],
    [
      "moving",
      '<path id="a" d="M0 0H1"><animateTransform attributeName="transform"/></path>',
      "a",
      /animation/,
    ],
  ])("%s", (_, inside, id, says) => {
    const found = sentences(() => stroke(inside, id));
    expect(found).toHaveLength(1);
    expect(found[0]).toMatch(says);
  });

  it("are not hidden by rules for others, nor by what they override", () => {
    const style = "<style>.x,#b,rect{display:none} text path{} .a.b{mask:url(#m)}</style>";
    expect(
      stroke(
        `${style}<g visibility="hidden"><path id="a" class="a" visibility="visible" d="M0 0H1"/></g>`,
        "a",
      ),
    ).toHaveLength(1);
    expect(
      stroke(`<g clip-path="none" style="fill:none;/*display:none*/stroke:#000">${LINE}</g>`, "a"),
    ).toHaveLength(1);
  });

  it("cannot put control characters into messages", () => {
    const [said] = sentences(() => stroke('<path id="x&#x9b;31m&#x202e;" d="M0 0H1"/>', "a"));
    expect(said).toContain("x\uFFFD31m\uFFFD");
  });
});

describe("hostile files", () => {
  it.each<[string, string, string]>([
    ["nothing", "", "drawing-empty"],
    ["too much", `<svg>${" ".repeat(2 ** 20)}</svg>`, "drawing-too-large"],
    ["no XML", "edge: a", "drawing-not-xml"],
    ["half a file", '<svg xmlns="http://www.w3.org/2000/svg"><g>', "drawing-not-xml"],
    ["XML of another kind", "<html/>", "drawing-not-svg"],
    ["an unknown namespace", '<svg xmlns="urn:x"/>', "drawing-not-svg"],
    ["an unbound prefix", "<svg><a:b/></svg>", "drawing-not-xml"],
    ["entities", '<!DOCTYPE svg [<!ENTITY a "b">]><svg>&a;</svg>', "drawing-doctype"],
    [
      "entities that grow",
      '<!DOCTYPE svg [<!ENTITY a "bb"><!ENTITY c "&a;&a;&a;">]><svg>&c;</svg>',
      "drawing-doctype",
    ],
    ["an entity from a file", '<!DOCTYPE svg SYSTEM "x" [<!ENTITY a SYSTEM "/x">]><svg/>', "drawing-doctype"],
    ["an undeclared entity", "<svg>&a;</svg>", "drawing-not-xml"],
    ["a style from elsewhere", '<?xml-stylesheet href="x.css"?><svg/>', "drawing-style-outside"],
    ["deep nesting", `<svg>${"<g>".repeat(5000)}${"</g>".repeat(5000)}</svg>`, "drawing-too-deep"],
    ["many elements", `<svg>${"<g/>".repeat(50_000)}</svg>`, "drawing-too-deep"],
    [
      "many rules",
      `<svg><style>${".a,.b{display:none}".repeat(20_000)}</style></svg>`,
      "drawing-style-too-long",
    ],
  ])("%s", (_, text, code) => {
    expect(codes(() => readDrawing(text))).toEqual([code]);
  });

  it("names the line", () => {
    expect(sentences(() => readDrawing("<svg>\n<g>\n</svg>"))[0]).toMatch(/at its line 3: .*g/);
  });

  it("a bare DOCTYPE of the format is no harm", () => {
    const doctype =
      '<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://www.w3.org/Graphics/SVG/1.1/DTD/svg11.dtd">';
    expect(readDrawing(`<?xml version="1.0"?>${doctype}<svg/>`).tree.elements).toHaveLength(1);
  });

  it("a path of too many pieces is refused", () => {
    expect(codes(() => strokeIn(`<path d="M0 0${"h1v1".repeat(5000)}"/>`))).toEqual([
      "drawing-too-many-pieces",
    ]);
  });

  // Each would take minutes if the time grew with the square of the length.
  it.each<[string, string]>([
    ["digits", `<svg width="${"1".repeat(900_000)}"/>`],
    ["blanks", `<svg viewBox="1${" ".repeat(900_000)}x"/>`],
    ["open comments", `<svg><style>${"/*".repeat(400_000)}</style></svg>`],
    ["open selectors", `<svg><style>${"[".repeat(900_000)}{display:none}</style><path d="M0 0"/></svg>`],
    ["style without braces", `<svg><style>${"a".repeat(900_000)}</style></svg>`],
    ["braces", `<svg><style>${"{".repeat(900_000)}</style></svg>`],
    ["commas", `<svg viewBox="${", ".repeat(400_000)}"/>`],
    ["minus signs", `<svg><polygon points="${"-".repeat(900_000)}"/></svg>`],
    ["a path of signs", `<svg><path d="M0 0${"-".repeat(900_000)}"/></svg>`],
  ])("cost no time: %s", (_, text) => {
    const begun = performance.now();
    codes(() => {
      const drawing = readDrawing(text);
      strokeOf(drawing, findOnlyShape(drawing), drawing.viewport.unit);
    });
    expect(performance.now() - begun).toBeLessThan(3000);
  });
});
