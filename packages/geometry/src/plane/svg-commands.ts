import svgpath from "svgpath";
import { GeometryError } from "../errors/errors.js";
import type { Vec2 } from "./vec2.js";

/** A command of SVG path data in absolute form, one of M L H V C Q A Z, with its numbers. */
export type PathCommand = readonly [string, ...number[]];

/**
 * The commands of SVG path data in absolute form, the short forms S and T written out.
 *
 * @param start - where the pen stands if the data does not begin with M.
 * @throws {GeometryError} `path-data-unreadable` where it is not path data up to its last character, or a number is not
 *   finite; `path-data-no-start` without M and start.
 *
 * @example
 * pathCommands("m1 2h3"); // [["M", 1, 2], ["H", 4]]
 */
export function pathCommands(data: string, start?: Vec2): PathCommand[] {
  const begins = /^\s*[Mm]/.test(data);
  if (!begins && start === undefined) {
    throw new GeometryError(
      "path-data-no-start",
      "the path data does not begin with M, so nothing says where it starts",
    );
  }
  const text = begins ? data : `M${start?.x ?? 0} ${start?.y ?? 0} ${data}`;
  const parsed = svgpath(text);
  // The parser never throws: it keeps what it understood and leaves a word about the rest in `err`.
  const fault = "err" in parsed ? String(parsed.err) : "";
  if (fault !== "") throw unreadable(data, fault.replace(/^SvgPath:\s*/, ""));
  const commands: PathCommand[] = [];
  parsed
    .abs()
    .unshort()
    .iterate((segment) => {
      const [name, ...numbers] = segment as unknown as [string, ...number[]];
      if (!"MLHVCQAZ".includes(name.toUpperCase())) throw unreadable(data, `no such command: ${name}`);
      if (!numbers.every(Number.isFinite)) throw unreadable(data, `${name} has a number that is not finite`);
      commands.push([name.toUpperCase(), ...numbers]);
    });
  return commands;
}

const unreadable = (data: string, why: string): GeometryError =>
  new GeometryError(
    "path-data-unreadable",
    `not SVG path data: ${why}, in "${data.length > 60 ? `${data.slice(0, 57)}…` : data}"`,
  );
