import { expect, test } from "vitest";
import { pressHeatFindings } from "../../../src/stock/forge/press-heat.js";
import { describeIssue } from "../../../src/units/describe-issue.js";

// 750 and 1000 °C: common practice, no source.
test.each([
  ["nothing given", {}, []],
  ["usual heats", { temperature: 950, weldingTemperature: 1150 }, []],
  ["just hot enough", { temperature: 750, weldingTemperature: 1000 }, []],
  ["950 °F", { temperature: 510 }, ["forging-heat-low press.temperature warn"]],
  ["a weld at forging heat", { weldingTemperature: 800 }, ["welding-heat-low press.weldingTemperature warn"]],
  [
    "both",
    { temperature: 749, weldingTemperature: 999 },
    ["forging-heat-low press.temperature warn", "welding-heat-low press.weldingTemperature warn"],
  ],
])("%s", (_, press, expected) => {
  const found = pressHeatFindings(press);
  expect(found.map(({ code, path, severity }) => `${code} ${path} ${severity}`)).toEqual(expected);
  for (const { basis } of found) expect(basis).toMatch(/^common practice, no source/u);
});

test("is told in the reader's degrees", () => {
  const [finding] = pressHeatFindings({ temperature: 510 });
  if (finding === undefined) throw new Error("nothing found");
  expect(describeIssue(finding, "in")).toMatch(/^950 °F is no forging heat: below 1382 °F steel/u);
});
