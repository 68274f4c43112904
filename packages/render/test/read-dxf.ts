import { arcBetween, type Path, type Segment, type Vec2 } from "@scantling/geometry";

/** An entity as the file has it: its type, its layer, its groups in order, and the vertices of a polyline. */
export interface ReadEntity {
  readonly type: string;
  readonly layer: string;
  readonly groups: readonly (readonly [number, string])[];
  readonly vertices: readonly ReadEntity[];
}

/** The groups of a DXF file, read by the format's own rule: a line of code, a line of value. */
export function readGroups(dxf: string): (readonly [number, string])[] {
  const lines = dxf.split("\n");
  if (lines.pop() !== "" || lines.length % 2 !== 0) throw new Error("lines of a DXF file come in pairs");
  return Array.from({ length: lines.length / 2 }, (_, i) => {
    const code = lines[2 * i] ?? "";
    if (!/^ *\d+$/.test(code)) throw new Error(`no group code: ${code}`);
    return [Number(code), lines[2 * i + 1] ?? ""] as const;
  });
}

/** What stands in the section of entities. */
export function readEntities(dxf: string): ReadEntity[] {
  const groups = readGroups(dxf);
  const start = groups.findIndex(([code, value]) => code === 2 && value === "ENTITIES");
  const found: (ReadEntity & { groups: (readonly [number, string])[]; vertices: ReadEntity[] })[] = [];
  let current = found[0];
  for (const [code, value] of groups.slice(start + 1)) {
    if (code === 0 && value === "ENDSEC") break;
    if (code === 0) {
      const entity = { type: value, layer: "", groups: [], vertices: [] };
      if (value === "VERTEX") found.at(-1)?.vertices.push(entity);
      else if (value !== "SEQEND") found.push(entity);
      current = entity;
    } else if (current !== undefined) {
      current.groups.push([code, value]);
      if (code === 8) Object.assign(current, { layer: value });
    }
  }
  return found;
}

/** The number under a code; not a number where it is not there. */
export const numberOf = ({ groups }: ReadEntity, code: number): number =>
  Number(groups.find(([each]) => each === code)?.[1] ?? Number.NaN);

/** The text under code 1. */
export const textOf = ({ groups }: ReadEntity): string => groups.find(([code]) => code === 1)?.[1] ?? "";

const pointOf = (entity: ReadEntity): Vec2 => ({ x: numberOf(entity, 10), y: numberOf(entity, 20) });

/** A polyline as a path: straight pieces, and arcs where there is a bulge of tan(sweep / 4). */
export function pathOf(entity: ReadEntity): Path {
  const closed = numberOf(entity, 70) === 1;
  const { vertices } = entity;
  const ends = closed ? [...vertices.slice(1), ...vertices.slice(0, 1)] : vertices.slice(1);
  const segments = ends.map((end, index): Segment => {
    const start = vertices[index] ?? end;
    const [from, to] = [pointOf(start), pointOf(end)];
    const bulge = numberOf(start, 42);
    return Number.isNaN(bulge) ? { kind: "line", from, to } : arcBetween(from, to, 4 * Math.atan(bulge));
  });
  return { segments, closed };
}

/** Codes of release 12, `\U+XXXX` and `^ ` as the characters that they stand for. */
export const decoded = (text: string): string =>
  text
    .replace(/%%([cdp])/g, (code, letter: string) => ({ c: "Ø", d: "°", p: "±" })[letter] ?? code)
    .replace(/\\U\+([0-9A-F]{4})/g, (_, digits: string) => String.fromCharCode(Number.parseInt(digits, 16)))
    .replaceAll("^ ", "^");
