import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { cubic, line, type Path, type Segment, type Vec2 } from "@scantling/geometry";

const PACKAGE_OF = {
  mutool: "mupdf-tools",
  pdfinfo: "poppler-utils",
  pdftocairo: "poppler-utils",
  pdftotext: "poppler-utils",
} as const;

/** What a PDF reader says of a file; says what to install where it is missing, and fails where it complains. */
export function readWith(program: keyof typeof PACKAGE_OF, ...args: readonly string[]): string {
  try {
    return execFileSync(program, args, {
      encoding: "utf8",
      maxBuffer: 1 << 28,
      stdio: ["ignore", "pipe", "pipe"],
    });
  } catch (cause) {
    throw new Error(`${program} ${args.join(" ")}: is the Debian package ${PACKAGE_OF[program]} installed?`, {
      cause,
    });
  }
}

/** A folder for the files of one test. */
export function scratchFolder(): { write(name: string, bytes: Uint8Array): string; remove(): void } {
  const folder = mkdtempSync(join(tmpdir(), "scantling-pdf-"));
  return {
    write: (name, bytes) => {
      const file = join(folder, name);
      writeFileSync(file, bytes);
      return file;
    },
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}

/** mm of a length in points, 1/72 in. */
export const pointsToMm = (points: number): number => (points * 25.4) / 72;

export interface DrawnPath {
  readonly kind: "stroke" | "fill";
  /** In mm on the page, y down. */
  readonly paths: readonly Path[];
}

/** Every path as MuPDF draws it, of every page or of one, from 1. */
export function pathsByMupdf(file: string, page?: number): DrawnPath[] {
  const trace = readWith("mutool", "trace", file, ...(page === undefined ? [] : [`${page}`]));
  return [...trace.matchAll(/<(stroke|fill)_path [^>]*transform="([^"]*)">\n([\s\S]*?)<\/\1_path>/g)].map(
    ([, kind, transform = "", body = ""]) => {
      const commands = [...body.matchAll(/<(moveto|lineto|curveto|closepath)([^>]*)\/>/g)].map(
        ([, name = "", attributes = ""]) => ({
          letter: { moveto: "M", lineto: "L", curveto: "C" }[name] ?? "Z",
          numbers: [...attributes.matchAll(/="([^"]*)"/g)].map((match) => Number(match[1])),
        }),
      );
      return {
        kind: kind === "fill" ? "fill" : "stroke",
        paths: pathsOf(commands, transform.split(" ").map(Number)),
      };
    },
  );
}

/** Every stroke of one page as poppler draws it, at the size of the file. */
export function strokesByPoppler(file: string, page = 1): DrawnPath[] {
  const args = ["-svg", "-f", `${page}`, "-l", `${page}`, "-noshrink", "-nocrop", "-nocenter", file, "-"];
  const svg = readWith("pdftocairo", ...args);
  const root = /<svg [^>]*width="([\d.]+)pt" height="([\d.]+)pt" viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg);
  if (root === null || root[1] !== root[3] || root[2] !== root[4]) throw new Error("not in points");
  return [
    ...svg.matchAll(/<path style="fill:none;[^>]* d="([^"]*)"(?: transform="matrix\(([^)]*)\)")?\/>/g),
  ].map(([, data = "", matrix = "1,0,0,1,0,0"]) => {
    const commands = [...data.matchAll(/([MLCZ])([^MLCZ]*)/g)].map(([, letter = "", numbers = ""]) => ({
      letter,
      numbers: numbers.trim().split(/\s+/).filter(Boolean).map(Number),
    }));
    return { kind: "stroke", paths: pathsOf(commands, matrix.split(",").map(Number)) };
  });
}

interface Command {
  readonly letter: string;
  readonly numbers: readonly number[];
}

function pathsOf(commands: readonly Command[], matrix: readonly number[]): Path[] {
  const [a = 1, b = 0, c = 0, d = 1, e = 0, f = 0] = matrix;
  const paths: { segments: Segment[]; closed: boolean }[] = [];
  let start: Vec2 = { x: 0, y: 0 };
  let pen = start;
  for (const { letter, numbers } of commands) {
    const points = Array.from({ length: numbers.length / 2 }, (_, index): Vec2 => {
      const [x = 0, y = 0] = numbers.slice(2 * index);
      return { x: pointsToMm(a * x + c * y + e), y: pointsToMm(b * x + d * y + f) };
    });
    const [first = start, second = start, third = start] = points;
    const path = paths.at(-1);
    if (letter === "M") {
      paths.push({ segments: [], closed: false });
      start = first;
      pen = first;
    } else if (letter === "L") {
      path?.segments.push(line(pen, first));
      pen = first;
    } else if (letter === "C") {
      path?.segments.push(cubic(pen, first, second, third));
      pen = third;
    } else if (path !== undefined) {
      path.closed = true;
      if (pen.x !== start.x || pen.y !== start.y) path.segments.push(line(pen, start));
      pen = start;
    }
  }
  return paths.filter(({ segments }) => segments.length > 0);
}
