import { type Finding, IMPOSSIBLE } from "@scantling/geometry";
import { isLookedForIn } from "./finding-commands.js";
import type { Job } from "./load.js";

/** Why the smith takes the risk of a finding; undefined where the knife file says nothing of it, or where it cannot be taken. */
export function acceptedReason({ code, accepted }: Finding, { knife }: Job): string | undefined {
  return accepted ?? (IMPOSSIBLE.includes(code) ? undefined : knife.accept[code]);
}

/** The findings with what the knife file accepts of them. */
export function withAccepted(findings: readonly Finding[], job: Job): Finding[] {
  return findings.map((finding) => {
    const accepted = acceptedReason(finding, job);
    return accepted === undefined ? finding : { ...finding, accepted };
  });
}

/** Risks that the knife file accepts and that are not there, or that cannot be taken: told by `check` and `plan`. */
export function acceptNotes(findings: readonly Finding[], { knife }: Job): Finding[] {
  return Object.keys(knife.accept).flatMap((name): Finding[] => {
    const hit = findings.find(({ code }) => code === name);
    const impossible = hit !== undefined && IMPOSSIBLE.includes(hit.code);
    // What only the forge card or the scale can show is not looked for here.
    if (hit === undefined ? !isLookedForIn(name, "check") : !impossible) return [];
    return [
      {
        code: "accepted-not-found",
        severity: "note",
        path: `accept.${name}`,
        text: impossible
          ? "{code} cannot be accepted: what it tells of cannot be made, whoever takes the risk."
          : "{code} is accepted, and nothing of it is found. Take it out, so that it hides nothing later.",
        values: { code: name },
        basis: "the knife file",
      },
    ];
  });
}
