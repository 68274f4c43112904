import { spawnSync } from "node:child_process";
import { closeSync, mkdirSync, openSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";
import { flat } from "../../packages/cli/test/support/answer.js";
import { BIN, RECORD, RecordFolder } from "./record-runs.js";

// Disks that are really full: the record stays as it was, and what was not stored is not said to be.

let folder: RecordFolder;
beforeEach(() => {
  folder = new RecordFolder();
});
afterEach(() => folder.remove());

const argv = (note: string): string[] => [BIN, "record", RECORD, "--note", note];

/** A folder on a file system of 64 kB: of its own, or in a name space of its own where mounting is not permitted. */
const MOUNTS = [
  ["sh", "-eu"],
  ["unshare", "--map-root-user", "--mount", "sh", "-eu"],
] as const;

/**
 * Stores notes on a small disk until one cannot be stored, makes room and stores one more. What was there before and after
 * is copied out.
 */
const UNTIL_FULL = `
disk=$1 out=$2 node=$3 bin=$4 record=$5
mount -t tmpfs -o size=64k none "$disk"
trap 'cd /; umount "$disk"' EXIT
cp "$out/$record" "$disk/$record"
cd "$disk"
head -c 45000 /dev/zero > filler
n=0 code=0
note=$(head -c 900 /dev/zero | tr '\\0' x)
while [ "$code" = 0 ] && [ "$n" -lt 60 ]; do
  n=$((n + 1))
  cp "$record" "$out/before"
  "$node" "$bin" record "$record" --note "$note" > "$out/last.out" 2> "$out/last.err" || code=$?
done
cp "$record" "$out/after"
ls -A > "$out/names"
rm filler
"$node" "$bin" record "$record" --note "room again" > "$out/again.out"
cp "$record" "$out/again"
echo "$n $code" > "$out/result"
`;

/** Runs the script where mounting is permitted; undefined where it is nowhere. */
function fillSmallDisk(): ((name: string) => string) | undefined {
  const disk = join(folder.path, "disk");
  mkdirSync(disk);
  for (const [command, ...options] of MOUNTS) {
    const given = ["-c", UNTIL_FULL, "until-full", disk, folder.path, process.execPath, BIN, RECORD];
    const { stderr } = spawnSync(command, [...options, ...given], { encoding: "utf8" });
    if (/mount:|unshare:|permission denied|not permitted|ENOENT/iu.test(stderr ?? "")) continue;
    expect(stderr).toBe("");
    return (name) => readFileSync(join(folder.path, name), "utf8");
  }
  return undefined;
}

/** Where nothing can be mounted: the system itself refuses files above a size, in blocks of 512 bytes. */
function underLimit(blocks: number, note: string) {
  return spawnSync("sh", ["-c", `ulimit -f ${blocks}; exec "$0" "$@"`, process.execPath, ...argv(note)], {
    cwd: folder.path,
    encoding: "utf8",
  });
}

test("a file system that is full takes no half entries, and all that was there is there after it", () => {
  const read = fillSmallDisk();
  if (read === undefined) {
    // The same, with the limit of a process in place of that of a disk.
    const before = folder.text();
    const { status, stderr, stdout } = underLimit(1, "x".repeat(900));
    expect(status).toBe(5);
    expect(stderr).toContain("(EFBIG)");
    expect(stdout).toBe("");
    expect(folder.text()).toBe(before);
    return;
  }
  const [runs, code] = read("result").trim().split(" ").map(Number);
  expect(runs).toBeGreaterThan(1);
  expect(code).toBe(5);
  expect(read("last.err")).toContain("the disk is full (ENOSPC)");
  expect(read("last.out")).toBe("");
  expect(read("after")).toBe(read("before"));
  expect(read("names").trim().split("\n").sort()).toEqual(["filler", RECORD].sort());
  expect(read("again.out")).toContain(`STORED: revision ${(runs ?? 0) + 1} in ${RECORD}`);
  expect(read("again").startsWith(read("after"))).toBe(true);
});

test("a file that would grow over the limit of the process is left as it was", () => {
  const before = folder.text();
  const { status, stderr, stdout } = underLimit(1, "x".repeat(900));
  expect(flat(stderr)).toContain(
    "cannot write harvest.record.yaml: the file would be larger than the system allows (EFBIG)",
  );
  expect(stderr).toContain("Nothing was stored.");
  expect([status, stdout]).toEqual([5, ""]);
  expect(folder.text()).toBe(before);
  expect(folder.names()).toEqual([RECORD]);
  expect(underLimit(1, "short").status).toBe(0);
});

test("where nobody can be told, the entry may be stored, but the command does not answer that all is well", () => {
  const before = folder.text();
  const full = openSync("/dev/full", "w");
  const { status, stderr } = spawnSync(process.execPath, argv("said to nobody"), {
    cwd: folder.path,
    encoding: "utf8",
    stdio: ["ignore", full, "pipe"],
  });
  closeSync(full);
  expect(status).toBe(5);
  expect(flat(stderr)).toContain("cannot write standard output: the disk is full (ENOSPC)");
  expect(folder.text().startsWith(before)).toBe(true);
  expect(folder.notes().at(-1)).toBe("said to nobody");
});

test("a lock that another program left is told, and what to do works", () => {
  const lock = join(folder.path, ".harvest.record.yaml.lock.another-bench.1.1-a");
  writeFileSync(lock, "");
  const before = folder.text();
  const { status, stderr } = spawnSync(process.execPath, argv("x"), { cwd: folder.path, encoding: "utf8" });
  expect(status).toBe(5);
  expect(flat(stderr)).toContain("process 1 on the computer another-bench; nothing was stored");
  expect(folder.text()).toBe(before);
  spawnSync("rm", [lock]);
  expect(spawnSync(process.execPath, argv("x"), { cwd: folder.path }).status).toBe(0);
});
