import { GeometryError, SpecError } from "@scantling/geometry";
import { describe, expect, it } from "vitest";
import { CommandFailure } from "../src/failure.js";
import { FileError } from "../src/file/index.js";
import { loadJob } from "../src/load.js";
import { inFileTerms } from "../src/measure.js";
import { DEMO_FILES, DEMO_KNIFE, demoWith, placeOf } from "./support/demo.js";
import { fakeIo } from "./support/fake-io.js";

const FILE = "harvest.knife.yaml";

async function failureOf(files: Readonly<Record<string, string>>, thrown: unknown): Promise<unknown> {
  const job = await loadJob(fakeIo({ files }), FILE, {});
  try {
    return inFileTerms(job, () => {
      throw thrown;
    });
  } catch (error) {
    return error;
  }
}

const broken = (path: string): SpecError =>
  new SpecError([{ code: "negative", path, text: "This is too small." }]);

describe("what geometry finds wrong, in terms of the files", () => {
  it("stands at its line of the knife file", async () => {
    const error = await failureOf(DEMO_FILES, broken("blade.ricasso"));
    if (!(error instanceof FileError)) throw error;
    const [line] = placeOf(DEMO_KNIFE, "ricasso: 10").split(":").map(Number);
    expect(error.problems).toMatchObject([{ file: FILE, line, path: "blade.ricasso", code: "negative" }]);
  });

  it("stands in the shop file where an allowance comes from there", async () => {
    const knife = demoWith(["face: 0.5, ", ""]);
    const files = { [FILE]: knife, "shop.yaml": "scantling: 1\nunits: mm\nallowances:\n  face: 0.4\n" };
    const error = await failureOf(files, broken("allowances.face"));
    if (!(error instanceof FileError)) throw error;
    expect(error.problems).toMatchObject([{ file: "shop.yaml", line: 4 }]);
  });

  it("is a failure of the file where the geometry cannot be built", async () => {
    const error = await failureOf(
      DEMO_FILES,
      new GeometryError("offset-collapsed", "the outline folds onto itself"),
    );
    if (!(error instanceof CommandFailure)) throw error;
    expect(error).toMatchObject({ exitCode: 3, code: "offset-collapsed" });
    expect(error.message).toContain("folds onto itself");
  });

  it("leaves our own bugs alone", async () => {
    const bug = new TypeError("x");
    expect(await failureOf(DEMO_FILES, bug)).toBe(bug);
  });
});

describe("the job", () => {
  it("takes the shop's allowances where the knife gives none, and the knife's own before them", async () => {
    const knife = demoWith(["face: 0.5, ", ""]);
    const shop = "scantling: 1\nunits: mm\nallowances: { face: 0.4, outline: 9 }\n";
    const job = await loadJob(fakeIo({ files: { [FILE]: knife, "shop.yaml": shop } }), FILE, {});
    expect(job.spec.allowances).toMatchObject({ face: 0.4, outline: 1.5 });
  });

  it("shows the file's units unless told otherwise", async () => {
    const io = fakeIo({ files: DEMO_FILES });
    expect((await loadJob(io, FILE, {})).units).toBe("mm");
    expect((await loadJob(io, FILE, { units: "in" })).units).toBe("in");
  });

  it("names outputs after the file, or after the order where there is none", async () => {
    expect((await loadJob(fakeIo({ files: DEMO_FILES }), FILE, {})).name).toBe("harvest");
    expect((await loadJob(fakeIo({ stdin: DEMO_KNIFE }), "-", {})).name).toBe("MG-14");
    const odd = demoWith(["code: MG-14", 'code: "../a b/c"']);
    expect((await loadJob(fakeIo({ stdin: odd }), "-", {})).name).toBe("a-b-c");
  });
});
