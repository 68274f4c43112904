import { STAGE_WORDS, TASK_WORDS } from "@scantling/geometry";
import { type FileUnits, formatCaliper, formatNumber, formatQuantity } from "@scantling/geometry/units";
import type { MeasuredHardness, MeasuredSection, MeasuredSize, RecordEntry } from "../file/record-file.js";
import { fineMassText, lengthText } from "./figures.js";

/** What one entry says, in a sentence without its number and day. */
export function entryWords(entry: RecordEntry, units: FileUnits): string {
  const { stage, drawn, task, hours, hardness, batch, note, correctsRevision, confirmed } = entry;
  const parts = [
    stage === undefined ? "" : `${STAGE_WORDS[stage]}: ${stageWords(entry, units)}`,
    drawn === undefined
      ? ""
      : `drawn${drawn.with === undefined ? "" : ` with ${drawn.with}`} from ${section(drawn.from, units)} to ${section(drawn.to, units)}, height by thickness`,
    task === undefined || hours === undefined ? "" : `${hoursText(hours)} of ${TASK_WORDS[task]}`,
    hardness === undefined ? "" : hardnessWords(hardness),
    batch === undefined ? "" : `steel of batch ${batch}`,
    confirmed === true ? "doubted, and stored all the same" : "",
    note === undefined ? "" : `"${note}"`,
    correctsRevision === undefined ? "" : `in place of revision ${correctsRevision}`,
  ];
  return parts.filter((part) => part !== "").join("; ");
}

function stageWords({ mass, tare, heats, weldingHeats, sizes = [] }: RecordEntry, units: FileUnits): string {
  const show = (grams: number): string => fineMassText(grams, units);
  const weighed =
    mass === undefined
      ? ""
      : tare === undefined || tare === 0
        ? show(mass)
        : `${show(mass)} less ${show(tare)} of handling bar: ${show(mass - tare)}`;
  return [
    weighed,
    weldingHeats === undefined ? "" : `${weldingHeats} welding heat${weldingHeats === 1 ? "" : "s"}`,
    heats === undefined ? "" : `${heats} heat${heats === 1 ? "" : "s"}`,
    ...sizes.map((size) => sizeWords(size, units)),
  ]
    .filter((part) => part !== "")
    .join(", ");
}

function sizeWords({ at, thickness, height }: MeasuredSize, units: FileUnits): string {
  const place =
    at.kind === "distance"
      ? lengthText(at.mm, units)
      : at.kind === "fraction"
        ? formatQuantity({ quantity: "share", value: at.share }, units)
        : at.kind;
  const sizes = [
    thickness === undefined ? "" : `${formatCaliper(thickness, units)} thick`,
    height === undefined ? "" : `${lengthText(height, units)} high`,
  ];
  return `${sizes.filter((size) => size !== "").join(" and ")} at ${place}`;
}

const section = ({ height, thickness }: MeasuredSection, units: FileUnits): string =>
  `${lengthText(height, units)} x ${lengthText(thickness, units)}`;

/** `3.5 h` */
export const hoursText = (hours: number): string => `${formatNumber(hours, 0.01)} h`;

function hardnessWords({ HRC: tester, filesCut, filesSkate, after }: MeasuredHardness): string {
  const files = [
    ...(filesSkate === undefined ? [] : [`the ${filesSkate} file skates`]),
    ...(filesCut === undefined ? [] : [`the ${filesCut} file cuts`]),
  ];
  const said = [...(tester === undefined ? [] : [`${formatNumber(tester, 0.1)} HRC`]), ...files].join(", ");
  return `hardness ${said}${after === undefined ? "" : ` after the ${after}`}`;
}
