import type { ReorderOptions } from "../options.js";
import type { Declaring } from "./declaring.js";
import { common, examples, planOption } from "./shared-options.js";

const FILE = ["<FILE>", "the knife file, or its record (NAME.record.yaml)"] as const;

export function declareReorder({ program, io, answered }: Declaring): void {
  common(
    program.command("reorder"),
    "make an order again: what changed since it was planned, which input did it, and what came out",
    FILE,
  )
    .addOption(planOption())
    .addHelpText(
      "after",
      examples("reorder", "reorder harvest.knife.yaml", "reorder harvest.knife.yaml --json"),
    )
    .action(async (file: string, options: ReorderOptions) => {
      const { reorder } = await import("../commands/reorder.js");
      answered(await reorder(io, file, options));
    });
}
