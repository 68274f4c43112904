import { withAccepted } from "../accepted.js";
import { placeFinding } from "../finding-place.js";
import type { Measured } from "../measure.js";
import { firstTwoSentences } from "./findings.js";

/** `Hole E: …`: what `check` warns of at the holes, and what to do about it; what the knife file accepts is left out. */
export const holeWarnings = ({ findings, job }: Pick<Measured, "findings" | "job">): string[] =>
  withAccepted(findings, job)
    .filter(
      ({ severity, path, accepted }) =>
        severity === "warn" && accepted === undefined && /\.holes\[/u.test(path),
    )
    .map((finding) => {
      const name = placeFinding(finding, job).name.replace(/,.*/u, "");
      return `${name.charAt(0).toUpperCase()}${name.slice(1)}: ${firstTwoSentences(finding, job)}`;
    });
