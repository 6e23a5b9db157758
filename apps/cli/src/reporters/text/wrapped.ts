/**
 * A text in lines of at most `columns`, broken between words; `before` opens the first, the others are set in as
 * far. A no-break space keeps its words together.
 */
export function wrapped(text: string, columns: number, before = ""): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(" ").filter((one) => one !== "")) {
    if (line !== "" && before.length + line.length + 1 + word.length > columns) {
      lines.push(line);
      line = word;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  const margin = " ".repeat(before.length);
  return [...lines, line].map((one, index) => `${index === 0 ? before : margin}${one}`);
}
