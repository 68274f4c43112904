// Writes the pages of the commands and the man page from the program's declarations. Run `npm run build` first.
import { mkdirSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { nodeIo } from "../packages/cli/dist/io/node-io.js";
import { manualFiles, PAGES } from "../packages/cli/dist/manual/manual-files.js";

const root = join(dirname(fileURLToPath(import.meta.url)), "..");
const files = manualFiles(nodeIo());
for (const { path, content } of files) {
  mkdirSync(dirname(join(root, path)), { recursive: true });
  writeFileSync(join(root, path), content);
  process.stderr.write(`wrote ${path}\n`);
}
// A page of a command that is no more.
for (const name of readdirSync(join(root, PAGES))) {
  if (!files.some(({ path }) => path === `${PAGES}/${name}`)) rmSync(join(root, PAGES, name));
}
