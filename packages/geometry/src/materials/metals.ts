import { type MaterialRow, makeMaterials } from "./material.js";

const ASM = "Metals Handbook vol. 1, 8th ed., ASM 1961, p. 52, as transcribed in a public density table";
const MHB = "Machinery's Handbook, 21st ed. 1979, p. 2270, as transcribed in a public density table";
const MEMORY = "from memory, unconfirmed";

const ROWS: readonly MaterialRow[] = [
  {
    name: "brass",
    also: ["C360", "free-machining brass", "leaded brass"],
    gPerCm3: 8.5,
    source: `${ASM} (free-machining leaded brass)`,
    mark: "secondary copy",
  },
  {
    name: "cartridge brass",
    also: ["C260", "brass 70/30"],
    gPerCm3: 8.53,
    band: [8.44, 8.53],
    source: `${ASM} (8.53); Machinery's Handbook (8.44)`,
    mark: "secondary copy",
  },
  { name: "naval brass", gPerCm3: 8.44, source: ASM, mark: "secondary copy" },
  { name: "red brass", gPerCm3: 8.75, source: ASM, mark: "secondary copy" },
  {
    name: "copper",
    gPerCm3: 8.96,
    band: [8.89, 8.96],
    source: `${ASM} (8.96, pure); Machinery's Handbook (8.89)`,
    mark: "secondary copy",
  },
  { name: "phosphor bronze", gPerCm3: 8.8, source: `${ASM} (8 % tin)`, mark: "secondary copy" },
  {
    name: "bronze",
    also: ["bronze 90/10"],
    gPerCm3: 8.78,
    source: `${MHB} (90 Cu, 10 Sn)`,
    mark: "secondary copy",
  },
  {
    name: "nickel silver",
    also: ["german silver"],
    gPerCm3: 8.7,
    band: [8.7, 8.73],
    source: `${ASM} (55-18: 8.70; 65-18: 8.73)`,
    mark: "secondary copy",
  },
  {
    name: "nickel",
    gPerCm3: 8.9,
    source: "Emsley, The Elements, 1989, as transcribed",
    mark: "secondary copy",
  },
  { name: "nickel-copper alloy", also: ["Monel"], gPerCm3: 8.84, source: ASM, mark: "secondary copy" },
  { name: "silver", gPerCm3: 10.49, source: ASM, mark: "secondary copy" },
  { name: "titanium", gPerCm3: 4.507, source: `${ASM} (99.9 %)`, mark: "secondary copy" },
  { name: "titanium 6Al-4V", also: ["Ti-6Al-4V"], gPerCm3: 4.43, source: MEMORY, mark: "from memory" },
  {
    name: "aluminium 6061",
    also: ["aluminum 6061", "aluminium"],
    gPerCm3: 2.7,
    source: MEMORY,
    mark: "from memory",
  },
];

/** Metals for pins, guards, bolsters and pommels. */
export const METALS = makeMaterials("metal", ROWS);
