// Installs the locked dependencies and builds the packages, and does nothing when both are up to date.
// Everything it says goes to stderr, so that `npm start -s -- weigh FILE --json` prints JSON alone.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

const root = join(dirname(fileURLToPath(import.meta.url)), "..");
const stampFile = join(root, "node_modules", ".cache", "scantling-setup");
const manifest = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));

// npm's own variables would steer pnpm; CI=true keeps it from asking questions where there is no terminal.
const environment = Object.fromEntries(Object.entries(process.env).filter(([name]) => !/^npm_/i.test(name)));
environment.CI = "true";

function run(command, args) {
  const result = spawnSync(command, args, {
    cwd: root,
    env: environment,
    stdio: ["ignore", "pipe", "inherit"],
  });
  if (result.stdout?.length) process.stderr.write(result.stdout);
  if (result.error || result.status !== 0) {
    process.stderr.write(`set-up failed at: ${command} ${args.join(" ")}\n`);
    process.exit(result.status || 1);
  }
}

const stamp = createHash("sha256")
  .update(readFileSync(join(root, "pnpm-lock.yaml")))
  .update(readFileSync(join(root, "pnpm-workspace.yaml")))
  .update(process.version)
  .digest("hex");
const upToDate = existsSync(stampFile) && readFileSync(stampFile, "utf8") === stamp;
if (!upToDate) {
  process.stderr.write("setting up: installing dependencies (once) …\n");
  run("npx", [
    "--yes",
    manifest.packageManager,
    "install",
    "--frozen-lockfile",
    "--reporter=append-only",
    "--loglevel=warn",
  ]);
  mkdirSync(dirname(stampFile), { recursive: true });
  writeFileSync(stampFile, stamp);
}
run(process.execPath, [join(root, "node_modules", "typescript", "bin", "tsc"), "-b", "tsconfig.build.json"]);
