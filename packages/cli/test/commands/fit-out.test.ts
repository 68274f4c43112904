import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { answer, flat } from "../support/answer.js";
import { DEMO_FILES, DEMO_KNIFE } from "../support/demo.js";
import { fakeIo } from "../support/fake-io.js";

const KNIFE = "harvest.knife.yaml";
const FIT = ["fit", KNIFE, "--mass", "<520 g", "--out", "fo"];

describe("the folder of fit", () => {
  it.each([["harvest.fit.txt"], [KNIFE]])("is looked at before the search: %s is there", async (name) => {
    const { code, out, err, io } = await answer(FIT, { files: { ...DEMO_FILES, [`fo/${name}`]: "mine" } });
    expect(code).toBe(EXIT.write);
    expect(err).toContain(`fo/${name} exists; nothing was written`);
    expect(err).not.toContain("Looking:");
    expect(out).toBe("");
    expect(io.disk.text(`/shop/fo/${name}`)).toBe("mine");
  });

  it.each([["text"], ["json"]])("that fails after the search takes no answer away: %s", async (kind) => {
    const io = fakeIo({ files: DEMO_FILES });
    io.disk.faults.push({ step: "createFile", code: "ENOSPC" });
    const { code, out, err } = await answer([...FIT, ...(kind === "json" ? ["--json"] : [])], io);
    expect(code).toBe(EXIT.write);
    expect(flat(err)).toContain("the disk is full");
    // No file is said to be there.
    if (kind === "json") expect(JSON.parse(out)).toMatchObject({ verdict: "met", file: null });
    else expect(out).toContain("thickness");
  });

  it("replaces under force what a link leads to, with its rights and the mark before the text", async () => {
    const marked = `\uFEFF${DEMO_KNIFE}`;
    const { [KNIFE]: _knife, ...files } = DEMO_FILES;
    const io = fakeIo({ files: { ...files, [KNIFE]: marked, "/kept/own.yaml": marked } });
    io.disk.links.set(`/shop/fo/${KNIFE}`, "/kept/own.yaml");
    io.disk.folders.add("/shop/fo");
    io.disk.modes.set("/kept/own.yaml", 0o600);
    const { code, err } = await answer([...FIT, "--force"], io);
    expect(code, err).toBe(EXIT.done);
    expect([...(io.disk.files.get("/kept/own.yaml") ?? [])].slice(0, 3)).toEqual([0xef, 0xbb, 0xbf]);
    expect(io.disk.text("/kept/own.yaml")).not.toBe(DEMO_KNIFE);
    expect(io.disk.modes.get("/kept/own.yaml")).toBe(0o600);
    expect(io.disk.links.has(`/shop/fo/${KNIFE}`)).toBe(true);
  });
});
