import { spawnSync } from "node:child_process";
import {
  chmodSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { PassThrough, Writable } from "node:stream";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { changeFile } from "../../src/io/change-file.js";
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

  it("does not replace a link that leads nowhere either, which is none of its own", async () => {
    const link = join(folder, "lost.txt");
    symlinkSync(join(folder, "gone.txt"), link);
    await expect(writeWhole(nodeDisk, [{ path: link, content: "x" }], options(true))).rejects.toMatchObject({
      message: `${link} is a link that leads nowhere; nothing was written`,
    });
    expect(lstatSync(link).isSymbolicLink()).toBe(true);
  });

  const MODES = [0o600, 0o640, 0o664, 0o755];
  it.each(MODES)("keeps the rights of what it replaces: %o", async (mode) => {
    const path = join(folder, `mode-${mode}.txt`);
    writeFileSync(path, "one");
    chmodSync(path, mode);
    await writeWhole(nodeDisk, [{ path, content: "two" }], options(true));
    expect(readFileSync(path, "utf8")).toBe("two");
    expect(statSync(path).mode & 0o7777).toBe(mode);
  });

  it("gives a file that replaces another the owner of that, where the system lets it", async () => {
    const path = join(folder, "owned.txt");
    writeFileSync(path, "one");
    const before = await nodeDisk.accessOf(path);
    expect(before).toEqual({
      mode: statSync(path).mode & 0o7777,
      user: statSync(path).uid,
      group: statSync(path).gid,
    });
    // Only the administrator can give a file away; to everybody else this must be no failure.
    const made = join(folder, "given.txt");
    await nodeDisk.createFile(made, new Uint8Array(), { mode: 0o640, user: 12_345, group: 12_345 });
    expect(statSync(made).mode & 0o7777).toBe(0o640);
    expect([12_345, before.user]).toContain(statSync(made).uid);
    if (process.getuid?.() === 0) expect(statSync(made).uid).toBe(12_345);
  });

  it("replaces what a link leads to, in the folder where that is, and the link stays one", async () => {
    mkdirSync(join(folder, "kept"));
    const [real, link] = [join(folder, "kept", "real.txt"), join(folder, "to-kept.txt")];
    writeFileSync(real, "one");
    chmodSync(real, 0o600);
    symlinkSync(real, link);
    await writeWhole(nodeDisk, [{ path: link, content: "two" }], options(true));
    expect(lstatSync(link).isSymbolicLink()).toBe(true);
    expect(readFileSync(real, "utf8")).toBe("two");
    expect(statSync(real).mode & 0o7777).toBe(0o600);
    expect(readdirSync(join(folder, "kept"))).toEqual(["real.txt"]);
  });

  it("does not go through write protection, not even for the administrator", async () => {
    const path = join(folder, "protected.txt");
    writeFileSync(path, "one");
    chmodSync(path, 0o444);
    await expect(writeWhole(nodeDisk, [{ path, content: "two" }], options(true))).rejects.toMatchObject({
      exitCode: 5,
      code: "write-protected",
    });
    expect(readFileSync(path, "utf8")).toBe("one");
    expect(await nodeDisk.isWritable(path)).toBe(false);
    expect(await nodeDisk.isWritable(folder)).toBe(true);
  });

  it("changes a file whose name fills all that a name may have: 255 bytes", async () => {
    const path = join(folder, `${"ä".repeat(120)}${"n".repeat(15)}`);
    const world = { disk: nodeDisk, machine: nodeMachine, runId: `${process.pid}-0123abcd` };
    const show = (each: string): string => each;
    expect(await changeFile(world, { path, seen: undefined, content: "one" }, show)).toBe("stored");
    const seen = new TextEncoder().encode("one");
    expect(await changeFile(world, { path, seen, content: "two" }, show)).toBe("stored");
    expect(readFileSync(path, "utf8")).toBe("two");
    expect(readdirSync(folder).filter((name) => name.startsWith(".ä"))).toEqual([]);
    const long = { path: `${path}n`, seen: undefined, content: "one" };
    await expect(changeFile(world, long, show)).rejects.toMatchObject({ exitCode: 5 });
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
