import { FINDING_CODES, type FindingCode } from "@scantling/geometry";
import { z } from "zod";
import { name } from "./fields.js";

/** Risks that the smith takes, by the code of the finding, each with its reason. */
export function acceptFields() {
  const reason = name("Why the risk is taken").optional();
  return z
    .strictObject(
      Object.fromEntries(FINDING_CODES.map((code) => [code, reason])) as Record<FindingCode, typeof reason>,
      {
        error:
          "needs a group of findings with the reason for each, such as { bevel-steep: the customer splits wood }",
      },
    )
    .meta({
      description:
        "Risks that are taken: the code of a finding, as check --json has it, and why. It is told all the same, and stops nothing",
    });
}
