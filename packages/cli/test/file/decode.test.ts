import { describe, expect, it } from "vitest";
import { decodeFile, FileError, MAX_FILE_BYTES, type Problem } from "../../src/file/index.js";

function problemOf(bytes: Uint8Array): Problem | undefined {
  try {
    decodeFile(bytes, "knife.yaml");
  } catch (error) {
    if (error instanceof FileError) return error.problems[0];
    throw error;
  }
  return undefined;
}

const utf8 = (text: string): Uint8Array => new TextEncoder().encode(text);
const join = (...parts: readonly Uint8Array[]): Uint8Array =>
  Uint8Array.from(parts.flatMap((part) => [...part]));

describe("decodeFile", () => {
  it("gives the text, without a byte order mark", () => {
    expect(decodeFile(utf8("steel: 7½″ – ±\n"), "knife.yaml")).toBe("steel: 7½″ – ±\n");
    expect(decodeFile(join(Uint8Array.of(0xef, 0xbb, 0xbf), utf8("a: 1")), "knife.yaml")).toBe("a: 1");
    expect(decodeFile(new Uint8Array(MAX_FILE_BYTES).fill(32), "knife.yaml")).toHaveLength(MAX_FILE_BYTES);
  });

  it("refuses 50 MB at once, whatever is in it", () => {
    const bytes = new Uint8Array(50_000_000);
    const started = performance.now();
    expect(problemOf(bytes)).toMatchObject({ code: "file-too-large", line: undefined });
    expect(performance.now() - started).toBeLessThan(50);
    expect(problemOf(bytes)?.message).toBe("the file is 47.7 MB; a file of this kind is a few kB");
    expect(problemOf(new Uint8Array(MAX_FILE_BYTES + 1))?.code).toBe("file-too-large");
  });

  it("refuses what is not text, at its place", () => {
    expect(problemOf(join(utf8("a: 1\nb: "), Uint8Array.of(0), utf8("2")))).toMatchObject({
      code: "file-binary",
      line: 2,
      column: 4,
    });
    expect(problemOf(Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 0, 0))?.code).toBe(
      "file-binary",
    );
  });

  it.each([
    ["a stray byte of another encoding", join(utf8("a: ½\nb: "), Uint8Array.of(0xbd), utf8("\n")), 2, 4],
    ["a sequence cut off at the end", join(utf8("a: "), Uint8Array.of(0xe2, 0x82)), 1, 4],
    ["an overlong form", join(utf8("a: 1\n\nb: "), Uint8Array.of(0xc0, 0xaf), utf8(" c")), 3, 4],
    ["the first byte", join(Uint8Array.of(0xff), utf8("a: 1")), 1, 1],
  ])("refuses what is not UTF-8: %s", (_, bytes, line, column) => {
    expect(problemOf(bytes)).toMatchObject({ code: "file-not-utf-8", line, column });
  });

  it("names UTF-16 by its mark", () => {
    expect(problemOf(Uint8Array.of(0xff, 0xfe, 0x61, 0))?.message).toMatch(/UTF-16; save it as UTF-8/);
  });
});
