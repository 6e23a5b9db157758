// biome-ignore-all lint/suspicious/noControlCharactersInRegex: control characters are what this file keeps away from a terminal

/** Escape sequences (colours, cursor moves, links, window titles) with all that belongs to them. */
const escapeSequence =
  /(?:\u001b\[|\u009b)[0-?]*[ -/]*[@-~]|(?:\u001b[\]PX^_]|[\u0090\u0098\u009d-\u009f])[^\u0007\u001b\u009c]*(?:\u0007|\u001b\\|\u009c)?|\u001b[ -/]*[0-~]?/g;

/** Control characters, and marks that turn the writing direction and so could show a text as another. */
const unseen = /[\u0000-\u001f\u007f-\u009f\u200b\u200e\u200f\u202a-\u202e\u2060\u2066-\u2069\ufeff]+/g;

/** A text from a file as it may stand on a terminal: one line, no escapes, nothing that hides. */
export function cleanText(text: string): string {
  return text.replace(escapeSequence, "").replace(unseen, " ").trim();
}

/** As `cleanText`, cut to `most` characters. */
export function shortCleanText(text: string, most: number): string {
  // Cut first: cleaning megabytes of nonsense to show a line of it is wasted.
  const clean = cleanText(text.slice(0, most * 4));
  return clean.length <= most ? clean : `${clean.slice(0, most - 1)}…`;
}
