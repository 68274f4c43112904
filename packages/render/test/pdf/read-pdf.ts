import { inflateSync } from "node:zlib";

/** The bytes as Latin-1, one character a byte. */
export const textOf = (pdf: Uint8Array): string => Buffer.from(pdf).toString("latin1");

/** The objects of a file as text, by number; a stream is unpacked and follows its dictionary. */
export function objectsOf(pdf: Uint8Array): Map<number, string> {
  const text = textOf(pdf);
  const objects = new Map<number, string>();
  for (const match of text.matchAll(/(?<=\n)(\d+) 0 obj\n([\s\S]*?)\nendobj/g)) {
    const [, number = "", body = ""] = match;
    const parts = /^([\s\S]*?)\nstream\n([\s\S]*?)\nendstream$/.exec(body);
    const [dictionary = body, stream] = parts?.slice(1) ?? [];
    objects.set(
      Number(number),
      stream === undefined
        ? dictionary
        : `${dictionary}\n${inflateSync(Buffer.from(stream, "latin1")).toString("latin1")}`,
    );
  }
  return objects;
}

/** The drawing commands of each page, in order. */
export function pagesOf(pdf: Uint8Array): { readonly box: readonly number[]; readonly commands: string }[] {
  const objects = objectsOf(pdf);
  return [...objects.values()]
    .filter((object) => /\/Type \/Page\n/.test(object))
    .map((page) => ({
      box: (/\/MediaBox \[([^\]]*)\]/.exec(page)?.[1] ?? "").split(" ").map(Number),
      commands: objects.get(Number(/\/Contents (\d+) 0 R/.exec(page)?.[1])) ?? "",
    }));
}
