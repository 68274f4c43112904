import { describe, expect, it } from "vitest";
import { EXIT } from "../src/exit-code.js";
import { answer, flat } from "./support/answer.js";
import { DEMO_FILES, DEMO_KNIFE, DEMO_SHOP, demoWith, placeOf } from "./support/demo.js";

const FILE = "harvest.knife.yaml";

interface Found {
  readonly code: string;
  readonly severity: string;
  readonly file: string;
  readonly line: number;
  readonly column: number;
}

async function findingsOf(files: Readonly<Record<string, string>>): Promise<Found[]> {
  return JSON.parse((await answer(["check", FILE, "--json"], { files })).out).findings;
}

const at = ({ line, column }: Found): string => `${line}:${column}`;
const withCode = (all: readonly Found[], code: string): Found => {
  const found = all.find((one) => one.code === code);
  if (found === undefined) throw new Error(`no ${code} among: ${all.map((one) => one.code).join(", ")}`);
  return found;
};

describe("what is unwise at the bench", () => {
  it("is told by check, each at the line that it comes from", async () => {
    const found = await findingsOf(DEMO_FILES);
    const thin = withCode(found, "edge-thin-for-quench");
    expect(thin).toMatchObject({ severity: "warn", file: FILE });
    expect(at(thin)).toBe(placeOf(DEMO_KNIFE, "0.6, tang"));
    const droops = withCode(found, "bevel-line-droops");
    expect(droops).toMatchObject({ severity: "note", file: FILE });
    expect(at(droops)).toBe(placeOf(DEMO_KNIFE, "48, edgeThickness"));
    expect(withCode(found, "drilling-needs-shim").line).toBe(
      Number(placeOf(DEMO_KNIFE, "- { kind: pin, at: [-26, 76]").split(":")[0]),
    );
  });

  it("does not stop a job", async () => {
    const { code, out } = await answer(["check", FILE], { files: DEMO_FILES });
    expect(code).toBe(EXIT.done);
    expect(flat(out)).toContain(
      "warning: The edge goes into the quench 0.7 mm thick, with a spine of 4.6 mm",
    );
  });

  it("stands in the shop file where the allowance does", async () => {
    const knife = demoWith([", minEdge: 0.6", ""]);
    const shop = `${DEMO_SHOP}allowances: { minEdge: 0.65 }\nquenchTank: { litres: 2, depth: 400 mm }\n`;
    const found = await findingsOf({ [FILE]: knife, "shop.yaml": shop });
    const thin = withCode(found, "edge-thin-for-quench");
    expect(thin.file).toBe("shop.yaml");
    expect(at(thin)).toBe(placeOf(shop, "0.65"));
    const oil = withCode(found, "little-oil");
    expect(oil).toMatchObject({ severity: "note", file: "shop.yaml" });
    expect(at(oil)).toBe(placeOf(shop, "2, depth"));
  });

  it("is quiet where the edge is left as thick as it should be", async () => {
    const found = await findingsOf({ ...DEMO_FILES, [FILE]: demoWith(["minEdge: 0.6", "minEdge: 0.8"]) });
    expect(found.map(({ code }) => code)).not.toContain("edge-thin-for-quench");
  });
});
