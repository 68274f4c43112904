// docs/limits.md and docs/red-flags.md, made of the tables that the program itself goes by.
import {
  KNIFE_TYPE_NAMES,
  KNIFE_TYPES,
  type KnifeType,
  LIMIT_TABLE,
  type LimitRow,
  USUAL_QUANTITIES,
  type UsualName,
} from "@scantling/geometry";
import { formatQuantity } from "@scantling/geometry/units";
import { RED_FLAGS } from "./flags.js";

const row = (...cells: readonly string[]): string => `| ${cells.join(" | ")} |`;
const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [row(...head), row(...head.map(() => "---")), ...rows.map((cells) => row(...cells))].join("\n");

const shown = ({ quantity, value }: Pick<LimitRow, "quantity" | "value">): string =>
  quantity === "count" || quantity === "area" || quantity === "volume"
    ? String(Number(value.toFixed(4)))
    : formatQuantity({ quantity, value }, "mm");

/** A table of limits with the keys that change them. */
export function limitsPage(): string {
  return `# Limits

Every number that decides a finding or refuses a bar, in one table. Each can be changed in \`shop.yaml\` by its key; a finding that is
decided by a limit of the shop's own says so. This page is made of the tables in
[packages/geometry/src/limits](../packages/geometry/src/limits) by a test; what each finding means is in [the model](model.md#12-findings).

\`\`\`yaml
limits:
  findings: { holeWall: 4 mm, bevelAngle: 6 deg, skin: 0.15 mm }
  forge: { cornerRadius: 2 mm }
  types: { camp: { spine: [5, 8] } }
\`\`\`

A value is written with its unit, or in the file's own; counts (diameters, ratios, HRC, kelvins, litres) are plain numbers.

${table(
  ["key in shop.yaml", "limit", "of what", "decides", "basis"],
  LIMIT_TABLE.map((limit) => [
    `\`${limit.key}\``,
    shown(limit),
    limit.about,
    limit.trips.join(", "),
    limit.basis,
  ]),
)}

## What types of knives usually measure

\`order.type\` in the knife file. For warnings, never for design: outside a range a note is told, and where one slip of point or unit
would explain it a warning. \`limits.types\` changes a range. Common practice, no source, but where another basis is named below.
Lengths in mm, angles per side, hardness in HRC, mass in g, balance ahead of the heel.

${table(["type", "judged as", ...USUAL_NAMES], KNIFE_TYPE_NAMES.map(typeCells))}

${bases()}`;
}

const USUAL_NAMES = Object.keys(USUAL_QUANTITIES) as readonly UsualName[];

function typeCells(name: (typeof KNIFE_TYPE_NAMES)[number]): string[] {
  const { use, usual }: KnifeType = KNIFE_TYPES[name];
  return [
    `\`${name}\``,
    use,
    ...USUAL_NAMES.map((key) => {
      const range = usual?.[key];
      if (range === undefined) return "";
      const show = (value: number): string =>
        key === "angle" ? formatQuantity({ quantity: "angle", value }, "mm") : String(value);
      return `${show(range.low)} to ${show(range.high)}`;
    }),
  ];
}

function bases(): string {
  return KNIFE_TYPE_NAMES.flatMap((name) => {
    const { usual }: KnifeType = KNIFE_TYPES[name];
    return USUAL_NAMES.flatMap((key) => {
      const basis = usual?.[key].basis ?? PLAIN;
      return basis === PLAIN ? [] : [`- \`${name}\`, ${key}: ${basis}.\n`];
    });
  }).join("");
}

const PLAIN = "common practice, no source";

/** Where each red flag of the trade is looked for. */
export function redFlagsPage(): string {
  return `# Red flags

What goes wrong most often in the trade, and where the program looks for it. A finding has a severity (stop: cannot work or is
almost certainly scrap; warning: likely trouble; note: low margin or missing data), a number, its limit, where that comes from, and
what to do. Nothing here blocks a smith: a risk that is taken stands in the knife file, \`accept: { CODE: reason }\`, is told all the
same and no longer answers with exit code 4, unless what it tells of cannot be made. Limits are in [one table](limits.md). This page
is made by a test, and each flag has cases just over and just under its limit and one in which the shop's own limit decides
([red-flags.test.ts](../tests/unit/red-flags.test.ts)).

${table(
  ["", "red flag", "held against each other", "findings", "limits", "told by"],
  RED_FLAGS.map(({ name, title, tested, codes, told, not }) => [
    name,
    title,
    [tested, ...(not === undefined ? [] : [not])].filter((part) => part !== "").join(". "),
    codes.map((code) => `\`${code}\``).join(", "),
    limitsOf(codes),
    told,
  ]),
)}
`;
}

function limitsOf(codes: readonly string[]): string {
  const rows = LIMIT_TABLE.filter(({ trips }) => trips.some((code) => codes.includes(code)));
  return rows.map((limit) => `${limit.key.split(".").slice(-1)[0]} ${shown(limit)}`).join(", ");
}
