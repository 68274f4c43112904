import type { FindingCode } from "@scantling/geometry";

/** What the forge card looks for, `setup` and the bench card: the work of one plan with the shop's own tools. */
export const SETUP_CODES: readonly FindingCode[] = [
  "on-edge-tall",
  "on-edge-too-tall",
  "pass-limit-deep",
  "pass-over-limit",
  "no-stop-low-enough",
  "no-stop-near",
  "stop-far-off",
  "taper-stop-far-off",
  "press-load-unknown",
  "press-near-limit",
  "press-too-weak",
  "bite-too-short",
  "shoulder-corner-sharp",
  "shoulder-too-abrupt",
];

/** What is looked for where something was weighed or measured, `gate`. */
export const GATE_CODES: readonly FindingCode[] = [
  "steel-short",
  "steel-only-just",
  "steel-not-sure",
  "mass-rose",
  "mass-unit-slip",
  "tare-missing",
  "handling-weld-left-in",
  "counted-as-solid-bar",
  "reading-questioned",
  "reading-slip",
  "reading-thin-for-hardening",
  "reading-under-finished",
  "reading-under-target",
];

/** Whether a command looks for a finding itself. */
export function isLookedForIn(code: string, command: "check" | "setup" | "gate"): boolean {
  const is = (codes: readonly string[]): boolean => codes.includes(code);
  if (command === "setup") return is(SETUP_CODES);
  return command === "gate" ? is(GATE_CODES) : !is(SETUP_CODES) && !is(GATE_CODES);
}
