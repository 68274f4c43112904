import type { StationPlace } from "@scantling/geometry";
import { type FileUnits, nearestWord, parseQuantity } from "@scantling/geometry/units";
import { z } from "zod";
import {
  NOT_NEGATIVE,
  POSITIVE,
  type QuantityRule,
  quantity,
  quantityOrWord,
  Reading,
  readQuantity,
} from "./fields.js";
import { showText } from "./problem.js";

type PlaceWord = "heel" | "tip" | "handle" | "butt";

/** Where a station stands, with the tolerance of its place. */
type PlaceReading =
  | { readonly kind: PlaceWord }
  | { readonly kind: "distance"; readonly mm: Reading }
  | { readonly kind: "fraction"; readonly share: Reading };

/** Where a station of the blade or of the tang stands. */
export type LawOwner = "blade" | "tang";

const PLACE_WORDS: Readonly<Record<LawOwner | "knife", readonly PlaceWord[]>> = {
  blade: ["heel", "tip"],
  tang: ["handle", "butt"],
  knife: ["heel", "tip", "handle", "butt"],
};

/**
 * `heel`, `tip` (in a tang law `handle`, `butt`), `60 %` of the length, or a distance; on the whole knife any of them, a
 * distance behind the heel being negative.
 */
export function place(units: FileUnits, owner: LawOwner | "knife") {
  const words = PLACE_WORDS[owner];
  const expected = `needs a place: ${words.join(", ")}, a share such as 60 %, or a distance`;
  return z
    .union([z.number(), z.string()], { error: expected })
    .transform((raw, ctx): PlaceReading => {
      const complain = (code: string, message: string): void => {
        ctx.addIssue({ code: "custom", message, params: { code } });
      };
      const text = String(raw).trim();
      const word = words.find((known) => known === text.toLowerCase());
      if (word !== undefined) return { kind: word };
      if (/^[a-z]+$/iu.test(text)) {
        const near = nearestWord(text, words);
        complain(
          "unknown-place",
          `"${showText(text)}" is not a place on the ${owner}; ${near === undefined ? `use ${words.join(", ")}, 60 % or a distance` : `did you mean ${near}?`}`,
        );
        return z.NEVER;
      }
      const rule = { from: 0, about: "" };
      if (/%|percent/iu.test(text)) {
        const share = readQuantity(raw, "share", units, { ...rule, to: 1 }, complain);
        return share === undefined ? z.NEVER : { kind: "fraction", share };
      }
      const ahead = owner === "knife" ? { about: "" } : rule;
      const distance = readQuantity(raw, "length", units, ahead, complain);
      return distance === undefined ? z.NEVER : { kind: "distance", mm: distance };
    })
    .meta({ description: `Where: ${words.join(", ")}, a share of the length such as 60 %, or a distance` });
}

/** The place itself: an ask is held against the blade as it is drawn, and a tolerance of its place says nothing. */
export function plainPlace(given: z.output<ReturnType<typeof place>>): StationPlace {
  if (given.kind === "distance") return { kind: "distance", mm: given.mm.value };
  if (given.kind === "fraction") return { kind: "fraction", share: given.share.value };
  return given;
}

const STATION = "needs a place and a value, { at: heel, is: 4.6 }";

/** Values at places along the blade or the tang. */
export function stations(units: FileUnits, owner: LawOwner, rule: QuantityRule) {
  return z
    .array(
      z.strictObject({ at: place(units, owner), is: quantity("length", units, rule) }, { error: STATION }),
      {
        error: "needs a list of places: - { at: heel, is: 4.6 }",
      },
    )
    .min(1, { error: "needs at least one place: - { at: heel, is: 4.6 }" })
    .meta({ description: `${rule.about}, by stations` });
}

