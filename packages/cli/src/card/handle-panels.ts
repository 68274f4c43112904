import {
  BENCH_DEFAULTS,
  type BenchSetUp,
  type EdgeSetUp,
  type GuardSlot,
  type HandleBlank,
  type MortiseSetUp,
  type WedgeSet,
} from "@scantling/geometry";
import { type FileUnits, formatCaliper } from "@scantling/geometry/units";
import type { CardCell, CardFigure, CardPanel } from "@scantling/render";
import { fixed, lengthText } from "../report/figures.js";
import { pairText, roomText, unitless } from "../report/setup-sizes.js";
import {
  type Beside,
  bareCaliper,
  bareLength,
  degrees,
  endsAndMiddle,
  figures,
  otherBehind,
  panel,
  table,
  withOther,
  words,
} from "./card-blocks.js";

/** What of a pin to be ground flush stands out on each side, mm. */
const FLUSH_OUT = BENCH_DEFAULTS.flushPin.value;

/** mm³ in a millilitre. */
const ML = 1000;

/** Blank to saw, guard and mortise of a hidden tang, pins and glue. */
export function handlePanels(bench: BenchSetUp, units: FileUnits, other: Beside): CardPanel[] {
  const { blank, mortise, guard } = bench;
  return [
    ...(blank === undefined ? [] : blankPanel(blank, units, other)),
    ...(guard === undefined ? [] : guardPanel(guard, units, other)),
    ...(mortise === undefined ? [] : mortisePanel(mortise, units, other)),
    ...gluingPanel(bench, units, other),
  ];
}

function blankPanel(blank: HandleBlank, units: FileUnits, other: Beside): CardPanel[] {
  const { kind, material, length, height, thickness, bookMatched } = blank;
  const slabs = kind === "slabs";
  const size = (of: FileUnits): string => sizeText([length, height, thickness], of);
  return panel(slabs ? "Saw the slabs" : "Saw the block", `${material}`, [
    figures(
      {
        label: slabs ? "2 slabs: long, high, thick" : "long, high, across",
        figure: size(units),
        ...otherBehind(size, other),
      },
      ...(bookMatched === undefined
        ? []
        : [
            {
              label: "or one block for both, thick",
              figure: pairText(thickness, bookMatched, units),
              ...otherBehind((of) => pairText(thickness, bookMatched, of), other),
            },
          ]),
    ),
  ]);
}

/** `134 × 36 × 9 mm`: no less than it is, for what is sawn too small is lost. */
const sizeText = (sizes: readonly number[], units: FileUnits): string => {
  const up = sizes.map((mm) => roomText(mm, units));
  return units === "mm" ? `${up.map(unitless).join(" × ")} mm` : up.join(" × ");
};

function mortisePanel({ steps, wall }: MortiseSetUp, units: FileUnits, other: Beside): CardPanel[] {
  const rows = steps.map((step): CardCell[] => [
    step.depth > 0 ? bareLength(step.depth, units) : "at the mouth",
    step.drill?.name ?? "–",
    step.holes === undefined ? "–" : `${step.holes}`,
    // Drills are told to the tenth: a slot that is rounded more coarsely would look narrower than its drill.
    bareCaliper(step.mortise.height, units),
    bareCaliper(step.mortise.thickness, units),
  ]);
  return panel("Drill the mortise", `drills, ${units}`, [
    ...table(["deep", "drill", "holes", "slot high", "slot wide"], rows),
    words(`Wall left at the thinnest: ${withOther(lengthText, wall, units, other)}.`),
  ]);
}

function guardPanel(
  { outer, height, thickness, over, relief, drill, holes = 1 }: GuardSlot,
  units: FileUnits,
  other: Beside,
): CardPanel[] {
  const size = guardText([outer.length, outer.height, outer.width], units);
  return panel("Slot the guard", "drill, files", [
    figures(
      { label: "guard long, high, across", figure: size },
      { label: "slot high", figure: formatCaliper(height, units) },
      {
        label: "slot wide",
        figure: formatCaliper(thickness, units),
        beside: `+${formatCaliper(over, units)} at the most`,
      },
      ...(drill === undefined
        ? []
        : [
            {
              label: holes === 1 ? "1 hole, drill" : `${holes} holes, drill`,
              figure: drill.name,
              beside: "file out the rest",
            },
          ]),
    ),
    ...(relief > 0 ? [words(reliefWords(relief, units, other))] : []),
  ]);
}

