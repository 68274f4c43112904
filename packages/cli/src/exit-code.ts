/**
 * What the process answers to the shell; published, so that scripts may rely on it.
 *
 * @example
 * scantling check harvest.knife.yaml || echo "answered $?"
 */
export const EXIT = {
  /** Done. */
  done: 0,
  /** Our own bug. */
  bug: 1,
  /** Wrong use: an unknown command, a missing file name, an option that makes no sense. */
  usage: 2,
  /** The knife file or the shop file has errors, or cannot be read. */
  file: 3,
  /**
   * An ask is not met, or a finding says stop (`check`, `plan` and `reorder`); asks that no change meets (`fit`); steel short at
   * the usual losses, or a mass that cannot be (`gate`); an entry that is doubted, and therefore not stored (`record`);
   * a promised date that cannot be kept (`quote`).
   */
  notMet: 4,
  /** A file would be overwritten, or cannot be written. */
  write: 5,
} as const;

export type ExitCode = (typeof EXIT)[keyof typeof EXIT];
