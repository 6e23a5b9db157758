/**
 * Eight letters and digits that change when a text does: tells which state of a job a paper was made from. Not
 * a protection against forgery (FNV-1a, 32 bits).
 *
 * ### Example
 *   expect(jobMark("")).toBe("811c9dc5");
 *   expect(jobMark("a")).toBe("e40c292c");
 */
export function jobMark(text: string): string {
  let hash = 0x811c9dc5;
  for (const character of text) {
    hash ^= character.codePointAt(0) ?? 0;
    hash = Math.imul(hash, 0x01000193);
  }
  return (hash >>> 0).toString(16).padStart(8, "0");
}
