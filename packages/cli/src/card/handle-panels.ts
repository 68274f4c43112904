import type { BenchSetUp, EdgeSetUp, WedgeSet } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import type { CardBlock, CardCell, CardFigure, CardPanel } from "@scantling/render";
import { caliperText, fixed, inBoth, lengthText, otherUnits } from "../report/figures.js";
import { bareCaliper, bareLength, degrees, tableBlock, words } from "./card-blocks.js";

/** mm³ in a millilitre. */
const ML = 1000;

/** The blank to saw; mortise and guard of a hidden tang. */
export function handlePanels({ blank, mortise, guard }: BenchSetUp, units: FileUnits): CardPanel[] {
  return [
    ...(blank === undefined
      ? []
      : [
          {
            title: blank.kind === "slabs" ? "Saw the slabs" : "Saw the block",
            tool: "saw",
            blocks: [
              {
                kind: "figures" as const,
                figures: [
                  size("long", blank.length, units),
                  size("high", blank.height, units),
                  size(blank.kind === "slabs" ? "thick, each" : "across", blank.thickness, units),
                  ...(blank.bookMatched === undefined
                    ? []
                    : [size("block for a pair", blank.bookMatched, units)]),
                ],
              },
              words(blank.material),
            ],
          },
        ]),
    ...(mortise === undefined
      ? []
      : [
          {
            title: "Drill the mortise",
            tool: `drills, ${units}`,
            blocks: [
              tableBlock([
                ["deep", "drill", "holes", "slot high", "slot wide"],
                ...mortise.steps.map((step): CardCell[] => [
                  bareLength(step.depth, units),
                  step.drill?.name ?? "–",
                  step.holes === undefined ? "–" : `${step.holes}`,
                  bareLength(step.mortise.height, units),
                  bareLength(step.mortise.thickness, units),
                ]),
              ]),
              words(`Wall at the thinnest: ${inBoth(lengthText, mortise.wall, units)}.`),
            ],
          },
        ]),
    ...(guard === undefined
      ? []
      : [
          {
            title: "Slot the guard",
            tool: "drills, files",
            blocks: [
              {
                kind: "figures" as const,
                figures: [
                  { label: "high", figure: caliperText(guard.height, units) },
                  {
                    label: "wide",
                    figure: caliperText(guard.thickness, units),
                    beside: `+${caliperText(guard.over, units)} at the most`,
                  },
                  ...(guard.drill === undefined
                    ? []
                    : [{ label: "drill", figure: guard.drill.name, beside: `${guard.holes ?? 1} holes` }]),
                ],
              },
            ],
          },
        ]),
  ];
}

const size = (label: string, mm: number, units: FileUnits): CardFigure => ({
  label,
  figure: lengthText(mm, units),
  beside: `(${lengthText(mm, otherUnits(units))})`,
});

/** Pins to cut, and glue to mix. */
export function gluingPanel({ pins, holes, glue }: BenchSetUp, units: FileUnits): CardPanel[] {
  const drillOf = (path: string): string =>
    holes.find((hole) => hole.path === path)?.handle?.drill.name ?? "–";
  const rows = (pins?.pins ?? []).map((pin, index): CardCell[] => [
    `${index + 1}.`,
    bareCaliper(pin.diameter, units),
    drillOf(pin.path),
    bareLength(pin.flush, units),
    `${bareLength(pin.peened.least, units)} to ${bareLength(pin.peened.most, units)}`,
  ]);
  const blocks: CardBlock[] = [
    ...(rows.length === 0
      ? []
      : [tableBlock([["", "Ø", "drill handle", "cut flush", "cut to peen"], ...rows])]),
    ...(glue === undefined
      ? []
      : [
          {
            kind: "figures" as const,
            figures: [
              {
                label: "glue, mix in all",
                figure: `${fixed(glue.toMix / ML, 1)} ml`,
                beside: "by the adhesive's sheet",
              },
            ],
          },
        ]),
  ];
  if (blocks.length === 0) return [];
  return [{ title: pins === undefined ? "Glue" : `Pins, ${pins.material}, and glue`, tool: units, blocks }];
}

export function edgePanels({ edge }: BenchSetUp, units: FileUnits): CardPanel[] {
  return edge.map((setUp) => ({
    title: setUp.side === "both" ? "Sharpen" : `Sharpen the ${setUp.side} face`,
    tool: `stone, ${units}`,
    blocks: [
      {
        kind: "figures",
        figures: [
          { label: "per side", figure: degrees(setUp.angle), ...wedgeWords(setUp.wedges) },
          ...microbevel(setUp),
        ],
      },
      tableBlock([
        ["from heel", "bevel wide", "spine over stone"],
        ...setUp.stations.map((station): CardCell[] => [
          bareLength(station.x, units),
          bareCaliper(station.width, units),
          bareLength(station.lift.underside, units),
        ]),
      ]),
    ],
  }));
}

function microbevel({ microbevel: micro }: EdgeSetUp): CardFigure[] {
  if (micro === undefined) return [];
  return [{ label: "microbevel, per side", figure: degrees(micro.angle), ...wedgeWords(micro.wedges) }];
}

/** `wedges 20° + 11° − 5°`. */
function wedgeWords(set: WedgeSet | undefined): { beside?: string } {
  if (set === undefined) return {};
  const minus = set.subtract.map((angle) => ` − ${degrees(angle)}`).join("");
  const off =
    Math.abs(set.error) < 1e-4 ? "" : `, ${degrees(Math.abs(set.error))} ${set.error > 0 ? "over" : "under"}`;
  return { beside: `wedges ${set.add.map(degrees).join(" + ")}${minus}${off}` };
}
