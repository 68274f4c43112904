import { relative } from "node:path";
import { describe, expect, it } from "vitest";
import { CommandFailure } from "../../src/failure.js";
import { type NewFile, writeWhole } from "../../src/io/write-whole.js";
import { type Fault, MemoryDisk } from "../support/fake-io.js";

const SVG = "<svg/>";
const two: NewFile[] = [
  { path: "/shop/out/deep/a.svg", content: SVG },
  { path: "/shop/out/deep/b.json", content: "{}" },
];

function write(disk: MemoryDisk, files: readonly NewFile[], force = false): Promise<void> {
  return writeWhole(disk, files, { force, runId: "run", show: (path) => relative("/shop", path) });
}

async function failure(promise: Promise<unknown>): Promise<CommandFailure> {
  const error = await promise.then(
    () => undefined,
    (reason: unknown) => reason,
  );
  if (!(error instanceof CommandFailure)) throw new Error(`no CommandFailure but ${String(error)}`);
  return error;
}

describe("writing files whole", () => {
  it("makes the folders, writes everything and leaves no temporary file", async () => {
    const disk = new MemoryDisk({ "/shop/x": "" });
    await write(disk, two);
    expect(disk.paths()).toEqual(["/shop/out/deep/a.svg", "/shop/out/deep/b.json", "/shop/x"]);
    expect(disk.text("/shop/out/deep/a.svg")).toBe(SVG);
  });

  it("refuses to overwrite, names the file, says what to do and writes none of the others", async () => {
    const disk = new MemoryDisk({ "/shop/out/deep/b.json": "mine" });
    const error = await failure(write(disk, two));
    expect(error).toMatchObject({ exitCode: 5, code: "would-overwrite" });
    expect(error.message).toContain("out/deep/b.json");
    expect(error.todo).toContain("--force");
    expect(disk.paths()).toEqual(["/shop/out/deep/b.json"]);
    expect(disk.text("/shop/out/deep/b.json")).toBe("mine");
  });

  it("replaces under force", async () => {
    const disk = new MemoryDisk({ "/shop/out/deep/b.json": "mine" });
    await write(disk, two, true);
    expect(disk.text("/shop/out/deep/b.json")).toBe("{}");
    expect(disk.paths()).toHaveLength(2);
  });

  it("does not overwrite a file that appears between the look and the write", async () => {
    class Racing extends MemoryDisk {
      override async createFile(path: string, bytes: Uint8Array): Promise<void> {
        await super.createFile(path, bytes);
        this.files.set("/shop/out/deep/b.json", new TextEncoder().encode("theirs"));
      }
    }
    const disk = new Racing({ "/shop/x": "" });
    expect(await failure(write(disk, two))).toMatchObject({ exitCode: 5, code: "would-overwrite" });
    expect(disk.text("/shop/out/deep/b.json")).toBe("theirs");
    expect(disk.paths()).toEqual(["/shop/out/deep/b.json", "/shop/x"]);
  });

  it("goes without links where the file system has none", async () => {
    const disk = new MemoryDisk({ "/shop/x": "" });
    disk.faults.push({ step: "link", code: "EPERM" });
    await write(disk, two);
    expect(disk.paths()).toEqual(["/shop/out/deep/a.svg", "/shop/out/deep/b.json", "/shop/x"]);
  });

  it("refuses a folder that stands where the file should", async () => {
    const disk = new MemoryDisk({ "/shop/out/deep/a.svg/inside": "" });
    expect(await failure(write(disk, two, true))).toMatchObject({ exitCode: 5, code: "cannot-write" });
    expect(disk.paths()).toEqual(["/shop/out/deep/a.svg/inside"]);
  });

  for (const file of ["/shop/out/deep", "/shop/out"]) {
    it(`says so where the folder, or a part of its path, is a file: ${file}`, async () => {
      const disk = new MemoryDisk({ [file]: "mine" });
      const error = await failure(write(disk, two, true));
      expect(error).toMatchObject({ exitCode: 5, code: "cannot-write" });
      expect(error.message).toContain("out/deep cannot be made a folder");
      expect(disk.text(file)).toBe("mine");
    });
  }

  it("keeps the rights of what it replaces, and where a link leads, the link", async () => {
    const disk = new MemoryDisk({ "/kept/b.json": "mine", "/shop/out/deep/x": "" });
    disk.links.set("/shop/out/deep/b.json", "/kept/b.json");
    disk.modes.set("/kept/b.json", 0o640);
    await write(disk, two, true);
    expect(disk.text("/kept/b.json")).toBe("{}");
    expect(disk.modes.get("/kept/b.json")).toBe(0o640);
    expect(disk.links.get("/shop/out/deep/b.json")).toBe("/kept/b.json");
    expect(disk.paths()).toEqual(["/kept/b.json", "/shop/out/deep/a.svg", "/shop/out/deep/x"]);
  });

  it("refuses what is write-protected, and writes none of the others", async () => {
    const disk = new MemoryDisk({ "/shop/out/deep/b.json": "mine" });
    disk.modes.set("/shop/out/deep/b.json", 0o444);
    const error = await failure(write(disk, two, true));
    expect(error).toMatchObject({ exitCode: 5, code: "write-protected" });
    expect(error.message).toBe("out/deep/b.json is write-protected; nothing was written");
    expect(disk.paths()).toEqual(["/shop/out/deep/b.json"]);
  });

  it("refuses a link that leads nowhere, with force and without", async () => {
    for (const force of [false, true]) {
      const disk = new MemoryDisk({ "/shop/x": "" });
      disk.links.set("/shop/out/deep/b.json", "/kept/b.json");
      const error = await failure(write(disk, two, force));
      expect(error.message).toBe("out/deep/b.json is a link that leads nowhere; nothing was written");
      expect(error.todo).not.toContain("--force");
      expect(disk.paths()).toEqual(["/shop/x"]);
    }
  });

  it("leaves a temporary file that was there before alone", async () => {
    const stranger = "/shop/out/deep/.a.svg.run-0.tmp";
    const disk = new MemoryDisk({ [stranger]: "theirs" });
    expect(await failure(write(disk, two))).toMatchObject({ exitCode: 5, code: "cannot-write" });
    expect(disk.paths()).toEqual([stranger]);
  });
});

