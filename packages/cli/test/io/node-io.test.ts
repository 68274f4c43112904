import { spawnSync } from "node:child_process";
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PassThrough, Writable } from "node:stream";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { nodeDisk, nodeIo, nodeMachine, outStream, readStream } from "../../src/io/node-io.js";
import { writeWhole } from "../../src/io/write-whole.js";

let folder = "";
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "scantling-"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const options = (force: boolean) => ({ force, runId: "run", show: (path: string) => path });

describe("the real disk", () => {
  it("writes whole into folders that it makes, and replaces only under force", async () => {
    const path = join(folder, "a", "b", "c.txt");
    await writeWhole(nodeDisk, [{ path, content: "one" }], options(false));
    await expect(writeWhole(nodeDisk, [{ path, content: "two" }], options(false))).rejects.toMatchObject({
      code: "would-overwrite",
    });
    expect(readFileSync(path, "utf8")).toBe("one");
    await writeWhole(nodeDisk, [{ path, content: "three" }], options(true));
    expect(readFileSync(path, "utf8")).toBe("three");
    expect(readdirSync(join(folder, "a", "b"))).toEqual(["c.txt"]);
  });

  it("gives up where a folder cannot be made, and does not go round for ever", async () => {
    // A folder below /proc answers that it does not exist; elsewhere it is not permitted.
    await expect(nodeDisk.makeFolder("/proc/scantling/x")).rejects.toMatchObject({
      code: expect.stringMatching(/^(ENOENT|EACCES|EPERM|EROFS)$/u),
    });
    await expect(
      writeWhole(nodeDisk, [{ path: "/proc/scantling/x/y.txt", content: "y" }], options(false)),
    ).rejects.toMatchObject({ exitCode: 5, code: "cannot-write" });
  });

  it("makes folders from the top down and says which it had to make", async () => {
    const deep = join(folder, "p", "q", "r");
    expect(await nodeDisk.makeFolder(deep)).toBe(join(folder, "p"));
    expect(await nodeDisk.makeFolder(deep)).toBeUndefined();
    writeFileSync(join(folder, "p", "file"), "");
    await expect(nodeDisk.makeFolder(join(folder, "p", "file"))).rejects.toMatchObject({ code: "EEXIST" });
    await expect(nodeDisk.makeFolder(join(folder, "p", "file", "s"))).rejects.toMatchObject({
      code: "ENOTDIR",
    });
  });

  it("takes back the folders that it made when a later file cannot be written", async () => {
    writeFileSync(join(folder, "blocker"), "");
    const files = [
      { path: join(folder, "new", "deep", "x.txt"), content: "x" },
      { path: join(folder, "blocker", "y.txt"), content: "y" },
    ];
    await expect(writeWhole(nodeDisk, files, options(false))).rejects.toMatchObject({
      exitCode: 5,
      code: "cannot-write",
    });
    expect(readdirSync(folder)).not.toContain("new");
    expect(readFileSync(join(folder, "blocker"), "utf8")).toBe("");
  });

  it("does not write through a link that leads nowhere", async () => {
    const link = join(folder, "link.txt");
    symlinkSync(join(folder, "elsewhere.txt"), link);
    await expect(writeWhole(nodeDisk, [{ path: link, content: "x" }], options(false))).rejects.toMatchObject({
      code: "would-overwrite",
    });
    expect(readdirSync(folder)).not.toContain("elsewhere.txt");
  });

  it("reads no more of a file than asked for", async () => {
    const path = join(folder, "long.txt");
    writeFileSync(path, "x".repeat(200_000));
    expect(await nodeDisk.readFile(path, 150_000)).toHaveLength(150_000);
    expect(await nodeDisk.readFile(path, 1_000_000)).toHaveLength(200_000);
  });

  it("tells files from folders from nothing", async () => {
    mkdirSync(join(folder, "f"));
    writeFileSync(join(folder, "g"), "");
    expect(await nodeDisk.entry(join(folder, "f"))).toBe("folder");
    expect(await nodeDisk.entry(join(folder, "g"))).toBe("file");
    expect(await nodeDisk.entry(join(folder, "h"))).toBe("nothing");
    expect(await nodeDisk.entry(join(folder, "g", "h"))).toBe("nothing");
  });
});

describe("streams", () => {
  function failing(code: string): Writable {
    return new Writable({
      write: (_chunk, _encoding, done) => done(Object.assign(new Error(code), { code })),
    });
  }

  it("takes no notice of a reader that left", async () => {
    const out = outStream(failing("EPIPE"));
    out.write("x");
    await expect(out.flush()).resolves.toBeUndefined();
  });

  it("reports a full disk when all should be written", async () => {
    const out = outStream(failing("ENOSPC"));
    out.write("x");
    await expect(out.flush()).rejects.toMatchObject({ code: "ENOSPC" });
  });

  it("waits until all is written", async () => {
    const taken: string[] = [];
    const slow = new Writable({
      write: (chunk, _encoding, done) => {
        setTimeout(() => {
          taken.push(String(chunk));
          done();
        }, 1);
      },
    });
    const out = outStream(slow);
    out.write("a");
    out.write("b");
    await out.flush();
    expect(taken.join("")).toBe("ab");
    expect(out.columns).toBeUndefined();
  });

  it("reads a stream up to a limit", async () => {
    const stream = new PassThrough();
    stream.end("abcdef");
    expect(new TextDecoder().decode(await readStream(stream, 4))).toBe("abcd");
  });
});

describe("the real machine", () => {
  it("syncs a folder, and says where there is none", async () => {
    await expect(nodeDisk.syncFolder(folder)).resolves.toBeUndefined();
    await expect(nodeDisk.syncFolder(join(folder, "nowhere"))).rejects.toMatchObject({ code: "ENOENT" });
  });

  it("follows links to where they lead", async () => {
    writeFileSync(join(folder, "target"), "");
    symlinkSync(join(folder, "target"), join(folder, "link"));
    expect(await nodeDisk.realPath(join(folder, "link"))).toBe(
      await nodeDisk.realPath(join(folder, "target")),
    );
    await expect(nodeDisk.realPath(join(folder, "nowhere"))).rejects.toMatchObject({ code: "ENOENT" });
  });

  it("knows which processes are there: this one, that of all, and not one that has ended", () => {
    expect(nodeMachine.processId).toBe(process.pid);
    expect(nodeMachine.isRunning(process.pid)).toBe(true);
    // The first process of a system is somebody else's or one's own, and always there.
    expect(nodeMachine.isRunning(1)).toBe(true);
    const ended = spawnSync(process.execPath, ["-e", ""]);
    expect(nodeMachine.isRunning(ended.pid)).toBe(false);
  });

  it("tells the day of its own place", () => {
    const io = nodeIo();
    const [before, day, after] = [new Date(), io.today(), new Date()];
    const parts = day.split("-").map(Number);
    const dayOf = (date: Date): number[] => [date.getFullYear(), date.getMonth() + 1, date.getDate()];
    expect(day).toMatch(/^\d{4}-\d{2}-\d{2}$/u);
    expect([dayOf(before), dayOf(after)]).toContainEqual(parts);
  });
});