/** `7 × 66 × 18 mm`: as it is to be, and nothing rounded up. */
const guardText = (sizes: readonly number[], units: FileUnits): string => {
  const told = sizes.map((mm) => lengthText(mm, units));
  return units === "mm" ? `${told.map(unitless).join(" × ")} mm` : told.join(" × ");
};

/** A guard with square edges at the front of its slot would sit on the fillets of the shoulder instead of on its face. */
const reliefWords = (relief: number, units: FileUnits, other: Beside): string =>
  `Round corners at the shoulder, radius ${withOther(formatCaliper, relief, units, other)}: ease the front edges of the slot by as much, until the guard sits on the shoulder.`;

/** Pins to saw, and glue to mix. */
function gluingPanel(
  { pins, holes, glue, taper, findings }: BenchSetUp,
  units: FileUnits,
  other: Beside,
): CardPanel[] {
  const drillOf = (path: string): string => {
    const choice = holes.find((hole) => hole.path === path)?.handle;
    if (choice === undefined) return "–";
    const { drill, clearance } = choice;
    const loose = findings.some((finding) => finding.code === "pin-loose" && finding.path === path);
    return loose ? `${drill.name}, ${formatCaliper(clearance, units)} large` : drill.name;
  };
  const rows = (pins?.pins ?? []).map((pin): CardCell[] => [
    bareCaliper(pin.diameter, units),
    drillOf(pin.path),
    bareLength(pin.sawn, units),
    `${bareLength(pin.peened.least, units)} to ${bareLength(pin.peened.most, units)}`,
  ]);
  const shim = taper?.drillingNeedsShim === true && holes.length > 0;
  return panel(
    pins === undefined ? "Glue" : `Pins, ${pins.material}, and glue`,
    pins === undefined ? "" : units,
    [
      ...table(["pin", "drill handle", "saw, to grind flush", "saw, to peen"], rows),
      ...(rows.length === 0
        ? []
        : [
            words(
              `Lengths to saw: ${withOther(lengthText, FLUSH_OUT, units, other)} stand out on each side. Glue in, then grind flush.`,
            ),
          ]),
      ...(shim ? [words("Drill slabs with the tang shimmed level.")] : []),
      ...(glue === undefined
        ? []
        : [
            figures({
              label: "glue to mix",
              figure: `${fixed(glue.toMix / ML, 1)} ml`,
              beside: "in all, parts by its sheet",
            }),
          ]),
    ],
  );
}

/** Angles at the stone. */
export const edgePanels = ({ edge }: BenchSetUp, units: FileUnits): CardPanel[] =>
  edge.flatMap((setUp) =>
    panel(setUp.side === "both" ? "Sharpen" : `Sharpen the ${setUp.side} face`, `stone, ${units}`, [
      figures(
        { label: "per side", figure: degrees(setUp.angle), ...wedgeWords(setUp.wedges) },
        ...microbevel(setUp),
      ),
      ...table(
        ["from heel", "edge bevel wide", "spine over stone"],
        endsAndMiddle(setUp.stations).map((station): CardCell[] => [
          bareLength(station.x, units),
          bareCaliper(station.width, units),
          bareLength(station.lift.underside, units),
        ]),
      ),
    ]),
  );

function microbevel({ microbevel: micro }: EdgeSetUp): CardFigure[] {
  if (micro === undefined) return [];
  return [{ label: "microbevel, per side", figure: degrees(micro.angle), ...wedgeWords(micro.wedges) }];
}

/** Less is not told, rad. */
const NO_ERROR = 1e-4;

/** `wedges 20° + 11° − 5°`. */
function wedgeWords(set: WedgeSet | undefined): { beside?: string } {
  if (set === undefined) return {};
  const minus = set.subtract.map((angle) => ` − ${degrees(angle)}`).join("");
  const off =
    Math.abs(set.error) < NO_ERROR
      ? ""
      : `, ${degrees(Math.abs(set.error))} ${set.error > 0 ? "over" : "under"}`;
  return { beside: `wedges ${set.add.map(degrees).join(" + ")}${minus}${off}` };
}