describe("a failure leaves nothing behind", () => {
  const faults: (Fault & { readonly says: string; readonly force?: boolean })[] = [
    { step: "makeFolder", code: "EACCES", says: "permission denied" },
    { step: "createFile", code: "ENOSPC", says: "the disk is full" },
    { step: "createFile", call: 1, code: "ENOSPC", says: "the disk is full" },
    { step: "createFile", code: "EROFS", says: "read-only" },
    { step: "rename", code: "EIO", force: true, says: "read or write error" },
    { step: "entry", code: "EACCES", says: "permission denied" },
    { step: "removeFile", call: 0, code: "EIO", says: "read or write error" },
  ];
  for (const { says, force, ...fault } of faults) {
    it(`${fault.step} ${fault.call ?? ""} ${fault.code}${force === true ? " under force" : ""}`, async () => {
      const disk = new MemoryDisk({ "/shop/x": "" });
      disk.faults.push(fault);
      const error = await failure(write(disk, two, force));
      expect(error).toMatchObject({ exitCode: 5, code: "cannot-write" });
      expect(error.message).toContain(says);
      expect(error.todo).toBe("Make the folder writable, or give another with --out DIR.");
      expect(disk.paths()).toEqual(["/shop/x"]);
      expect([...disk.folders].sort()).toEqual(["/", "/shop"]);
    });
  }

  it("takes the first file back when the second cannot get its name", async () => {
    const disk = new MemoryDisk({ "/shop/x": "" });
    disk.faults.push({ step: "link", call: 1, code: "EIO" }, { step: "rename", code: "EIO" });
    await failure(write(disk, two));
    expect(disk.paths()).toEqual(["/shop/x"]);
  });

  it("keeps what it would have replaced when the disk is full under force", async () => {
    const disk = new MemoryDisk({ "/shop/out/deep/a.svg": "old", "/shop/out/deep/b.json": "old" });
    disk.faults.push({ step: "createFile", call: 1, code: "ENOSPC" });
    await failure(write(disk, two, true));
    expect(disk.text("/shop/out/deep/a.svg")).toBe("old");
    expect(disk.text("/shop/out/deep/b.json")).toBe("old");
    expect(disk.paths()).toHaveLength(2);
  });
});
