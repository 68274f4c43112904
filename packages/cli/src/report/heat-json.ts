import {
  type HeatRecipe,
  type HeatStep,
  isSameMaterial,
  TEMPER_SCATTER,
  TEMPER_TABLES,
} from "@scantling/geometry";
import { describeIssue } from "@scantling/geometry/units";

/** The heat treatment for programs: what each source says, side by side, and the tempering tables. */
export const heatJson = (recipes: readonly HeatRecipe[]): unknown =>
  recipes.map(({ steel, steps, notes = [] }) => ({
    steel,
    steps: steps.map(stepJson),
    notes: notes.map(({ text, source, mark }) => ({ text, source, mark })),
    temperScatterHrc: TEMPER_SCATTER,
    tempering: TEMPER_TABLES.filter((row) => isSameMaterial(row.steel, steel)).map((row) => ({
      source: row.source,
      mark: row.mark,
      points: row.points.map(({ temperature, low, high }) => ({
        temperatureC: temperature,
        lowHrc: low,
        highHrc: high,
      })),
    })),
  }));

/** Temperatures in it are °C, as all of these. */
const coolingText = (cooling: HeatStep["cooling"]): string | null =>
  cooling === undefined ? null : typeof cooling === "string" ? cooling : describeIssue(cooling, "mm");

const stepJson = ({ step, low, high, soak, cooling, times = 1, source, mark }: HeatStep) => ({
  step,
  lowC: low,
  highC: high,
  soakMin: soak === undefined ? null : [soak.low, soak.high],
  cooling: coolingText(cooling),
  times,
  source,
  mark,
});
