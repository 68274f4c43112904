import { PassThrough } from "node:stream";
import { expect, it } from "vitest";
import { lineReader } from "../../src/io/line-reader.js";

function reader() {
  const [input, output] = [new PassThrough(), new PassThrough()];
  let shown = "";
  output.on("data", (chunk) => {
    shown += String(chunk);
  });
  return { input, lines: lineReader(input, output, false), shown: () => shown };
}

it("shows what is asked and gives the line that is typed", async () => {
  const { input, lines, shown } = reader();
  const line = lines.ask("Units: ");
  input.write("mm\n");
  expect(await line).toBe("mm");
  expect(shown()).toBe("Units: ");
  lines.close();
});

it("keeps lines that come before they are asked for, as from pasted text", async () => {
  const { input, lines } = reader();
  const first = lines.ask("1: ");
  input.write("one\ntwo\nthree\n");
  expect(await first).toBe("one");
  expect([await lines.ask("2: "), await lines.ask("3: ")]).toEqual(["two", "three"]);
  lines.close();
});

it("has no line any more at the end of input, also for who is waiting", async () => {
  const { input, lines } = reader();
  const waiting = lines.ask("1: ");
  input.end();
  expect(await waiting).toBeUndefined();
  expect(await lines.ask("2: ")).toBeUndefined();
});
