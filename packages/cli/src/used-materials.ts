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
  /** g/mm³. */
  readonly density: number;
  /** `given`: the file says so itself. */
  readonly mark: DensityMark | "given";
  readonly source: string;
}

/** Every material of the knife, the steel first. */
export function usedMaterials({ steel, handle }: KnifeSpec): readonly UsedMaterial[] {
  return [["steel", steel] as const, ...handleMaterials(handle)].flatMap(([path, material]) => {
    const density = materialDensity(material);
    if (density === undefined) return [];
    const row = material.density === undefined ? findMaterial(material.name) : undefined;
    return [
      {
        part: path.replace(/\.material$/u, ""),
        name: row?.name ?? material.name,
        density,
        mark: row?.mark ?? ("given" as const),
        source: row?.source ?? "the knife file",
      },
    ];
  });
}

/** Names of the materials whose density nobody has looked up, each once. */
export function namesFromMemory(spec: KnifeSpec): readonly string[] {
  const names = usedMaterials(spec)
    .filter(({ mark }) => mark === "from memory")
    .map(({ name }) => name);
  return [...new Set(names)];
}
