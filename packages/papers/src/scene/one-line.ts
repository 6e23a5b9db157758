/**
 * A text on one line without anything unseen: control characters and line ends become a space, marks that turn
 * the direction of writing, lone halves of a character and what is no character at all are left out.
 *
 * ### Example
 *   expect(withoutControls("north\u0000gate\r\nyard\u202e")).toBe("north gate yard");
 */
export function withoutControls(text: string): string {
  return text
    .replace(/\p{Cc}+|[\u2028\u2029]+/gu, " ")
    .replace(/[\u200b\u200e\u200f\u202a-\u202e\u2060\u2066-\u2069\ufeff\ufffe\uffff]|\p{Cs}/gu, "")
    .trim();
}
