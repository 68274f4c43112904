import { type KnifeSpec, letterName } from "@scantling/geometry";
import { ordinal } from "../file/index.js";

/** Inputs of the interval as people call them, by their paths without indices. */
const WORDS: Readonly<Record<string, string>> = {
  outline: "each side of the outline",
  "outline.blade": "each side of the blade",
  "outline.tang": "each side of the tang",
  "blade.outline.scale.is": "scale of the drawing",
  "blade.outline.edgeLength": "edge length",
  "blade.outline.heelHeight": "heel height",
  "blade.outline.straightEdge": "straight edge",
  "blade.outline.tipHeight": "tip height",
  "blade.outline.spineBreak": "spine break",
  "blade.ricasso": "ricasso",
  "blade.thickness": "thickness at the spine",
  "blade.flankTaper": "flank taper",
  "blade.plunge.at": "place of the plunge",
  "blade.plunge.length": "length of the plunge",
  "blade.bevel.height": "bevel height",
  "blade.bevel.edgeThickness": "thickness at the edge",
  "blade.bevel.crown": "crown",
  "blade.bevel.wheelRadius": "radius of the wheel",
  "blade.bevel.apex": "place of the apex",
  "blade.bevel.right.height": "bevel height of the right face",
  "blade.bevel.right.crown": "crown of the right face",
  "blade.bevel.right.wheelRadius": "radius of the wheel of the right face",
  "blade.bevel.left.height": "bevel height of the left face",
  "blade.bevel.left.crown": "crown of the left face",
  "blade.bevel.left.wheelRadius": "radius of the wheel of the left face",
  "blade.edgeAngle": "sharpening angle",
  "blade.edgeAngle.right": "sharpening angle of the right side",
  "blade.edgeAngle.left": "sharpening angle of the left side",
  "blade.microbevel.height": "height of the microbevel",
  "blade.microbevel.angle": "angle of the microbevel",
  "blade.swedge.from": "start of the swedge",
  "blade.swedge.to": "end of the swedge",
  "blade.swedge.angle": "angle of the swedge",
  "blade.swedge.thickness": "thickness left by the swedge",
  "blade.choil.radius": "radius of the choil",
  "blade.easedSpine": "easing of the spine",
  "tang.length": "tang length",
  "tang.heights": "tang height",
  "tang.drop": "drop of the tang",
  "tang.shoulderRadius": "radius of the shoulders",
  "tang.buttThickness": "thickness at the butt",
  "tang.thickness": "thickness of the tang",
  "steel.density": "density of the steel",
};

/** Parts of the handle as people call them, by their keys. */
const PARTS: Readonly<Record<string, string>> = {
  block: "the handle",
  slabs: "the slabs",
  liners: "the liners",
  pins: "the pins",
  bolsters: "the bolsters",
  guard: "the guard",
  pommel: "the pommel",
};

/** What of a hole or a part a path leads to. */
const DETAILS: Readonly<Record<string, string>> = {
  diameter: "diameter",
  pin: "pin",
  mass: "mass",
  at: "place",
  from: "place",
  to: "place",
  radius: "radius",
  depth: "depth",
  length: "length",
  height: "height",
  width: "width",
  thickness: "thickness",
  edgeRadius: "edge radius",
  cornerRadius: "corner radius",
  centre: "middle",
  density: "density",
  moisture: "moisture",
};

/**
 * An input of the interval in words: `thickness at the spine (2nd station)`, `diameter of hole B`.
 *
 * @param input - Its path into the knife's description, as the JSON report gives it.
 */
export function inputWords(input: string, spec: KnifeSpec): string {
  const [, owner, hole, detail = ""] = /^(blade|tang)\.holes\[(\d+)\]\.(\w+)/u.exec(input) ?? [];
  if (owner !== undefined) {
    const before = owner === "blade" ? 0 : (spec.blade.holes?.length ?? 0);
    return `${DETAILS[detail] ?? detail} of hole ${letterName(before + Number(hole))}`;
  }
  const [, part, of = ""] = /^handle\.parts\[(\d+)\]\.(\w+)/u.exec(input) ?? [];
  if (part !== undefined) {
    return `${DETAILS[of] ?? of} of ${spec.handle?.parts?.[Number(part)]?.name ?? "a part"}`;
  }
  const [, fuller, what = ""] = /^blade\.fullers\[(\d+)\]\.(\w+)/u.exec(input) ?? [];
  if (fuller !== undefined) return `${DETAILS[what] ?? what} of the ${ordinal(Number(fuller) + 1)} fuller`;
  const ofHandle = handleWords(input, spec);
  if (ofHandle !== undefined) return ofHandle;
  const [path = "", others] = input.split(", ");
  const station = /\[(\d+)\]/u.exec(path)?.[1];
  const which = station === undefined ? "" : ` (${stationWords(path, Number(station))})`;
  const law = path.replace(/\[\d+\].*$/u, "").replace(/\.(?:mm|share|front|middle|butt)$/u, "");
  const words = WORDS[law];
  return words === undefined
    ? input
    : `${words}${endOf(path)}${which}${others === undefined ? "" : ` (${others})`}`;
}

const HANDLE_SIZE =
  /^handle\.(\w+)(?:\[(\d+)\])?\.(?:material\.)?(\w+)(?:\[(\d+)\]\.(?:is|at)\b[^,]*)?(?:, (.*))?$/u;

/** `width of the guard`, `height of the handle (1st station)`; undefined where it is no size of a part of the handle. */
function handleWords(input: string, spec: KnifeSpec): string | undefined {
  const [, member = "", index, size = "", station, others] = HANDLE_SIZE.exec(input) ?? [];
  const part = PARTS[member];
  if (part === undefined) return undefined;
  const isOneOfSeveral = index !== undefined && (spec.handle?.bolsters?.length ?? 0) > 1;
  const notes = [
    ...(isOneOfSeveral ? [ordinal(Number(index) + 1)] : []),
    ...(station === undefined ? [] : [stationWords(input, Number(station))]),
    ...(others === undefined ? [] : [others]),
  ];
  return `${DETAILS[size] ?? size} of ${part}${notes.length === 0 ? "" : ` (${notes.join(", ")})`}`;
}

/** Which station of a law, and whether its value moves or its place. */
const stationWords = (path: string, index: number): string =>
  `${/\.at\b/u.test(path) ? "place of the " : ""}${ordinal(index + 1)} station`;

/** Which of the tang's heights. */
function endOf(path: string): string {
  const places: Readonly<Record<string, string>> = {
    "tang.heights.front": " at the handle front",
    "tang.heights.middle": " half way",
    "tang.heights.butt": " at the butt",
  };
  return places[path] ?? "";
}
