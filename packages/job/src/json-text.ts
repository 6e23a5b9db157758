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
  const tooDeep = nestingPast(json, deepestNesting);
  if (tooDeep !== null) {
    return refused(
      `nesting deeper than ${deepestNesting} levels ${place(json, tooDeep)}`,
      "a job, which is flatter",
    );
  }
  try {
    return { ok: true, value: JSON.parse(json), repeated: repeatedKeys(json) };
  } catch {
    return { ok: false, faults: [syntaxFault(json)] };
  }
}

function refused(found: string, expected: string): JsonText {
  return { ok: false, faults: [{ path: "", found, expected }] };
}

function place(json: string, offset: number): string {
  const before = json.slice(0, offset);
  const line = before.split("\n").length;
  return `at line ${line}, column ${offset - before.lastIndexOf("\n")}`;
}

/** Offset at which brackets nest deeper than allowed, or null. Scans characters, so that depth costs no stack. */
function nestingPast(json: string, deepest: number): number | null {
  let depth = 0;
  let inString = false;
  for (let i = 0; i < json.length; i += 1) {
    const c = json[i];
    if (inString) {
      if (c === "\\") i += 1;
      else if (c === '"') inString = false;
    } else if (c === '"') inString = true;
    else if (c === "{" || c === "[") {
      depth += 1;
      if (depth > deepest) return i;
    } else if (c === "}" || c === "]") depth -= 1;
  }
  return null;
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
