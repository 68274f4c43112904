import { existsSync } from "node:fs";
import { type Browser, chromium } from "playwright-core";

const EXECUTABLE = "/usr/bin/chromium";

/** Debian's Chromium without a network, a display or a sandbox; says what to install where it is missing. */
export async function openBrowser(): Promise<Browser> {
  if (!existsSync(EXECUTABLE)) {
    throw new Error(
      `no ${EXECUTABLE}: install the Debian package chromium (apt-get install chromium); this check is not skipped`,
    );
  }
  return chromium.launch({
    executablePath: EXECUTABLE,
    args: [
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
    ],
  });
}
