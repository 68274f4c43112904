/** What the manual says of the program beside what its declarations say. */

/** Files that it reads and writes. */
export const FILES: readonly (readonly [string, string])[] = [
  ["NAME.knife.yaml", "one knife: what was asked, the blade, tang, handle, finish. YAML or JSON."],
  [
    "shop.yaml",
    "the shop: bars on the rack, losses, press, paper, tools. Looked for beside the knife file and in the folders above it; all of it may be left out.",
  ],
  ["NAME-plan/", "where plan writes, unless --out names another folder."],
];

/** Variables of the environment that it heeds. */
export const ENVIRONMENT: readonly (readonly [string, string])[] = [
  [
    "NO_COLOR",
    "set to anything: no colours. On a terminal only a few words have one, and none is needed to understand.",
  ],
  ["TERM", "dumb: no colours."],
  ["SCANTLING_DEBUG", "set to anything: a bug of the program shows where it happened."],
];

/** How all commands behave. */
export const MANNERS =
  "Reports go to standard output, talk and questions to standard error. A FILE of - is standard input. Files are written whole or not at all, and nothing is ever overwritten without --force. Without a unit, figures are in the units of the file.";
