import type { FamilyName, MaterialKind, TangSpec } from "@scantling/geometry";
import { type FileUnits, formatCaliper } from "@scantling/geometry/units";
import { lengthText } from "../report/figures.js";
import { askFor, say, type Talk } from "./ask.js";
import { FAMILY_CHOICES } from "./family-words.js";
import {
  type AskedSize,
  familyQuestion,
  massQuestion,
  materialQuestion,
  NO_LIMIT,
  sizeQuestion,
  tangQuestion,
  unitsQuestion,
} from "./knife-questions.js";
import {
  knifeStarter,
  STARTER_HANDLE,
  STARTER_STEEL,
  type StarterMaterial,
  type StarterWishes,
} from "./knife-starter.js";
import { FAMILY_STARTERS } from "./knife-types.js";
import { problemsIn } from "./problems-in.js";
import { type StarterSizes, starterSizes } from "./starter-sizes.js";

/** What a person answered of a knife. */
export type KnifeAnswers = Omit<StarterWishes, "code" | "title">;

/**
 * Asks what a starter is written from: kind, units, three sizes, tang, steel, handle, and how heavy it may be.
 *
 * @throws {CommandFailure} where nobody answers any more.
 */
export async function askKnife(
  talk: Talk,
  usual: { readonly units: FileUnits; readonly steel: StarterMaterial },
): Promise<KnifeAnswers> {
  for (const text of OPENING) say(talk, text, "");
  const family = await askFor(talk, familyQuestion());
  const units = await askFor(talk, unitsQuestion(usual.units));
  const shape = await askShape(talk, family, units);
  const steel = await askFor(talk, materialQuestion("Steel", usual.steel, ["steel"], units));
  const handle = await askFor(talk, materialQuestion("Handle", STARTER_HANDLE, HANDLE_KINDS, units));
  const mass = await askFor(talk, massQuestion(family, units));
  return { family, units, ...shape, steel, handle, ...(mass === NO_LIMIT ? {} : { massBelow: mass }) };
}

const OPENING = [
  "A new knife. Enter takes what stands in brackets, ? explains, Ctrl-C stops and leaves nothing behind. Everything can be changed in the file afterwards.",
  "",
  `Kinds: ${FAMILY_CHOICES.join(", ")}.`,
];

const HANDLE_KINDS: readonly MaterialKind[] = ["wood", "composite", "other", "metal"];

type Shape = StarterSizes & { readonly tang: TangSpec["form"] };

/** Sizes and tang, again until they make a knife. */
async function askShape(talk: Talk, family: FamilyName, units: FileUnits): Promise<Shape> {
  const { edgeLength, heelHeight, spine } = sizesAsked(family, units);
  for (;;) {
    const shape = {
      edgeLength: await askFor(talk, sizeQuestion(edgeLength)),
      heelHeight: await askFor(talk, sizeQuestion(heelHeight)),
      spine: await askFor(talk, sizeQuestion(spine)),
      tang: await askFor(talk, tangQuestion(FAMILY_STARTERS[family].tang)),
    };
    const others = { steel: STARTER_STEEL, handle: STARTER_HANDLE, code: "K", title: "K" };
    const problems = problemsIn(knifeStarter({ family, units, ...shape, ...others }));
    if (problems.length === 0) return shape;
    say(talk, "These sizes make no knife. Once more:");
    for (const problem of problems) say(talk, problem, "  - ");
  }
}

/** The three sizes that a knife is called by. */
function sizesAsked(family: FamilyName, units: FileUnits): Record<keyof StarterSizes, AskedSize> {
  const usual = starterSizes({ family, units });
  const { type } = FAMILY_STARTERS[family];
  return {
    edgeLength: {
      ask: "Edge length",
      help: "Heel to tip, along the straight line of the edge.",
      usual: usual.edgeLength,
      range: type.edgeLength,
      units,
      figure: lengthText,
    },
    heelHeight: {
      ask: "Height at the heel",
      help: "From the edge up to the spine, at the rear end of the edge.",
      usual: usual.heelHeight,
      range: type.heelHeight,
      units,
      figure: lengthText,
    },
    spine: {
      ask: "Thickness at the heel",
      help: "Side to side at the spine, finished. The file thins it to the tip.",
      usual: usual.spine,
      range: type.spine,
      units,
      figure: formatCaliper,
    },
  };
}
