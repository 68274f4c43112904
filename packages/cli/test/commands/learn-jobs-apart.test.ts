import { describe, expect, it } from "vitest";
import { answer, flat } from "../support/answer.js";
import { filesOf, JOBS, type Job, LOSSES, recordText, SHOP, world } from "../support/learn-records.js";

describe("learn", () => {
  it("tells how far jobs lie apart themselves, beside what the band reckons with", async () => {
    // The same masses, and no copies, for their notes differ by a day.
    const alike = Array.from(
      { length: 6 },
      (_, i): Job => ({ more: `  - { revision: 3, on: 2026-04-0${i + 1}, note: another }\n` }),
    );
    const { out } = await answer(["learn"], world(alike));
    expect(flat(out)).toContain(
      "6 jobs, by themselves 1.8 %, alike as far as they could be measured. The band reckons with",
    );
    const apart = JSON.parse((await answer(["learn", "--json"], world(alike))).out).figures[0];
    expect(apart.apart).toBe(0);
    expect(apart.scatter).toBeGreaterThan(0.1);
    // Standard deviation of the logarithms of six losses, a little less for the scale's own error.
    const logs = LOSSES.map(Math.log);
    const mean = logs.reduce((sum, one) => sum + one, 0) / logs.length;
    const deviation = Math.sqrt(logs.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (logs.length - 1));
    const own = JSON.parse((await answer(["learn", "--json"], world(JOBS))).out).figures[0];
    expect(Math.abs(own.apart / deviation - 1)).toBeLessThan(0.05);
    expect(flat((await answer(["learn"], world(JOBS))).out)).toContain(
      `which differ by ${Math.round(deviation * 100)} % or so. The band reckons with`,
    );
  });

  it("counts a copied record once, and says which", async () => {
    const files: Record<string, string> = { ...SHOP, ...filesOf(JOBS) };
    const original = files["orders/job-2.record.yaml"] ?? "";
    // A backup from before the last entry is a copy as well.
    const backup = original;
    const goneOn = `${original}  - { revision: 3, on: 2026-03-05, stage: ready, mass: 600 g }\n`;
    const copied = {
      ...files,
      "orders/job-2.record.yaml": goneOn,
      "orders/a-backup.record.yaml": backup,
      "orders/job-4 copy.record.yaml": files["orders/job-4.record.yaml"] ?? "",
    };
    const { out } = await answer(["learn"], { files: copied });
    expect(flat(out)).toContain("LEARNT for shop.yaml from 6 records");
    for (const [file, of] of [
      ["orders/a-backup.record.yaml", "orders/job-2.record.yaml"],
      ["orders/job-4 copy.record.yaml", "orders/job-4.record.yaml"],
    ])
      expect(flat(out)).toContain(`- ${file}: a copy, with the same entries on the same days as ${of}.`);
    const document = JSON.parse((await answer(["learn", "--json"], { files: copied })).out);
    expect(document.copies).toHaveLength(2);
    const once = JSON.parse((await answer(["learn", "--json"], world(JOBS))).out);
    expect(document.figures[0].learnt).toEqual(once.figures[0].learnt);
    expect(document.figures[0].jobs).toHaveLength(6);
  });

  it("counts two knives of the same hours on the same day as two, and those that a note tells apart", async () => {
    const hours = `scantling: 1
units: mm
knife: none.knife.yaml
entries:
  - { revision: 1, on: 2026-03-02, task: forge, hours: 4 }
`;
    const two = { ...SHOP, "orders/a.record.yaml": hours, "orders/b.record.yaml": hours };
    expect((await answer(["learn"], { files: two })).out).toContain("from 2 records");
    const noted = recordText({}).replace("heats: 8 }", "heats: 8, note: the second of a pair }");
    const pair = { ...SHOP, "orders/a.record.yaml": recordText({}), "orders/b.record.yaml": noted };
    expect((await answer(["learn"], { files: pair })).out).toContain("from 2 records");
  });

  it("leaves a task off that the shop has at 0 h, and learns a share of a thinning away from 0", async () => {
    const entries = (i: number): string => `  - { revision: 3, on: 2026-03-0${i + 1}, task: etch, hours: 2 }
  - { revision: 4, on: 2026-03-0${i + 1}, drawn: { from: { height: 40, thickness: 30 }, to: { height: 42.4, thickness: 20 }, with: flat dies } }
`;
    const jobs = JOBS.map((job, i): Job => ({ ...job, more: entries(i) }));
    const shop = `scantling: 1
units: mm
work:
  hours:
    etch: 0 h
limits:
  forge:
    bevelSpreadShare: 0 %
`;
    const { out } = await answer(["learn", "--json"], world(jobs, { "shop.yaml": shop }));
    const changes: { readonly path: string; readonly to: string }[] = JSON.parse(out).changes;
    expect(changes.map(({ path }) => path)).toEqual(["losses.scalePerHeat", "limits.forge.bevelSpreadShare"]);
    // ln(42.4/40)/ln(30/20) is 14 %, drawn a little toward 0.
    expect(changes[1]?.to).toMatch(/^1[23] %$/u);
  });
});
