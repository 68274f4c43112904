import { type DensityMark, type MaterialRow, makeMaterials } from "./material.js";

const REFERENCE = "wood database values as carried in a public species table, air-dry (about 12 % moisture)";
const MEMORY = "from memory, unconfirmed, air-dry: weigh your own block";

const wood = (
  name: string,
  gPerCm3: number,
  also: readonly string[] = [],
  mark: DensityMark = "secondary copy",
): MaterialRow => ({ name, also, gPerCm3, source: mark === "from memory" ? MEMORY : REFERENCE, mark });

const ROWS: readonly MaterialRow[] = [
  {
    ...wood("African blackwood", 1.27, ["blackwood", "grenadilla"]),
    band: [1.2, 1.31],
    source: `${REFERENCE} (1.27); suppliers 1.20 to 1.31`,
  },
  {
    ...wood("desert ironwood", 1.21, ["ironwood"]),
    source: "wood database page on desert ironwood, about 1.21",
    mark: "looked up",
  },
  wood("lignum vitae", 1.26),
  wood("leadwood", 1.22),
  wood("Macassar ebony", 1.12),
  { ...wood("African ebony", 1.03, ["ebony", "Gaboon ebony"]), band: [0.955, 1.03] },
  wood("Ceylon ebony", 0.915),
  wood("ipe", 1.1),
  wood("cocobolo", 1.095),
  wood("mopane", 1.075),
  wood("katalox", 1.05),
  wood("marblewood", 1.005),
  wood("olive", 0.98, ["olive wood"]),
  wood("granadillo", 0.925),
  wood("Osage orange", 0.855),
  wood("Brazilian rosewood", 0.835),
  wood("East Indian rosewood", 0.83, ["rosewood", "Indian rosewood"]),
  wood("hard maple", 0.705, ["sugar maple", "maple"]),
  wood("red oak", 0.7, ["northern red oak"]),
  wood("European beech", 0.71, ["beech"]),
  wood("European ash", 0.68, ["ash"]),
  wood("English oak", 0.675, ["oak", "European oak"]),
  wood("English walnut", 0.64, ["European walnut"]),
  wood("koa", 0.625, ["Hawaiian koa"]),
  wood("soft maple", 0.61, ["red maple"]),
  wood("black walnut", 0.61, ["walnut"]),
  wood("Honduran mahogany", 0.545, ["mahogany"]),
  wood("white oak", 0.755, [], "from memory"),
  wood("cherry", 0.56, ["black cherry"], "from memory"),
  wood("bocote", 0.85, [], "from memory"),
  wood("ziricote", 0.805, [], "from memory"),
  wood("snakewood", 1.21, [], "from memory"),
  wood("boxwood", 0.975, ["box"], "from memory"),
  wood("purpleheart", 0.905, [], "from memory"),
  wood("wenge", 0.87, [], "from memory"),
];

/** Handle woods by common name, air-dry; a real block differs by a tenth and more. */
export const WOODS = makeMaterials("wood", ROWS);
