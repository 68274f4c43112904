import { FAMILY_NAMES } from "@scantling/geometry";
import type { FileUnits } from "@scantling/geometry/units";
import { describe, expect, it } from "vitest";
import { EXIT } from "../../src/exit-code.js";
import { answer } from "../support/answer.js";

/** The first thing that a smith does: a shop, a knife, and the main job with every sheet of it. */
export function planStarters(units: FileUnits): void {
  describe(`from nothing to a plan in ${units}`, () => {
    it.each(FAMILY_NAMES)("%s", async (family) => {
      const { io } = await answer(["new", "shop.yaml", "--units", units]);
      const made = await answer(["new", "knife", "--family", family], io);
      expect(made.out).toBe("knife.knife.yaml\n");
      // Its units are those of the shop beside it.
      expect(io.disk.text("/shop/knife.knife.yaml")).toContain(`\nunits: ${units} `);
      const planned = await answer(["plan", "knife.knife.yaml"], io);
      expect(planned.code, planned.err).toBe(EXIT.done);
      expect(planned.out).not.toContain("BARS TO CUT: none");
      expect(planned.out).not.toContain("STOP");
      expect(planned.written.map((path) => path.split("/").at(-1))).toContain("knife.jobsheet.pdf");
    });
  });
}
