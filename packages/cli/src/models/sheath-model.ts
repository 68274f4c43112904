import { checkSheath, foldOverSheath } from "@scantling/geometry";
import { describeIssue } from "@scantling/geometry/units";
import type { SheathModel } from "@scantling/render";
import { inFileTerms, type Measured } from "../measure.js";
import { orderHead } from "./order-head.js";

/** A fold-over sheath for the finished knife, as knife file and shop file ask for it. */
export function makeSheathModel({ job, knife }: Measured): SheathModel {
  return { ...orderHead(job), sheath: inFileTerms(job, () => foldOverSheath(knife, job.sheath)) };
}

/** Why the shop's sizes, or the usual ones, leave no sheath for this knife; undefined where they leave one. */
export function whyNoSheath({ job, knife }: Measured): string | undefined {
  const [issue] = checkSheath(knife, job.sheath, job.knife.sheath);
  if (issue === undefined) return undefined;
  const [first = "", ...rest] = describeIssue(issue, job.units).replace(/\.$/u, "");
  return `${first.toLowerCase()}${rest.join("")}`;
}
