import type { KnifeSpec } from "@scantling/geometry";
import { type FileUnits, formatDensity } from "@scantling/geometry/units";
import { namesFromMemory, usedMaterials } from "../used-materials.js";
import { wrap } from "./layout.js";

/** One line for the head of a report: materials whose density is from memory. Nothing where there are none. */
export function fromMemoryLines(spec: KnifeSpec): string[] {
  const names = namesFromMemory(spec);
  if (names.length === 0) return [];
  return wrap(`Density from memory, not looked up: ${names.join(", ")}`, undefined, "  ");
}

/** The densities that were weighed with, for people, and what to do about those from memory. */
export function densityLines(spec: KnifeSpec, units: FileUnits): string[] {
  const seen = new Map(
    usedMaterials(spec).map(({ name, given, density, mark }) => {
      const taken = given === undefined ? "" : ` (for ${given})`;
      const note = mark === "from memory" ? " (from memory)" : "";
      return [`${name}${taken} ${formatDensity(density, units)}${note}`, mark] as const;
    }),
  );
  const advice = [...seen.values()].includes("from memory")
    ? " From memory: nobody has looked it up; weigh a piece of yours, and give its density in the file."
    : "";
  return wrap(`Densities: ${[...seen.keys()].join(", ")}.${advice}`);
}

/** The same for programs: density in g/cm³, how it is known, and its source. */
export function materialsJson(spec: KnifeSpec): unknown {
  return usedMaterials(spec).map(({ part, name, density, mark, source }) => ({
    part,
    name,
    densityGPerCm3: density * 1000,
    mark,
    source,
  }));
}
