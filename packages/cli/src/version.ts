import { createRequire } from "node:module";

/** The version of this package, as its own `package.json` says. */
export function version(): string {
  const manifest: unknown = createRequire(import.meta.url)("../package.json");
  const known = typeof manifest === "object" && manifest !== null && "version" in manifest;
  return known ? String(manifest.version) : "unknown";
}
