import { readFileSync } from "node:fs";
import { FileError, type Problem, readKnifeFile, readShopFile } from "../../src/file/index.js";

/** A file of the demo, by its path from the root of the project. */
export function projectFile(path: string): string {
  return readFileSync(new URL(`../../../../${path}`, import.meta.url), "utf8");
}

export const HARVEST = projectFile("examples/market-garden/harvest.knife.yaml");

/** The least that a knife file needs; tests change single lines of it. */
export const SMALL = `scantling: 1
units: mm
steel: "1084"
blade:
  outline: { family: vegetable, edgeLength: 225, heelHeight: 92 }
  thickness:
    - { at: heel, is: 4.6 }
  bevel: { form: flat, height: 48, edgeThickness: 0.5 }
  edgeAngle: 16 deg
tang:
  form: full
  length: 128
`;

/** {@link SMALL} with its lines changed, by number from 1. */
export function smallWith(changes: Readonly<Record<number, string>>): string {
  return SMALL.split("\n")
    .map((line, index) => changes[index + 1] ?? line)
    .join("\n");
}

function problemsOfRead(read: () => unknown): readonly Problem[] {
  try {
    read();
  } catch (error) {
    if (error instanceof FileError) return error.problems;
    throw error;
  }
  return [];
}

export const knifeProblems = (text: string): readonly Problem[] =>
  problemsOfRead(() => readKnifeFile(text, "knife.yaml"));

export const shopProblems = (text: string): readonly Problem[] =>
  problemsOfRead(() => readShopFile(text, "shop.yaml"));

/** Problems as `line:column code message`, for comparing at a glance. */
export const inShort = (problems: readonly Problem[]): string[] =>
  problems.map(({ line, column, code, message }) => `${line}:${column} ${code} | ${message}`);
