import { type HandleSpec, type Knife, type KnifeSpec, makeKnife, SpecError } from "@scantling/geometry";
import { randomKnife } from "../../../../tests/reference/random/knives.js";

/** Texts that a knife file could carry. */
const TEXTS = [
  "Tall harvest knife for a market garden",
  "",
  "<script>alert(1)</script>",
  "W".repeat(200),
  "Messer für den Gärtner, 40 Stück, mit Griff aus Mooreiche und Zwingen aus Messing",
  "\u202egnp.exe ]]> 🔪🔪",
] as const;

const made = (spec: KnifeSpec, handle: HandleSpec): Knife | undefined => {
  try {
    return makeKnife({ ...spec, handle });
  } catch (error) {
    if (error instanceof SpecError) return undefined;
    throw error;
  }
};

/** Random knife number `index` with a handle of a kind that fits its tang, and an order's words; some have none. */
export function handledKnife(index: number): {
  readonly name: string;
  readonly knife: Knife;
  readonly head: { readonly code: string; readonly title: string; readonly units: "mm" | "in" };
} {
  const { kind, knife, spec } = randomKnife(index);
  const material = { name: TEXTS[(index + 3) % TEXTS.length] ?? "ash", density: 0.0007 };
  const tangHeight = 2 * Math.abs(knife.outline.butt);
  const slabs: HandleSpec = {
    slabs: {
      material,
      thickness:
        index % 3 === 0
          ? 6
          : [
              { at: { kind: "handle" }, is: 5 },
              { at: { kind: "fraction", share: 0.5 }, is: 9 },
              { at: { kind: "butt" }, is: 7 },
            ],
      between: index % 2 === 0 ? "smooth" : "straight",
      edgeRadius: index % 4,
    },
    ...(index % 5 === 0 ? { liners: { material, thickness: 0.8 } } : {}),
  };
  const size = Math.min(60, tangHeight);
  const block = (section: "oval" | "octagonal" | "rounded"): HandleSpec => ({
    block: {
      material,
      section,
      length: 60 + 1.2 * (index % 60),
      height: [
        { at: { kind: "handle" }, is: size },
        { at: { kind: "butt" }, is: size + 4 },
      ],
      width: 24,
      ...(section === "rounded" ? { cornerRadius: 6 } : {}),
    },
  });
  const sections = ["oval", "octagonal", "rounded"] as const;
  const wanted = spec.tang.form === "full" ? slabs : block(sections[index % 3] ?? "oval");
  return {
    name: `${index} ${kind}`,
    knife: made(spec, wanted) ?? knife,
    head: {
      code: TEXTS[index % TEXTS.length] ?? "",
      title: TEXTS[(index + 1) % TEXTS.length] ?? "",
      units: index % 2 === 0 ? "mm" : "in",
    },
  };
}
