import { type MaterialRow, makeMaterials } from "./material.js";

const ASM = "Metals Handbook vol. 1, 8th ed., ASM 1961, p. 52, as transcribed in a public density table";
const AES = "Bolz & Tuve, Handbook of Tables for Applied Engineering Science, 2nd ed. 1973, as transcribed";
const MEMORY = "from memory, unconfirmed: weigh a piece of your own bar";

const ROWS: readonly MaterialRow[] = [
  {
    name: "carbon steel",
    also: ["steel", "plain carbon steel"],
    gPerCm3: 7.85,
    source: "design convention of the European section tables (EN 10219 table page: 7.85 kg/dm³)",
    mark: "secondary copy",
  },
  {
    name: "1020",
    also: ["low-carbon steel", "mild steel"],
    gPerCm3: 7.86,
    source: AES,
    mark: "secondary copy",
  },
  { name: "low-carbon Cr-Mo steel", gPerCm3: 7.86, source: ASM, mark: "secondary copy" },
  { name: "pure iron", also: ["iron"], gPerCm3: 7.874, source: ASM, mark: "secondary copy" },
  {
    name: "wrought iron",
    gPerCm3: 7.85,
    band: [7.77, 7.9],
    source: "Machinery's Handbook, 21st ed. 1979, p. 2270 (7.8 to 7.9); Pocket Ref (7.77), as transcribed",
    mark: "secondary copy",
  },
  { name: "1075", also: ["C75", "1.1248"], gPerCm3: 7.85, source: MEMORY, mark: "from memory" },
  { name: "1080", gPerCm3: 7.85, source: MEMORY, mark: "from memory" },
  { name: "1084", gPerCm3: 7.85, source: MEMORY, mark: "from memory" },
  { name: "1095", gPerCm3: 7.85, source: MEMORY, mark: "from memory" },
  {
    name: "W1",
    gPerCm3: 7.8,
    source: "general materials page on hardened W1 (two figures)",
    mark: "secondary copy",
  },
  { name: "W2", gPerCm3: 7.85, source: "trade page on W2, low authority", mark: "secondary copy" },
  { name: "5160", gPerCm3: 7.85, source: "trade page on heat treating 5160", mark: "secondary copy" },
  {
    name: "52100",
    also: ["100Cr6", "1.3505"],
    gPerCm3: 7.81,
    source: "distributor page on SAE 52100 (0.282 lb/in³)",
    mark: "secondary copy",
  },
  {
    name: "O1",
    also: ["1.2510"],
    gPerCm3: 7.81,
    band: [7.8, 7.81],
    source: "distributor page after a mill sheet (7.81, hardened 62 HRC); general materials page (7.8)",
    mark: "secondary copy",
  },
  {
    name: "D2",
    also: ["1.2379"],
    gPerCm3: 7.695,
    band: [7.695, 7.7],
    source: "mill data sheet TLS D2, issue 8, 2003 (0.278 lb/in³)",
    mark: "looked up",
  },
  {
    name: "440 stainless",
    also: ["440C", "440B", "440A"],
    gPerCm3: 7.7,
    source: ASM,
    mark: "secondary copy",
  },
  {
    name: "304",
    also: ["303"],
    gPerCm3: 7.9,
    band: [7.9, 8.02],
    source: `${ASM} (7.9); Bolz & Tuve (8.02)`,
    mark: "secondary copy",
  },
  { name: "316", gPerCm3: 8.0, source: ASM, mark: "secondary copy" },
  { name: "17-4PH", also: ["17-4"], gPerCm3: 7.8, source: ASM, mark: "secondary copy" },
  { name: "M2", also: ["M2 high-speed"], gPerCm3: 8.16, source: ASM, mark: "secondary copy" },
  {
    name: "CPM 10V",
    also: ["10V"],
    gPerCm3: 7.418,
    source: "mill data sheet, issue 7 (0.268 lb/in³)",
    mark: "looked up",
  },
  { name: "80CrV2", also: ["1.2235"], gPerCm3: 7.85, source: MEMORY, mark: "from memory" },
  { name: "15N20", also: ["75Ni8", "1.5634"], gPerCm3: 7.85, source: MEMORY, mark: "from memory" },
  { name: "L6", also: ["1.2714"], gPerCm3: 7.85, source: MEMORY, mark: "from memory" },
  { name: "A2", gPerCm3: 7.86, source: MEMORY, mark: "from memory" },
  { name: "410", also: ["420"], gPerCm3: 7.72, band: [7.7, 7.75], source: MEMORY, mark: "from memory" },
  { name: "AEB-L", also: ["13C26"], gPerCm3: 7.7, source: MEMORY, mark: "from memory" },
  { name: "12C27", gPerCm3: 7.7, source: MEMORY, mark: "from memory" },
  { name: "14C28N", gPerCm3: 7.7, source: MEMORY, mark: "from memory" },
  { name: "S30V", gPerCm3: 7.47, source: MEMORY, mark: "from memory" },
  { name: "S35VN", gPerCm3: 7.47, source: MEMORY, mark: "from memory" },
  { name: "M390", also: ["20CV"], gPerCm3: 7.54, source: MEMORY, mark: "from memory" },
  { name: "Elmax", gPerCm3: 7.6, source: MEMORY, mark: "from memory" },
  { name: "154CM", gPerCm3: 7.7, source: MEMORY, mark: "from memory" },
];

/** Steels and irons, at 20 °C. */
export const STEELS = makeMaterials("steel", ROWS);
