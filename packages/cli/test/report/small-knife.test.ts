import { beforeAll, describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { answer, flat, wideLines } from "../support/answer.js";

// A hunter of five ounces in a shop that thinks in inches: what is small beside a camp knife is all there is of it.
const KNIFE = `scantling: 1
order:
  code: HU-1
  asks:
    mass: { below: 6 oz }
    thickness: { between: [0.120, 0.150] }
    balance: { between: [-2, 0.3] }
units: in
steel: "1095"
blade:
  outline: { family: drop-point, edgeLength: 3 7/8, heelHeight: 1 1/8 }
  ricasso: 1/4
  thickness: [{ at: heel, is: 0.135 ± 5 thou }, { at: tip, is: 0.050 }]
  bevel: { form: flat, height: full, edgeThickness: 0.015 }
  edgeAngle: 18 deg
tang: { form: hidden, length: 3 1/2 }
handle:
  guard: { material: brass, at: -1/4, length: 1/4, height: 1 1/4, width: 1/2 }
  block: { material: black walnut, section: oval, length: 4, height: 1 1/8, width: 7/8 }
`;
const SHOP = `scantling: 1
units: in
rack: [{ size: 1/4 x 1 1/4, steel: "1095", length: 24 }]
press: { stopBlocks: [1/8, 3/16, 1/4], shims: [0.005, 0.010, 0.020, 0.040], opening: 4 }
`;
const FILES = { "h.knife.yaml": KNIFE, "shop.yaml": SHOP };
const COMMANDS = [
  ["weigh"],
  ["check"],
  ["stock"],
  ["setup"],
  ["weigh", "--state", "forged"],
  ["gate", "--stage", "cut", "--mass", "5 oz"],
  ["gate", "--stage", "forged", "--mass", "3.5 oz"],
  ["gate", "--stage", "finished", "--mass", "2.3 oz"],
] as const;

const run = async ([command, ...options]: readonly string[], units: string) =>
  answer([command ?? "", "h.knife.yaml", ...options, "--units", units], { files: FILES });

describe.each(["in", "mm"])("reports of a small knife in %s", (units) => {
  const texts = new Map<string, string>();
  beforeAll(async () => {
    for (const command of COMMANDS) texts.set(command.join(" "), (await run(command, units)).out);
  });
  const of = (command: string): string => texts.get(command) ?? "";

  it.each(COMMANDS.map((command) => command.join(" ")))(
    "%s has no negative zero and no zero ahead of the heel",
    (command) => {
      const text = of(command);
      expect(text.length).toBeGreaterThan(200);
      expect(text).not.toMatch(/[−-]0(?:\.0+)?(?:["\s]|$)/mu);
      expect(flat(text)).not.toMatch(/(?<![\d./])0(?:\.0+)?(?: mm|") (?:ahead of|behind) /u);
      expect(wideLines(text)).toEqual([]);
    },
  );

  it("tell what every step takes, however little", () => {
    const row = (name: string): string =>
      of("stock")
        .split("\n")
        .find((line) => line.includes(name)) ?? "";
    const [grams, ounces] = [/^ {2}\+ [a-z ]+ (\d+|\d\.\d) g /u, /^ {2}\+ [a-z ]+ \d+\.\d\d oz /u];
    for (const name of ["sharpening", "finish grinding", "face grinding", "forging scale"])
      expect(row(`+ ${name}`)).toMatch(units === "mm" ? grams : ounces);
    // Nothing is drilled and the tang has no taper to grind: these alone are nothing.
    for (const name of ["drilling", "tang grinding"])
      expect(row(`+ ${name}`)).toMatch(/ 0 (?:g|oz) +0 (?:cm³|in³)$/u);
    // About 0.3 g of scale: 3 to 5 in a thousand of some 60 g.
    expect(row("+ heat-treatment scale")).toMatch(units === "mm" ? / 0\.[1-9] g / : / 0\.0[1-9] oz /);
  });
});

describe("limits that were asked for", () => {
  it("stand as they were written, in the file's units", async () => {
    const { out, code } = await run(["check"], "in");
    expect(code).toBe(EXIT.done);
    expect(out).toMatch(/^thickness +0\.120" to 0\.150" +0\.135" ± 0\.005" +met by 0\.015"$/mu);
    expect(out).toMatch(/^balance +-2\.000" to 0\.300" +-\d\.\d{3}" /mu);
    expect(out).toMatch(/^mass +below 6 oz /mu);
  });
});
