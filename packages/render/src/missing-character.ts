/**
 * What is printed for a character that no font at hand has: its number, so that it is never lost in silence.
 *
 * @example
 * missingCharacter("🔪"); // "<U+1F52A>"
 */
export function missingCharacter(character: string): string {
  const code = character.codePointAt(0) ?? 0;
  return `<U+${code.toString(16).toUpperCase().padStart(4, "0")}>`;
}
