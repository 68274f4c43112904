import { describe, expect, it } from "vitest";
import {
  count,
  InternalError,
  type Issue,
  length,
  mass,
  roughLength,
  share,
  temperature,
} from "../../src/index.js";
import { describeIssue, type FileUnits, formatQuantity } from "../../src/units/index.js";

const issue: Issue = {
  code: "edge-too-thick",
  path: "blade.bevel.edgeThickness",
  text: "The edge is {edge} at {place}, the blade only {thickness}.",
  values: { edge: length(6.35), thickness: length(0.508), place: "the heel" },
};

describe("describeIssue", () => {
  it("fills numbers in, in the reader's units", () => {
    expect(describeIssue(issue, "mm")).toBe("The edge is 6.35 mm at the heel, the blade only 0.51 mm.");
    expect(describeIssue(issue, "in")).toBe('The edge is 0.25" at the heel, the blade only 0.02".');
  });

  it("tells the inches of a sentence as fractions or as decimals, not as both; the next one is its own", () => {
    const text =
      "The centre of this {d} hole is {from} away; at least {least} is needed. The tang is {long} long.";
    const told = { d: 25.4 / 4, from: 0.194 * 25.4, least: (25.4 * 15) / 64, long: 3.5 * 25.4 };
    const values = Object.fromEntries(Object.entries(told).map(([name, mm]) => [name, length(mm)]));
    expect(describeIssue({ text, values }, "in")).toBe(
      'The centre of this 0.25" hole is 0.194" away; at least 0.234" is needed. The tang is 3 1/2" long.',
    );
    const fractions = { ...values, from: length((25.4 * 13) / 64) };
    expect(describeIssue({ text, values: fractions }, "in")).toContain(
      '1/4" hole is 13/64" away; at least 15/64"',
    );
  });

  it("shows every kind of quantity", () => {
    const all: Issue = {
      code: "all",
      path: "",
      text: "{m} {a} {t} {k} {h} {s} {n} {f} {v}",
      values: {
        m: mass(480),
        a: { quantity: "angle", value: Math.PI / 12 },
        t: { quantity: "temperature", value: 820 },
        k: { quantity: "temperature difference", value: 11 },
        h: { quantity: "time", value: 5400 },
        s: { quantity: "share", value: 0.3 },
        n: { quantity: "count", value: 3 },
        f: { quantity: "area", value: 100 },
        v: { quantity: "volume", value: 1000 },
      },
    };
    expect(describeIssue(all, "mm")).toBe("480 g 15° 820 °C 11 °C 1 h 30 min 30 % 3 100 mm² 1 cm³");
    expect(describeIssue(all, "in")).toBe(
      "1 lb 0.93 oz 15° 1508 °F 20 °F 1 h 30 min 30 % 3 0.155 in² 0.061 in³",
    );
  });

  it("takes a text that names a missing value for our own mistake", () => {
    expect(() => describeIssue({ ...issue, values: {} }, "mm")).toThrow(InternalError);
  });
});

const say = (text: string, values: Issue["values"], units: FileUnits = "mm"): string =>
  describeIssue({ text, ...(values === undefined ? {} : { values }) }, units);

describe("lengths in inches in a message", () => {
  const inches = (value: number): string => formatQuantity(length(value * 25.4), "in");

  it("are the fraction or the decimal that was written, so that no limit is moved", () => {
    expect(inches(0.12)).toBe('0.12"');
    expect(inches(0.15)).toBe('0.15"');
    expect(inches(0.1255)).toBe('0.1255"');
    // 0.1251 in lies 2.5 µm from 1/8 in.
    expect(inches(0.1251)).toBe('0.1251"');
    expect(inches(3.12)).toBe('3.12"');
    expect(inches(5 / 32)).toBe('5/32"');
    expect(inches(14.5)).toBe('14 1/2"');
  });

  it("have a mark, or are told in thousandths, where they are neither", () => {
    expect(formatQuantity(length(200.1), "in")).toBe('7 7/8"+');
    expect(formatQuantity(length(3.3), "in")).toBe('0.13"');
  });
});

describe("two numbers of one message", () => {
  it("are told apart where they differ", () => {
    expect(
      say("{ratio} times as high as thick, where {limit} is the limit", {
        ratio: count(3.004),
        limit: count(3),
      }),
    ).toBe("3.004 times as high as thick, where 3 is the limit");
    expect(say("{a} of {b}", { a: share(0.85004), b: share(0.85) })).toBe("85.004 % of 85 %");
    expect(say("{a} of {b}", { a: length(100.004), b: length(100) })).toBe("100.004 mm of 100 mm");
    expect(say("{a} of {b}", { a: length(100.3), b: length(100.31) }, "in")).toBe('3.9488" of 3.9492"');
    expect(say("{a} of {b}", { a: mass(480.02), b: mass(480) })).toBe("480.02 g of 480 g");
  });

  it("are left alone where they are one, of different kinds, told apart already, or not both in the text", () => {
    expect(say("{a} of {b}", { a: count(3 + 1e-12), b: count(3) })).toBe("3 of 3");
    expect(say("{a} of {b}", { a: count(0.3), b: share(0.003) })).toBe("0.3 of 0.3 %");
    expect(say("{a} of {b}", { a: count(3.01), b: count(3) })).toBe("3.01 of 3");
    expect(say("{a} alone", { a: count(3.004), b: count(3) })).toBe("3 alone");
  });
});

describe("places at the heel", () => {
  it("are not called no way ahead of it", () => {
    const at = (text: string, x: number, units: FileUnits = "mm"): string =>
      say(text, { x: length(x) }, units);
    expect(at("At {x} ahead of the heel it is thin.", 0)).toBe("At the heel it is thin.");
    expect(at("At {x} ahead of the heel it is thin.", 1e-9, "in")).toBe("At the heel it is thin.");
    expect(at("2 mm thick {x} ahead of the heel.", -1e-9)).toBe("2 mm thick at the heel.");
    expect(at("From {x} ahead of the heel the layers fade.", 0, "in")).toBe("From the heel the layers fade.");
    expect(at("At {x} ahead of the heel it is thin.", 10)).toBe("At 10 mm ahead of the heel it is thin.");
    expect(at("At {x} ahead of the heel it is thin.", 254, "in")).toBe(
      'At 10" ahead of the heel it is thin.',
    );
  });
});

it("an estimate is shown in whole mm or eighths of an inch, without a mark", () => {
  const issue = { code: "x", path: "", text: "bites of {bite}", values: { bite: roughLength(25.585) } };
  expect(describeIssue(issue, "mm")).toBe("bites of 26 mm");
  expect(describeIssue(issue, "in")).toBe('bites of 1"');
});

it("a number below nothing has a true minus, and stays a number in the values", () => {
  const below = {
    text: "From x {from} to {to}, at {t}.",
    values: { from: length(-70), to: length(12.7), t: temperature(-40) },
  };
  expect(describeIssue(below, "mm")).toBe("From x −70 mm to 12.7 mm, at −40 °C.");
  expect(describeIssue(below, "in")).toBe('From x −2 3/4"− to 1/2", at −40 °F.');
  expect(below.values.from.value).toBe(-70);
});
