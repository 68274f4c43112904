import { editDistance } from "../words/edit-distance.js";

/** Letters of a name that may differ are one in this many. */
const LETTERS_PER_SLIP = 4;
/** In shorter words than this nothing may differ: too many names are one letter away. */
const SHORTEST = 3;

/**
 * The names nearest to a mistyped one, nearest first: those that begin with it or contain it, then those within about
 * a quarter of its letters.
 */
export function nearestNames(typed: string, names: readonly string[], most = 3): string[] {
  if (typed.length < SHORTEST) return [];
  const reach = Math.max(1, Math.floor(typed.length / LETTERS_PER_SLIP));
  return names
    .map((name) => ({
      name,
      distance: name.includes(typed) ? (name.startsWith(typed) ? 0 : 0.5) : editDistance(typed, name),
    }))
    .filter(({ distance }) => distance <= reach)
    .sort((a, b) => a.distance - b.distance || a.name.length - b.name.length || (a.name < b.name ? -1 : 1))
    .slice(0, most)
    .map(({ name }) => name);
}
