/** The system's own code of an error (`ENOENT`, `EACCES` …), where it has one. */
export function systemCode(error: unknown): string | undefined {
  if (!(error instanceof Error) || !("code" in error)) return undefined;
  return typeof error.code === "string" ? error.code : undefined;
}

const WORDS: Readonly<Record<string, string>> = {
  ENOENT: "no such file or folder",
  ENOTDIR: "a part of the path is a file, not a folder",
  EACCES: "permission denied",
  EPERM: "not permitted",
  EROFS: "the disk is read-only",
  ENOSPC: "the disk is full",
  EFBIG: "the file would be larger than the system allows",
  EDQUOT: "the disk quota is used up",
  EISDIR: "it is a folder",
  EEXIST: "it exists already",
  ENAMETOOLONG: "the name is too long",
  ELOOP: "links that go round in a circle",
  EMFILE: "too many files are open",
  EIO: "the disk reports a read or write error",
  EBUSY: "it is in use",
  ENOTEMPTY: "the folder is not empty",
};

/** A system error in words: `permission denied (EACCES)`. */
export function describeSystemError(error: unknown): string {
  const code = systemCode(error);
  if (code === undefined) return error instanceof Error ? error.message : String(error);
  const words = WORDS[code];
  return words === undefined ? code : `${words} (${code})`;
}
