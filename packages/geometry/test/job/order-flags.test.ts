import { describe, expect, it } from "vitest";
import { orderFlags } from "../../src/index.js";
import { describeIssue } from "../../src/units/index.js";

const slabs = (name: string) => ({ slabs: { material: { name }, thickness: 8 } });
const codes = (name: string): string[] => orderFlags(slabs(name)).map(({ code }) => code);

describe("what has to be looked up", () => {
  // Common practice, no source: woods and animal parts that makers are warned of.
  it.each([
    "cocobolo",
    "East Indian rosewood",
    "African blackwood",
    "lignum vitae",
    "African ebony",
    "stag antler",
  ])("%s may be protected", (name) => {
    expect(codes(name)).toEqual(["protected-material", "sale-and-post-rules", "food-contact-rules"]);
  });

  it.each(["European ash", "black walnut", "G10", "hornbeam", "hard maple"])("%s is not named", (name) => {
    expect(codes(name)).toEqual(["sale-and-post-rules", "food-contact-rules"]);
  });

  it("is found in parts given by their name alone, and in pins and guard", () => {
    const parts = [{ name: "two rosewood slabs", mass: 80, at: { x: -60, y: 20 } }];
    const [first] = orderFlags({ parts });
    expect(first).toMatchObject({ code: "protected-material", path: "handle.parts[0].name" });
  });

  it("says what to check and with whom, no verdict, and when it was looked up", () => {
    const [open] = orderFlags(slabs("cocobolo"));
    const [done] = orderFlags(slabs("cocobolo"), "2026-11-20");
    expect([open?.severity, done?.severity]).toEqual(["warn", "note"]);
    const text = open === undefined ? "" : describeIssue(open, "mm");
    expect(text).toContain("check with the CITES authority of both countries");
    expect(text).toContain("Not looked up for this order yet.");
    expect(done === undefined ? "" : describeIssue(done, "mm")).toContain("Looked up on 2026-11-20.");
    for (const { text: words, severity } of orderFlags(slabs("cocobolo"))) {
      expect(words).toContain("check with");
      expect(words).not.toMatch(/\b(illegal|legal|forbidden|allowed|must not)\b/u);
      expect(severity).not.toBe("stop");
    }
  });
});
