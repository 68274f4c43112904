import { type FitDimension, type FitKind, MATERIAL_TO_FIND } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import { type Document, isMap, isScalar, isSeq, type YAMLMap } from "yaml";
import { type FilePath, parsePath } from "./path.js";
import { readWritten, type WrittenSize, writeSize } from "./written-size.js";
import {
  applyEdits,
  type Edit,
  endOfContent,
  eolOf,
  inBraces,
  insert,
  isQuoted,
  parseYaml,
  underLast,
} from "./yaml-edits.js";

/** A size to be written into a knife file, by its place in the description. mm, g, rad, g/mm³ or a share. */
export interface NewSize {
  readonly path: string;
  readonly kind: FitKind;
  readonly value: number;
}

/** A part that was not there, given by its mass. g, mm. */
export interface NewPart {
  readonly name: string;
  readonly mass: number;
  readonly at: { readonly x: number; readonly y: number };
}

/** A knife file with the place of its values. */
export class KnifeText {
  private readonly document: Document.Parsed;
  private readonly text: string;
  private readonly units: FileUnits;

  /** @param text - YAML or JSON that was read without a problem. */
  constructor(text: string, units: FileUnits) {
    this.text = text;
    this.units = units;
    this.document = parseYaml(text);
  }

  /** How a size is written; of one that the file leaves out as the file writes others. */
  writtenAt(path: string, kind: FitKind): WrittenSize | undefined {
    return readWritten(this.sourceAt(path), kind, this.units);
  }

  /**
   * The text with new sizes in place of those that stand there. Only they are changed: comments, blank lines, order, quotes,
   * units, tolerances and line ends stay as they are.
   *
   * @returns undefined where one stands in a way that cannot be changed; nothing is guessed.
   */
  withSizes(sizes: readonly NewSize[], part?: NewPart): string | undefined {
    const edits = [
      ...sizes.map((size) => this.editFor(size)),
      ...(part === undefined ? [] : [this.partEdit(part)]),
    ];
    const known = edits.filter((edit) => edit !== undefined);
    return known.length < edits.length ? undefined : applyEdits(this.text, known);
  }

  private editFor({ path, kind, value }: NewSize): Edit | undefined {
    if (/^handle\..*\.density$/u.test(path)) return this.materialEdit(path, value);
    const place = this.placeOf(path);
    const written = this.writtenAt(path, kind);
    if (written === undefined) return undefined;
    const node = this.document.getIn(place, true);
    const isHalf = place.at(-1) === "included";
    const text = writeSize(written, isHalf ? 2 * value : value);
    if (isScalar(node) && node.range)
      return { from: node.range[0], to: node.range[1], text: quoted(node.type, text) };
    const group = this.document.getIn(place.slice(0, -1), true);
    return isMap(group) && node === undefined ? this.keyEdit(group, String(place.at(-1)), text) : undefined;
  }

  /** One more key in a group. */
  private keyEdit(group: YAMLMap, key: string, value: string): Edit {
    const json = isQuoted(group);
    const line = json ? `"${key}": ${jsonValue(value)}` : `${key}: ${value}`;
    return group.flow === true ? inBraces(this.text, group, line) : underLast(this.text, group, line);
  }

  /** A material whose density is told has still to be found: the name of the one that was drawn would not be true. */
  private materialEdit(path: string, density: number): Edit | undefined {
    const place = parsePath(path).slice(0, -1);
    const node = this.document.getIn(place, true);
    const group = this.document.getIn(place.slice(0, -1), true);
    const written = readWritten(undefined, "density", this.units);
    const range = isScalar(node) || isMap(node) ? node.range : undefined;
    if (written === undefined || !range || !isMap(group)) return undefined;
    const value = writeSize(written, density);
    const text = isQuoted(group)
      ? `{ "name": "${MATERIAL_TO_FIND}", "density": ${value} }`
      : `{ name: ${MATERIAL_TO_FIND}, density: ${value} }`;
    return { from: range[0], to: range[1], text };
  }

  private partEdit({ name, mass, at }: NewPart): Edit | undefined {
    const { contents } = this.document;
    if (!isMap(contents)) return undefined;
    const json = isQuoted(contents);
    const text = (kind: FitKind, value: number): string => {
      const written = readWritten(undefined, kind, this.units);
      return written === undefined ? "" : writeSize(written, value);
    };
    const keys = [
      ["name", json ? `"${name}"` : name],
      ["mass", text("mass", mass)],
      ["at", `[${text("length", at.x)}, ${text("length", at.y)}]`],
    ];
    const item = `{ ${keys.map(([key = "", value = ""]) => `${json ? `"${key}"` : key}: ${value}`).join(", ")} }`;
    const list = contents.getIn(["handle", "parts"], true);
    if (isSeq(list))
      return list.flow === true ? inBraces(this.text, list, item) : underLast(this.text, list, `- ${item}`);
    const handle = contents.get("handle", true);
    if (isMap(handle)) return this.keyEdit(handle, "parts", `[${item}]`);
    if (handle !== undefined) return undefined;
    if (contents.flow === true)
      return this.keyEdit(contents, "handle", json ? `{ "parts": [${item}] }` : `{ parts: [${item}] }`);
    const eol = eolOf(this.text);
    const end = endOfContent(this.text, contents);
    const open = end > 0 && this.text[end - 1] !== "\n" ? eol : "";
    return insert(end, `${open}handle: { parts: [${item}] }${eol}`);
  }

  private sourceAt(path: string): string | undefined {
    const node = this.document.getIn(this.placeOf(path), true);
    return isScalar(node) ? (node.source ?? String(node.value)) : undefined;
  }

  /** Where in the file a value of the description stands. */
  private placeOf(path: string): FilePath {
    const place = parsePath(path.replace(/\.crown\.(?:mm|share)(?=$|\[)/u, ".crown"));
    const included = [...place, "included"];
    return /^blade\.edgeAngle$/u.test(path) && this.document.getIn(included, true) !== undefined
      ? included
      : place;
  }
}

const quoted = (type: string | undefined, text: string): string => {
  if (type === "QUOTE_DOUBLE") return JSON.stringify(text);
  return type === "QUOTE_SINGLE" ? `'${text}'` : text;
};

/** Numbers and groups stand as they are, all else in quotes. */
const jsonValue = (value: string): string =>
  /^(?:[[{]|-?[\d.]+$)/u.test(value) ? value : JSON.stringify(value);

/** Sizes of a dimension that are to be written. */
export const newSizes = ({ sizes, kind }: FitDimension, values: readonly number[]): NewSize[] =>
  sizes.map(({ path }, i) => ({ path, kind, value: values[i] ?? Number.NaN }));
