import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type KnifeSpec, makeKnife, planStock, SIZE_STATES, weighKnife } from "@scantling/geometry";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { createViteServer } from "vitest/node";
import { ROOT, readText } from "../unit/repository.js";
import { openBrowser } from "./browser.js";

// The built library in a browser, where there are no files, no process and no Node: the same knife weighs the same.
const GEOMETRY = join(ROOT, "packages", "geometry");

/** Every kind of thing that the library computes with: curves, bevels of all forms, holes, a drawing, a handle. */
const KNIVES: Readonly<Record<string, KnifeSpec>> = {
  "a hollow clip point with a swedge": {
    steel: { name: "52100" },
    blade: {
      outline: { family: "clip-point", edgeLength: 140, heelHeight: 36 },
      ricasso: 12,
      thickness: [
        { at: { kind: "heel" }, is: 4.5 },
        { at: { kind: "fraction", share: 0.6 }, is: 3.8 },
        { at: { kind: "tip" }, is: 2 },
      ],
      between: "smooth",
      plunge: { at: 4, length: 10 },
      bevel: { form: "hollow", height: 22, edgeThickness: 0.5, wheelRadius: 200 },
      edgeAngle: 0.31,
      swedge: { from: { kind: "distance", mm: 90 }, to: { kind: "tip" }, angle: 0.5, thickness: 1.5 },
    },
    tang: {
      form: "full",
      length: 118,
      buttThickness: 3,
      holes: [{ kind: "pin", at: { x: -50, y: 24 }, diameter: 4 }],
    },
    handle: {
      slabs: { material: { name: "cocobolo" }, thickness: 8, edgeRadius: 4 },
      pins: { material: { name: "brass" } },
    },
  },
  "a single bevel from a drawing": {
    steel: { name: "O1" },
    blade: {
      outline: {
        drawing: `<svg xmlns="http://www.w3.org/2000/svg" width="300mm" height="60mm" viewBox="0 0 300 60">
          <path id="a" d="M120 45 H240 Q270 45 280 25"/><path id="b" d="M280 25 L120 15"/>
          <path id="c" d="M120 15 H10 V40 H120"/></svg>`,
        runs: { edge: "a", spine: "b", tangTop: "c" },
      },
      thickness: [{ at: { kind: "heel" }, is: 3 }],
      bevel: { form: "convex", height: 18, edgeThickness: 0.4, apex: -1, left: { form: "flat" } },
      edgeAngle: { right: 0.26, left: "flat" },
    },
    tang: { form: "full" },
  },
};

let place: string;
let server: Awaited<ReturnType<typeof createViteServer>>;
let browser: Browser;
let page: Page;
const problems: string[] = [];

beforeAll(async () => {
  place = mkdtempSync(join(tmpdir(), "scantling-browser-"));
  const { dependencies } = JSON.parse(readText("packages/geometry/package.json")) as {
    dependencies: Record<string, string>;
  };
  server = await createViteServer({
    configFile: false,
    root: GEOMETRY,
    cacheDir: place,
    logLevel: "error",
    appType: "custom",
    server: { host: "127.0.0.1", port: 0, strictPort: false, hmr: false, watch: null },
    optimizeDeps: { include: Object.keys(dependencies), noDiscovery: true },
  });
  await server.listen();
  const address = server.httpServer?.address();
  if (address === null || typeof address !== "object")
    throw new Error("the test's own server listens nowhere");
  const origin = `http://127.0.0.1:${address.port}`;
  browser = await openBrowser();
  page = await browser.newPage();
  page.on("pageerror", (error) => problems.push(error.message));
  const script = `import * as scantling from "/dist/index.js"; globalThis.scantling = scantling;`;
  await page.route(`${origin}/`, (route) =>
    route.fulfill({ contentType: "text/html", body: `<script type="module">${script}</script>` }),
  );
  await page.goto(`${origin}/`);
  await page
    .waitForFunction(() => "scantling" in globalThis, undefined, { timeout: 30_000 })
    .catch(() => undefined);
  expect(problems).toEqual([]);
});
afterAll(async () => {
  await browser?.close();
  await server?.close();
  rmSync(place, { recursive: true, force: true });
});

interface Result {
  readonly node: string;
  readonly numbers: readonly number[];
  readonly plans: number;
}

type Library = typeof import("@scantling/geometry");

/** What is compared: steel, balance, and the volume of every size state. */
function numbersOf({ makeKnife: make, weighKnife: weigh, ...scantling }: Library, spec: KnifeSpec): number[] {
  const knife = make(spec);
  const { steel, knife: whole } = weigh(knife);
  return [
    steel.volume,
    steel.mass,
    steel.surface,
    ...Object.values(steel.centre),
    ...Object.values(steel.inertia),
    whole.mass,
    whole.balanceFromHeel,
    ...scantling.SIZE_STATES.map((state) => scantling.measureBody(knife.body(state)).value[0] ?? Number.NaN),
  ];
}

describe("the built library in a browser", () => {
  test.each(Object.entries(KNIVES))("weighs %s as Node does", async (_, spec) => {
    const run = { spec, compute: numbersOf.toString() };
    const result = await page.evaluate(({ spec: given, compute }): Result => {
      const { scantling } = globalThis as unknown as { scantling: Library };
      const numbers = new Function(`return ${compute}`)()(scantling, given);
      const rack = [{ name: "6 x 40", width: 40, thickness: 6 }];
      const knife = scantling.makeKnife(given);
      const { plans } = scantling.planStock(
        scantling.ledgerBodies(knife),
        { ...scantling.DEFAULT_SHOP, rack },
        knife.forging,
      );
      return { node: typeof (globalThis as { process?: unknown }).process, numbers, plans: plans.length };
    }, run);
    expect(problems).toEqual([]);
    expect(result.node).toBe("undefined");
    const scantling = await import("@scantling/geometry");
    const expected = numbersOf(scantling, spec);
    expect(result.numbers).toHaveLength(3 + 3 + 6 + 2 + SIZE_STATES.length);
    for (const [i, value] of result.numbers.entries()) {
      // Both are the same engine here; sines and roots may differ in the last digits elsewhere.
      expect(Math.abs(value - (expected[i] ?? Number.NaN))).toBeLessThan(1e-9 * Math.max(1, Math.abs(value)));
    }
    const { ledgerBodies, DEFAULT_SHOP } = scantling;
    const knife = makeKnife(spec);
    const rack = [{ name: "6 x 40", width: 40, thickness: 6 }];
    const here = planStock(ledgerBodies(knife), { ...DEFAULT_SHOP, rack }, knife.forging).plans.length;
    expect(result.plans).toBe(here);
    expect(weighKnife(knife).knife.mass).toBeGreaterThan(50);
  });
});
