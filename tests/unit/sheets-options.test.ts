import { describe, expect, it } from "vitest";
import { nodeIo } from "../../packages/cli/src/io/node-io.js";
import { makeProgram } from "../../packages/cli/src/program.js";
import { OPTION_USES } from "../../packages/cli/src/sheets/option-uses.js";
import { DRAWING_FORMATS } from "../../packages/cli/src/sheets/write-drawings.js";
import { readText } from "./repository.js";

/** Options that mean something to every drawing. */
const ALWAYS = ["sheet", "format", "json", "out", "units", "shop", "force"];

describe("the options of pattern", () => {
  it("each count always, or stand in the table of where they count", () => {
    const pattern = makeProgram(nodeIo(), () => undefined).commands.find((each) => each.name() === "pattern");
    const names = (pattern?.options ?? []).map((option) => option.attributeName());
    expect(names.length).toBeGreaterThan(10);
    expect([...names].sort()).toEqual([...ALWAYS, ...OPTION_USES.map(({ option }) => option)].sort());
  });

  it("stand in docs/sheets.md as the notes of the command tell them", () => {
    const rows = OPTION_USES.map(({ option, sheets, formats = DRAWING_FORMATS, joined }) =>
      [
        "",
        `\`--${option}\``,
        sheets?.map((sheet) => `\`${sheet}\``).join(", ") ?? "all sheets",
        formats.map((format) => format.toUpperCase()).join(", "),
        joined ? "pages are joined" : "always",
        "",
      ]
        .join(" | ")
        .trim(),
    );
    const heads = "| option | counts for | in | where |\n|---|---|---|---|\n";
    expect(readText("docs/sheets.md")).toContain(`${heads}${rows.join("\n")}\n\n`);
  });
});
