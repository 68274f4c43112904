import type { CommonOptions } from "../options.js";
import type { Declaring } from "./declaring.js";
import { common, examples } from "./shared-options.js";

export function declareCheck({ program, io, answered }: Declaring): void {
  common(program.command("check"), "what was asked, one by one, and every warning with the number behind it")
    .addHelpText("after", examples("check", "check harvest.knife.yaml", "check - < harvest.knife.yaml"))
    .action(async (file: string, options: CommonOptions) => {
      const { check } = await import("../commands/check.js");
      answered(await check(io, file, options));
    });
}
