import { type HeatSource, letterName } from "@scantling/geometry";

/** Sources by letters, so that a figure has its own beside it and the words stand once. */
export class SourceLetters {
  readonly #seen: string[] = [];

  /** `[a]`, the same for the same source. */
  of({ source, mark }: HeatSource): string {
    const told = /memory|no source/u.test(source);
    const text = mark === "from memory" && !told ? `${source}, from memory` : source;
    const known = this.#seen.indexOf(text);
    if (known < 0) this.#seen.push(text);
    return `[${letterOf(known < 0 ? this.#seen.length - 1 : known)}]`;
  }

  /** `[a] a maker's page. [b] …` */
  legend(): string {
    return this.#seen.map((text, index) => `[${letterOf(index)}] ${text}.`).join(" ");
  }
}

/** a, b, … z, a2, … */
const letterOf = (index: number): string => letterName(index).toLowerCase();
