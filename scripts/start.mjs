// `npm start` runs the main job on the demo; `npm start -s -- COMMAND …` runs any other command.
import { spawnSync } from "node:child_process";
import { dirname, join, relative } from "node:path";
import { fileURLToPath } from "node:url";

const root = join(dirname(fileURLToPath(import.meta.url)), "..");
const bin = join(root, "packages", "cli", "dist", "bin.js");
const given = process.argv.slice(2);
// npm changes to the project's folder; INIT_CWD is where the person stands, and files are meant from there.
const cwd = process.env.INIT_CWD ?? process.cwd();
const args =
  given.length > 0
    ? given
    : [
        "plan",
        relative(cwd, join(root, "examples", "market-garden", "harvest.knife.yaml")),
        "--out",
        relative(cwd, join(root, "out")) || ".",
        "--force",
      ];
const result = spawnSync(process.execPath, [bin, ...args], { cwd, stdio: "inherit" });
process.exitCode = result.status ?? 1;
