import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { readKnifeFile } from "../../src/file/index.js";
import { copyKnife } from "../../src/starter/copy-knife.js";
import { answer } from "../support/answer.js";
import { DEMO_KNIFE, DEMO_SHOP } from "../support/demo.js";

const FOLDER = fileURLToPath(new URL("../../../../examples/", import.meta.url));
const EXAMPLES = readdirSync(FOLDER, { recursive: true, encoding: "utf8" })
  .filter((name) => name.endsWith(".knife.yaml") && !name.includes("node_modules"))
  .map((name) => ({ name, text: readFileSync(`${FOLDER}${name}`, "utf8") }));

const NEW = { code: "N-2", title: "Another: one", movedPath: (path: string) => path };

function copyOf(text: string): string {
  const copy = copyKnife(text, NEW);
  if (copy === undefined) throw new Error("it cannot be copied");
  return copy;
}

describe("a copy of a knife file", () => {
  it.each(EXAMPLES)("$name: the same knife under another order, its comments kept", async ({ text }) => {
    const { code, out, io } = await answer(["new", "second", "--from", "first.knife.yaml"], {
      files: { "first.knife.yaml": text, "shop.yaml": DEMO_SHOP },
    });
    expect([code, out]).toEqual([EXIT.done, "second.knife.yaml\n"]);
    const copy = io.disk.text("/shop/second.knife.yaml");
    const [of, as] = [readKnifeFile(text, "a"), readKnifeFile(copy, "a")];
    const { type } = of.order;
    // What kind of knife it is stays; what was asked of that one does not.
    const kind = type === undefined ? {} : { type };
    expect(as.order).toEqual({ code: "SECOND", title: "Second", asks: [], ...kind });
    expect([as.spec, as.stack, as.units]).toEqual([of.spec, of.stack, of.units]);
    const changed = text.split("\n").filter((line) => !copy.includes(line.trim()));
    // Code and title, and nothing else: what was asked for stands there, behind #.
    expect(changed.length).toBeLessThanOrEqual(2);
    expect(changed.every((line) => /^\s*(?:code|title):/u.test(line))).toBe(true);
    expect(copy).toContain("  # asks:");
  });

  it("leaves behind who ordered that one, and the day that it is promised for", () => {
    const of = "  asks: ";
    const more = DEMO_KNIFE.replace(
      of,
      `  customer: A market garden\n  revision: B\n  promised: 2026-12-20\n  type: vegetable-cleaver\n${of}`,
    );
    const copy = copyOf(more);
    expect(readKnifeFile(copy, "a").order).toEqual({
      code: "N-2",
      title: "Another: one",
      type: "vegetable-cleaver",
      asks: [],
    });
    expect(copy).toContain("  # promised: 2026-12-20");
  });

  it("can be asked for again by taking the # off", () => {
    const copy = copyOf(DEMO_KNIFE).replaceAll("\n  # ", "\n  ");
    expect(readKnifeFile(copy, "a").order.asks).toEqual(readKnifeFile(DEMO_KNIFE, "a").order.asks);
  });

  const rest = DEMO_KNIFE.slice(DEMO_KNIFE.indexOf("units: mm"));
  it.each<[string, string]>([
    ["no order", ""],
    ["a code alone", "order:\n  code: A # one\n"],
    ["a title over several lines", "order:\n  title: >-\n    Knife\n    for work\n  code: A\n"],
    [
      "asks first",
      "order:\n  asks:\n    # light\n    mass: { below: 600 g }\n\n    balance: { between: [45, 65] }\n  code: A\n",
    ],
    ["asks in braces", "order: { code: A, asks: { mass: { below: 600 g } } }\n"],
    ["asks first in braces", "order: { asks: { mass: { below: 600 g } }, code: A }\n"],
    ["asks alone", "order:\n  asks: { mass: { below: 600 g } }\n"],
    ["quotes", "order: { 'code': 'A', \"title\": \"B\" }\n"],
  ])("with %s", (_, order) => {
    const copy = copyOf(`scantling: 1\n${order}${rest}`);
    expect(readKnifeFile(copy, "a").order).toEqual({ code: "N-2", title: "Another: one", asks: [] });
    expect(copy.endsWith(rest)).toBe(true);
    const windows = copyOf(`scantling: 1\n${order}${rest}`.replaceAll("\n", "\r\n"));
    expect(readKnifeFile(windows, "a").order).toEqual({ code: "N-2", title: "Another: one", asks: [] });
  });

  it("of JSON is JSON", () => {
    const json = (order: object): string => {
      const { scantling, ...others } = PARING;
      return JSON.stringify({ scantling, ...order, ...others }, null, 2);
    };
    for (const order of [{}, { order: { asks: ASKS } }, { order: { code: "A", asks: ASKS, title: "B" } }]) {
      const copy = copyOf(json(order));
      expect(JSON.parse(copy)).toMatchObject({ order: { code: "N-2", title: "Another: one" } });
      expect(readKnifeFile(copy, "a.json").order.asks).toEqual([]);
    }
  });

  it("leads to a drawing and to the schema from where it stands", async () => {
    const knife = `# yaml-language-server: $schema=../schemas/knife.schema.json
scantling: 1
units: mm
steel: "1084"
blade:
  outline: { drawing: art/sketch.svg, runs: { edge: edge, spine: spine } }
  thickness: [{ at: heel, is: 2 }]
  bevel: { form: flat, height: full, edgeThickness: 0.3 }
  edgeAngle: 15 deg
tang: { form: full, length: 100 }
`;
    const { code, io } = await answer(["new", "later/b", "--from", "orders/a.knife.yaml"], {
      files: { "orders/a.knife.yaml": knife },
    });
    expect(code).toBe(EXIT.done);
    const copy = io.disk.text("/shop/later/b.knife.yaml");
    expect(copy).toContain('drawing: "../orders/art/sketch.svg"');
    expect(copy).toContain("$schema=../schemas/knife.schema.json");
  });
});

const ASKS = { mass: { below: "60 g" } };

const PARING = {
  scantling: 1,
  units: "mm",
  steel: "1084",
  blade: {
    outline: { family: "petty", edgeLength: 90, heelHeight: 22 },
    thickness: [{ at: "heel", is: 2 }],
    bevel: { form: "flat", height: "full", edgeThickness: 0.3 },
    edgeAngle: "15 deg",
  },
  tang: { form: "full", length: 100 },
};