/** One length everywhere, or lengths at stations. */
export function law(units: FileUnits, rule: QuantityRule) {
  return z.union([quantity("length", units, rule), stations(units, "blade", rule)], {
    error: "needs a length, or a list of places: - { at: heel, is: 4.6 }",
  });
}

/** Bevel height: `full`, a length, or lengths at stations. */
export function bevelHeight(units: FileUnits) {
  const rule = { ...POSITIVE, about: "How far up from the edge the bevel goes" };
  return z.union([quantityOrWord("length", units, ["full"], rule), stations(units, "blade", rule)], {
    error: "needs full, a length, or a list of places: - { at: heel, is: 48 }",
  });
}

/** Crown of a convex face: a length or a share of the thickness gained, once or at stations. */
export function crown(units: FileUnits) {
  const one = z
    .union([z.number(), z.string()], { error: "needs a length such as 0.2 mm, or a share such as 20 %" })
    .transform((raw, ctx) => {
      const kind = typeof raw === "string" && readsAsShare(raw, units) ? "share" : "length";
      const limit = kind === "share" ? { to: 1 } : {};
      const complain = (code: string, message: string): void => {
        ctx.addIssue({ code: "custom", message, params: { code } });
      };
      const reading = readQuantity(raw, kind, units, { ...NOT_NEGATIVE, ...limit, about: "" }, complain);
      return reading === undefined ? z.NEVER : { kind, reading };
    })
    .meta({ description: "Greatest distance from the chord: a length, or a share of the thickness gained" });
  const many = z.array(z.strictObject({ at: place(units, "blade"), is: one }, { error: STATION })).min(1);
  return z
    .union([one, many], { error: "needs a length, a share, or a list of places" })
    .transform((crown, ctx) => {
      if (!Array.isArray(crown)) {
        return crown.kind === "share" ? { share: crown.reading } : { mm: crown.reading };
      }
      const kinds = new Set(crown.map(({ is }) => is.kind));
      if (kinds.size > 1) {
        ctx.addIssue({
          code: "custom",
          message: "has lengths and shares; use one of them throughout",
          params: { code: "mixed-kinds" },
        });
      }
      const law = crown.map(({ at, is }) => ({ at, is: is.reading }));
      return kinds.has("share") ? { share: law } : { mm: law };
    });
}

function readsAsShare(text: string, units: FileUnits): boolean {
  return text.includes("%") && parseQuantity(text, "share", units).ok;
}

/** `[x, y]` from the heel. */
export function point(units: FileUnits) {
  const expected = "needs two lengths, [x, y], from the heel";
  const x = quantity("length", units, { about: "x from the heel, toward the tip; negative in the handle" });
  const y = quantity("length", units, { about: "y from the heel, toward the spine" });
  return z.tuple([x, y], { error: expected }).transform(([px, py]) => ({ x: px, y: py }));
}

/** An angle of a plane against the centre plane. */
export const ANGLE = { above: 0, below: Math.PI / 2 } as const;

/** Sharpening angle per side, `{ included: … }` for both together, or `{ right, left }` each its own. */
export function edgeAngle(units: FileUnits) {
  const side = { ...ANGLE, usual: "15 deg per side", about: "Sharpening angle per side" };
  const both = {
    above: 0,
    below: Math.PI,
    usual: "30 deg for both sides",
    about: "Sharpening angle of both sides together",
  };
  const own = (about: string) => quantityOrWord("angle", units, ["flat"], { ...side, about });
  const forms = [
    quantity("angle", units, side),
    z.strictObject({ included: quantity("angle", units, both) }),
    z.strictObject({ right: own("Angle of the right-hand side"), left: own("Angle of the left-hand side") }),
  ] as const;
  return z
    .union(forms, {
      error:
        "needs an angle per side, such as 16 deg, { included: 32 deg }, or { right: 16 deg, left: flat }",
    })
    .transform((angle) => {
      if (angle instanceof Reading || !("included" in angle)) return angle;
      return angle.included.scaled(0.5);
    });
}
