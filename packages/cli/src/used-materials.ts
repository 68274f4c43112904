import {
  type DensityMark,
  findMaterial,
  handleMaterials,
  type KnifeSpec,
  materialDensity,
} from "@scantling/geometry";

/** A material that the knife is weighed with, and how its density is known. */
export interface UsedMaterial {
  /** What it is used for: `steel`, `handle.slabs`, … as the file names it. */
  readonly part: string;
  readonly name: string;
  /** The name that the file gives, where that is another one for it: `ironwood` for desert ironwood. */
  readonly given?: string;
  /** g/mm³. */
  readonly density: number;
  /** `given`: the file says so itself. */
  readonly mark: DensityMark | "given";
  readonly source: string;
}

/** Whether there is anything for a pin to go through. */
const hasPinHoles = ({ blade, tang }: KnifeSpec): boolean =>
  [...(blade.holes ?? []), ...(tang.holes ?? [])].some(({ kind }) => kind === "pin");

/** Every material of the knife, the steel first. */
export function usedMaterials(spec: KnifeSpec): readonly UsedMaterial[] {
  const { steel, handle } = spec;
  return [["steel", steel] as const, ...handleMaterials(handle)].flatMap(([path, material]) => {
    // Pins without a hole for them are not there.
    if (path === "handle.pins.material" && !hasPinHoles(spec)) return [];
    const density = materialDensity(material);
    if (density === undefined) return [];
    const row = material.density === undefined ? findMaterial(material.name) : undefined;
    return [
      {
        part: path.replace(/\.material$/u, ""),
        name: row?.name ?? material.name,
        ...(row === undefined || sameName(row.name, material.name) ? {} : { given: material.name }),
        density,
        mark: row?.mark ?? ("given" as const),
        source: row?.source ?? "the knife file",
      },
    ];
  });
}

/** Whether two names differ in their spelling only: blanks, hyphens, capitals. */
const sameName = (a: string, b: string): boolean => spelling(a) === spelling(b);
const spelling = (name: string): string => name.toLowerCase().replace(/[\s\-_./]+/gu, "");

/** Names of the materials whose density nobody has looked up, each once. */
export function namesFromMemory(spec: KnifeSpec): readonly string[] {
  const names = usedMaterials(spec)
    .filter(({ mark }) => mark === "from memory")
    .map(({ name }) => name);
  return [...new Set(names)];
}
