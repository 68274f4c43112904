import type { Disk } from "../../src/io/io.js";
import type { MemoryDisk } from "./fake-io.js";

/** How a step of the disk ends for the command. */
export interface Ending {
  /** Which step of all, from 0. */
  readonly at: number;
  /** Whether that step still reaches the disk before the end comes. */
  readonly done: boolean;
  /** Whether every later step fails too, as for a command that was killed: it cleans nothing up. */
  readonly forGood: boolean;
  readonly code?: string;
}

/** A disk that counts its steps and ends one of them, or all from one on. */
export function endingDisk(disk: MemoryDisk, { at, done, forGood, code = "EIO" }: Ending) {
  let steps = 0;
  const names: string[] = [];
  const handler: ProxyHandler<MemoryDisk> = {
    get(target, name) {
      const value: unknown = Reflect.get(target, name, target);
      if (typeof value !== "function" || name === "paths" || name === "text") return value;
      return async (...given: unknown[]): Promise<unknown> => {
        const step = steps++;
        names.push(String(name));
        const ends = forGood ? step >= at : step === at;
        if (!ends) return value.apply(target, given);
        const last = step === at;
        if (last && done) await value.apply(target, given);
        // A file that could not be completed is there, cut short.
        if (last && !done && name === "createFile") {
          const [path, bytes] = given as [string, Uint8Array];
          if (!target.files.has(path)) target.files.set(path, bytes.slice(0, Math.floor(bytes.length / 2)));
        }
        throw Object.assign(new Error(`${code}: ${String(name)}`), { code });
      };
    },
  };
  return { disk: new Proxy(disk, handler) as Disk & MemoryDisk, steps: () => steps, names };
}
