import { type ChildProcess, spawn } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { readRecordFile } from "../../packages/cli/src/file/index.js";

/** The built command: these tests are about processes that really end. */
export const BIN = fileURLToPath(new URL("../../packages/cli/dist/bin.js", import.meta.url));
export const RECORD = "harvest.record.yaml";

/** A record that was begun: with it, notes need neither knife file nor shop. */
const BEGUN = `scantling: 1
units: mm
knife: harvest.knife.yaml
entries:
  - { revision: 1, on: 2026-10-05, note: begun }
`;

/** A record in a folder of its own on the real disk. */
export class RecordFolder {
  readonly path = mkdtempSync(join(tmpdir(), "scantling-record-"));
  readonly file = join(this.path, RECORD);

  constructor() {
    if (!existsSync(BIN)) throw new Error("the command is not built: npm run build");
    writeFileSync(this.file, BEGUN);
  }

  text(): string {
    return readFileSync(this.file, "utf8");
  }

  /** Notes of all entries, in their order; throws where the record cannot be read. */
  notes(): string[] {
    return readRecordFile(this.text(), RECORD).entries.map(({ note = "" }) => note);
  }

  names(): string[] {
    return readdirSync(this.path);
  }

  remove(): void {
    rmSync(this.path, { recursive: true, force: true });
  }
}

/** A command that stores a note, as it runs. */
export interface Run {
  readonly child: ChildProcess;
  /** Its exit code, null where it was killed, and what it had said by then. */
  readonly ended: Promise<{ readonly code: number | null; readonly out: string; readonly err: string }>;
}

export function storeNote(folder: RecordFolder, note: string): Run {
  const child = spawn(process.execPath, [BIN, "record", RECORD, "--note", note], {
    cwd: folder.path,
    stdio: ["ignore", "pipe", "pipe"],
  });
  let [out, err] = ["", ""];
  child.stdout.on("data", (chunk) => {
    out += String(chunk);
  });
  child.stderr.on("data", (chunk) => {
    err += String(chunk);
  });
  const ended = new Promise<{ code: number | null; out: string; err: string }>((resolve) => {
    child.on("close", (code) => resolve({ code, out, err }));
  });
  return { child, ended };
}

/** Whether a run had said that its entry is stored. */
export const isConfirmed = (out: string): boolean => /^STORED: revision \d+ in /mu.test(out);
