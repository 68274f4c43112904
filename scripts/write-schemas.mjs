// Writes schemas/*.schema.json from the declarations that validate files. Run `npm run build` first.
import { mkdirSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { schemaText } from "../packages/cli/dist/file/json-schema.js";

const folder = join(dirname(fileURLToPath(import.meta.url)), "..", "schemas");
mkdirSync(folder, { recursive: true });
for (const kind of ["knife", "shop", "record"]) {
  const file = join(folder, `${kind}.schema.json`);
  writeFileSync(file, schemaText(kind));
  process.stderr.write(`wrote schemas/${kind}.schema.json\n`);
}
