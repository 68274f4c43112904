import { createHash } from "node:crypto";

/** A name in a folder has 255 bytes on most systems; what is put behind this one has to fit into them too. */
const MOST_BYTES = 120;
/** Signs kept of a longer name: four bytes each at most, a hash beside them. */
const KEPT = 24;

/**
 * The name of a file as hidden files beside it begin with: itself, or where it is long a short form that no other file of the
 * folder has.
 *
 * @example
 * hiddenName("harvest.record.yaml"); // ".harvest.record.yaml"
 */
export function hiddenName(name: string): string {
  if (new TextEncoder().encode(name).length <= MOST_BYTES) return `.${name}`;
  const hash = createHash("sha256").update(name).digest("hex").slice(0, 16);
  return `.${[...name].slice(0, KEPT).join("")}~${hash}`;
}

/** What stands behind the hidden name in that of a temporary file, the name of its run in front. */
export const temporaryEnding = (runId: string, index: number): string => `.${runId}-${index}.tmp`;

/** The same of a run of this program, with the number of its process; nobody else's file is taken for one. */
const OWN_ENDING = /^\.(\d+)-[0-9a-f]{8}-\d+\.tmp$/u;

/** The process that made a temporary file for a file of this name; undefined for any other file. */
export function processOfTemporary(temporary: string, name: string): number | undefined {
  const hidden = hiddenName(name);
  if (!temporary.startsWith(hidden)) return undefined;
  const found = OWN_ENDING.exec(temporary.slice(hidden.length))?.[1];
  return found === undefined ? undefined : Number(found);
}
