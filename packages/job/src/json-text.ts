import { type ParseError, parse, printParseErrorCode, visit } from "jsonc-parser";
import { type Fault, pathInWords } from "./fault.ts";

/** Longest job text that is read, in characters. */
export const longestText = 5 * 1024 * 1024;

/** Deepest nesting that is read; a job needs about eight levels, and walking must never overflow the stack. */
const deepestNesting = 100;

export type JsonText =
  | { readonly ok: true; readonly value: unknown; readonly repeated: readonly Fault[] }
  | { readonly ok: false; readonly faults: readonly Fault[] };

/**
 * Parses JSON from outside: size and depth limited, syntax errors with line and column. A byte-order mark
 * at the start is skipped. Keys that an object holds twice are `repeated`: the value has only the last of each.
 */
export function parseJsonText(text: string): JsonText {
  if (text.length > longestText) {
    return refused(
      `a text of ${text.length} characters`,
      `a job of at most ${longestText} characters (5 MB)`,
    );
  }
  const json = text.startsWith("\uFEFF") ? text.slice(1) : text;
  if (json.trim() === "") return refused("an empty text", "a job as JSON");
  const { tooDeep, colons } = scanned(json);
  if (tooDeep !== null) {
    return refused(
      `nesting deeper than ${deepestNesting} levels ${place(json, tooDeep)}`,
      "a job, which is flatter",
    );
  }
  let value: unknown;
  try {
    value = JSON.parse(json);
  } catch {
    return { ok: false, faults: [syntaxFault(json)] };
  }
  // Every key has its colon: fewer keys held than colons written means that some key stands twice.
  return { ok: true, value, repeated: keysIn(value) === colons ? [] : repeatedKeys(json) };
}

function refused(found: string, expected: string): JsonText {
  return { ok: false, faults: [{ path: "", found, expected }] };
}

function place(json: string, offset: number): string {
  const before = json.slice(0, offset);
  const line = before.split("\n").length;
  return `at line ${line}, column ${offset - before.lastIndexOf("\n")}`;
}

/**
 * One pass over the characters, so that depth costs no stack: where brackets nest deeper than allowed (null
 * when nowhere), and how many colons stand outside texts.
 */
function scanned(json: string): { readonly tooDeep: number | null; readonly colons: number } {
  let depth = 0;
  let colons = 0;
  for (let i = 0; i < json.length; i += 1) {
    switch (json.charCodeAt(i)) {
      case 0x22: // "
        i = endOfText(json, i);
        break;
      case 0x3a: // :
        colons += 1;
        break;
      case 0x7b: // {
      case 0x5b: // [
        depth += 1;
        if (depth > deepestNesting) return { tooDeep: i, colons };
        break;
      case 0x7d: // }
      case 0x5d: // ]
        depth -= 1;
    }
  }
  return { tooDeep: null, colons };
}

/** Offset of the double quote that ends the text which begins at `from`, or the end of it all. */
function endOfText(json: string, from: number): number {
  for (let end = json.indexOf('"', from + 1); end >= 0; end = json.indexOf('"', end + 1)) {
    let slashes = 0;
    while (json.charCodeAt(end - 1 - slashes) === 0x5c) slashes += 1;
    // An odd number of backslashes before it: the quote is part of the text.
    if (slashes % 2 === 0) return end;
  }
  return json.length;
}

/** How many keys all objects within hold. */
function keysIn(value: unknown): number {
  if (typeof value !== "object" || value === null) return 0;
  let keys = 0;
  if (Array.isArray(value)) for (const item of value) keys += keysIn(item);
  else {
    for (const key of Object.keys(value)) keys += 1 + keysIn((value as Record<string, unknown>)[key]);
  }
  return keys;
}

const expectedByCode: Record<string, string> = {
  InvalidSymbol: "a JSON value (text needs double quotes)",
  InvalidNumberFormat: "a number in JSON",
  PropertyNameExpected: "a key in double quotes",
  ValueExpected: "a value",
  ColonExpected: "a colon after the key",
  CommaExpected: "a comma",
  CloseBraceExpected: "a closing brace }",
  CloseBracketExpected: "a closing bracket ]",
  EndOfFileExpected: "the end of the text",
  InvalidCommentToken: "JSON without comments",
  UnexpectedEndOfComment: "JSON without comments",
  UnexpectedEndOfString: "a closing double quote",
  UnexpectedEndOfNumber: "more digits",
  InvalidUnicode: "four hexadecimal digits after \\u",
  InvalidEscapeCharacter: "an escape that JSON knows",
  InvalidCharacter: "text without raw control characters",
};

function syntaxFault(json: string): Fault {
  const errors: ParseError[] = [];
  parse(json, errors, { disallowComments: true, allowTrailingComma: false });
  const first = errors.reduce<ParseError | null>((a, b) => (a && a.offset <= b.offset ? a : b), null);
  if (!first) return { path: "", found: "text that is not JSON", expected: "a job as JSON" };
  const expected = expectedByCode[printParseErrorCode(first.error)] ?? "JSON";
  const atEnd = first.offset >= json.trimEnd().length;
  const what = atEnd
    ? "the end of the text"
    : `${JSON.stringify(json.slice(first.offset, first.offset + 12))}`;
  const found = `${what} ${place(json, first.offset)}`;
  return { path: "", found, expected: atEnd ? `${expected}; the text breaks off` : expected };
}

/** JSON.parse keeps the last of two equal keys in silence; a lost value must not be silent. */
function repeatedKeys(json: string): Fault[] {
  const faults: Fault[] = [];
  const objects: Set<string>[] = [];
  visit(json, {
    onObjectBegin: () => {
      objects.push(new Set());
    },
    onObjectEnd: () => {
      objects.pop();
    },
    onObjectProperty: (key, offset, _length, _line, _column, pathSupplier) => {
      const keys = objects.at(-1);
      if (keys?.has(key)) {
        const path = pathInWords([...pathSupplier(), key]);
        faults.push({
          path,
          found: `the key a second time ${place(json, offset)}`,
          expected: "each key once",
        });
      }
      keys?.add(key);
    },
  });
  return faults;
}
