import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { formatPath, parsePath, pathWords, withPathWords } from "../../src/file/path.js";
import { answer, flat } from "../support/answer.js";

describe("paths", () => {
  it("are counted from 0 for programs and from 1 for people", () => {
    const path = ["blade", "thickness", 1, "is"] as const;
    expect(formatPath(path)).toBe("blade.thickness[1].is");
    expect(parsePath("blade.thickness[1].is")).toEqual(path);
    expect(pathWords(path)).toBe("blade.thickness[2nd].is");
    expect(pathWords(["rack", 10])).toBe("rack[11th]");
    expect(pathWords(["rack", 20, "price"])).toBe("rack[21st].price");
  });

  it("inside a text are found, and nothing else is", () => {
    expect(withPathWords("This hole runs into tang.holes[0] by 2 mm.")).toBe(
      "This hole runs into tang.holes[1st] by 2 mm.",
    );
    expect(withPathWords("write [x, y] or [0, 5] on the blade")).toBe("write [x, y] or [0, 5] on the blade");
  });
});

/** A hidden tang in a block, with the given lines after `units`. */
const hidden = (holes: string, handle: string): string => `scantling: 1
units: mm
steel: "1084"
blade:
  outline: { family: drop-point, edgeLength: 110, heelHeight: 30 }
  ricasso: 10
  thickness: [{ at: heel, is: 4 }, { at: tip, is: 2 }]
  bevel: { form: flat, height: 20, edgeThickness: 0.4 }
  edgeAngle: 16 deg
  holes: ${holes}
tang: { form: hidden, length: 90 }
handle: ${handle}
`;
const hole = (x: number): string => `{ kind: lightening, at: [${x}, 25], diameter: 2 }`;
const BLOCK = "section: oval, length: 110, height: 32, width: 24";
const problemsOf = async (text: string) => {
  const { code, out, err } = await answer(["check", "k.knife.yaml", "--json"], {
    files: { "k.knife.yaml": text },
  });
  expect(code).toBe(EXIT.file);
  const { problems } = JSON.parse(out) as { problems: { code: string; path: string; message: string }[] };
  return { problems, err: flat(err) };
};

describe("what is wrong with lists", () => {
  it("is told with places counted from 1, and with paths for programs", async () => {
    const text = hidden(`[${hole(30)}, ${hole(31)}]`, `{ block: { material: hard maple, ${BLOCK} } }`);
    const { problems, err } = await problemsOf(text);
    expect(problems.map(({ code, path }) => [code, path])).toEqual([["holes-overlap", "blade.holes[1].at"]]);
    expect(err).toContain("blade.holes[2nd].at: This hole runs into blade.holes[1st] by 1 mm.");
  });

  it("calls holes in findings as the pattern does", async () => {
    const text = hidden(`[${hole(30)}, ${hole(33)}]`, `{ block: { material: hard maple, ${BLOCK} } }`);
    const { out } = await answer(["check", "k.knife.yaml"], { files: { "k.knife.yaml": text } });
    expect(flat(out)).toContain("left between this hole and hole A;");
    expect(out).toContain("(hole B,");
  });
});

describe("materials that are not known", () => {
  it("in any part of the handle hide nothing of the shape, and are told once each", async () => {
    const handle = `{ block: { material: unobtainium, ${BLOCK} }, guard: { material: brazz, at: -10, length: 6, height: 40, width: 12 } }`;
    const { problems } = await problemsOf(hidden(`[${hole(30)}, ${hole(31)}]`, handle));
    expect(problems.map(({ code, path }) => [code, path])).toEqual([
      ["holes-overlap", "blade.holes[1].at"],
      ["unknown-material", "handle.block.material"],
      ["unknown-material", "handle.guard.material"],
    ]);
  });

  it("are told beside sizes that cannot be read", async () => {
    const handle = `{ block: { material: unobtainium, ${BLOCK} }, liners: { material: g11, thickness: x } }`;
    const { problems } = await problemsOf(hidden("[]", handle));
    expect(problems.map(({ code, path }) => [code, path])).toContainEqual([
      "unknown-material",
      "handle.block.material",
    ]);
    expect(problems.map(({ path }) => path)).toContain("handle.liners.material");
  });
});
