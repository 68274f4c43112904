import { editDistance } from "../words/edit-distance.js";

/**
 * The names nearest to a mistyped one, nearest first: those that begin with it or contain it, then those within about
 * a third of its letters.
 */
export function nearestNames(typed: string, names: readonly string[], most = 3): string[] {
  if (typed === "") return [];
  const reach = Math.max(1, Math.ceil(typed.length / 3));
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
