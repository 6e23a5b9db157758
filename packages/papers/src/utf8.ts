/**
 * A text as UTF-8. Written out here because the usual encoder belongs to browsers and Node, not to the language.
 * A lone half of a character becomes the replacement character.
 *
 * ### Example
 *   expect(Array.from(utf8("°"))).toEqual([0xc2, 0xb0]);
 */
export function utf8(text: string): Uint8Array {
  const bytes: number[] = [];
  for (const character of text.replace(/\p{Cs}/gu, "\ufffd")) {
    const code = character.codePointAt(0) ?? 0;
    if (code < 0x80) bytes.push(code);
    else if (code < 0x800) bytes.push(0xc0 | (code >> 6), tail(code));
    else if (code < 0x10000) bytes.push(0xe0 | (code >> 12), tail(code >> 6), tail(code));
    else bytes.push(0xf0 | (code >> 18), tail(code >> 12), tail(code >> 6), tail(code));
  }
  return Uint8Array.from(bytes);
}

const tail = (code: number): number => 0x80 | (code & 0x3f);
