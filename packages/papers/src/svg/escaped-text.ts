const entities: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/**
 * A text as it may stand in XML, between tags or in an attribute.
 *
 * ### Example
 *   expect(escapedText('<b title="x">')).toBe("&lt;b title=&quot;x&quot;&gt;");
 */
export function escapedText(text: string): string {
  return text.replace(/[&<>"']/g, (character) => entities[character] ?? character);
}
