import { describe, expect, it } from "vitest";
import { EXIT } from "../src/exit-code.js";
import { projectFile } from "./file/files.js";
import { answer } from "./support/answer.js";

/** The files that the README shows, by the names that it gives them. */
const files = Object.fromEntries(
  [...projectFile("README.md").matchAll(/```yaml\n# (my-knives\/\S+\.yaml)\n([\s\S]*?)```/gu)].map(
    ([, name = "", text = ""]) => [name, text],
  ),
);
const knives = Object.keys(files).filter((name) => name.endsWith(".knife.yaml"));

describe("the README's own knives in the README's own shop", () => {
  it("are there", () => {
    expect(knives.length).toBeGreaterThan(1);
    expect(files).toHaveProperty("my-knives/shop.yaml");
  });

  it.each(knives)("%s: nothing says stop, and there are bars for it", async (name) => {
    const { code, out } = await answer(["check", name], { files });
    expect(out).not.toContain("STOP");
    expect(code).toBe(EXIT.done);
    const { out: stock } = await answer(["stock", name, "--json"], { files });
    expect(JSON.parse(stock).plans.length).toBeGreaterThan(0);
  });
});
