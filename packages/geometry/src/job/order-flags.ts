import { handleMaterials } from "../blade/handle-materials.js";
import type { HandleSpec } from "../blade/spec.js";
import type { Finding } from "../errors/issue.js";

/** A group of materials that may be protected, by words in their names. */
interface ProtectedGroup {
  readonly words: RegExp;
  readonly why: string;
}

/**
 * When the list below was last held against the lists in force: it was not. Written from memory on the day given; it only says
 * where to look.
 */
export const PROTECTED_LIST_WRITTEN = "2026-11-28";

const GROUPS: readonly ProtectedGroup[] = [
  {
    words: /rosewood|cocobolo|blackwood|grenadilla|granadillo|kingwood|tulipwood|palisander|dalbergia/u,
    why: "rosewoods and their kin are listed, one of them most strictly",
  },
  { words: /lignum vitae|guaiacum|verawood/u, why: "lignum vitae is listed" },
  {
    words: /mahogany|swietenia|afrormosia|padauk|padouk|bubinga/u,
    why: "some woods of this name are listed",
  },
  { words: /\bipe\b|cumaru|tabebuia|handroanthus/u, why: "woods of this name have been listed of late" },
  { words: /ebony|diospyros/u, why: "some ebonies are listed, others are not: the origin decides" },
  {
    words: /ironwood|snakewood|ramin|agarwood|pernambuco|afzelia/u,
    why: "some woods of this name are protected",
  },
  {
    words:
      /ivory|tusk|tortoise|turtle|walrus|whale|hippo|rhino|elephant|crocod|alligator|python|pangolin|sawfish/u,
    why: "parts of many animals are listed, and some countries forbid the trade altogether",
  },
  { words: /mammoth/u, why: "some places forbid mammoth with ivory" },
  { words: /\b(?:antler|stag|horn|bone|hide)\b/u, why: "animal parts need papers at many borders" },
];

const BASIS = `a list from memory, written ${PROTECTED_LIST_WRITTEN} and not held against the lists in force`;

/**
 * What has to be looked up before a knife is sold or posted: materials that may be protected, food, age and post. They say
 * what to check and with whom; none is a verdict, and what they do not name may be restricted all the same.
 *
 * @param checked - The day on which the smith looked it up for this order, as `2026-11-20`; left out: not yet.
 *
 * @example
 * const handle = { slabs: { material: { name: "cocobolo" }, thickness: 8 } };
 * orderFlags(handle)[0]?.code; // "protected-material"
 * orderFlags(handle, "2026-11-20")[0]?.severity; // "note"
 */
export function orderFlags(handle: HandleSpec | undefined, checked?: string): Finding[] {
  const state = checked === undefined ? "Not looked up for this order yet." : `Looked up on ${checked}.`;
  const named: (readonly [path: string, name: string])[] = [
    ...handleMaterials(handle).map(([path, { name }]) => [path, name] as const),
    ...(handle?.parts ?? []).map(({ name }, index) => [`handle.parts[${index}].name`, name] as const),
  ];
  const materials = named.flatMap(([path, name]): Finding[] => {
    const group = GROUPS.find(({ words }) => words.test(name.toLowerCase()));
    if (group === undefined) return [];
    return [
      {
        code: "protected-material",
        severity: checked === undefined ? "warn" : "note",
        path,
        text: `{material}: ${group.why}. Before it crosses a border check with the CITES authority of both countries what the lists in force say, and which papers it needs. ${state}`,
        values: { material: name },
        basis: BASIS,
      },
    ];
  });
  return [
    ...materials,
    {
      code: "sale-and-post-rules",
      severity: "note",
      path: "",
      text: `Rules on selling, carrying and posting knives differ, and many ask for proof of age: check with the carrier and with the authority where the buyer lives. ${state}`,
      basis: "rules differ from place to place; nothing is looked up here",
    },
    {
      code: "food-contact-rules",
      severity: "note",
      path: "",
      text: `If it will touch food: check with the food authority where it is sold, and with the data sheets of steel, handle, glue and oil, that they may. ${state}`,
      basis: "rules differ from place to place; nothing is looked up here",
    },
  ];
}
