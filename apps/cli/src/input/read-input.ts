import { closeSync, fstatSync, openSync, readFileSync, readSync } from "node:fs";
import { reasonOf } from "./system-error.ts";

/** A job of a hundred leaves with notes takes well under 1 MB; what is larger than this is not a job. */
const largestBytes = 20_000_000;

const utf8 = new TextDecoder("utf-8", { fatal: true });

/** The text of a job file, or what is wrong with the file as a whole. */
export type Input =
  | { readonly ok: true; readonly name: string; readonly text: string }
  | { readonly ok: false; readonly name: string; readonly found: string; readonly expected: string };

/** Reads a job file, or standard input for `-`. */
export async function readInput(path: string): Promise<Input> {
  const name = path === "-" ? "standard input" : path;
  const bad = (found: string, expected: string): Input => ({ ok: false, name, found, expected });
  let bytes: Buffer | null;
  try {
    bytes = path === "-" ? await readAll(process.stdin) : readFile(path);
  } catch (error) {
    return bad(reasonOf(error), "a job file that can be read");
  }
  if (bytes === null) return bad(`more than ${largestBytes / 1e6} MB`, "a job file");
  try {
    return { ok: true, name, text: utf8.decode(bytes) };
  } catch {
    return bad("bytes that are not UTF-8 text", "a job file (JSON text)");
  }
}

/** Without waiting in between: nothing else goes on in this thread, and a batch is read three times as fast. */
function readFile(path: string): Buffer | null {
  const file = openSync(path, "r");
  try {
    const found = fstatSync(file);
    if (found.isFile()) return found.size > largestBytes ? null : readFileSync(file);
    return readOpenEnded(file);
  } finally {
    closeSync(file);
  }
}

/** A pipe or device has no size to look at beforehand, and may have no end. */
function readOpenEnded(file: number): Buffer | null {
  const parts: Buffer[] = [];
  for (let size = 0; size <= largestBytes; ) {
    const part = Buffer.alloc(65_536);
    const count = readSync(file, part, 0, part.length, null);
    if (count === 0) return Buffer.concat(parts);
    parts.push(part.subarray(0, count));
    size += count;
  }
  return null;
}

async function readAll(stream: NodeJS.ReadableStream): Promise<Buffer | null> {
  const parts: Buffer[] = [];
  let size = 0;
  for await (const part of stream) {
    const bytes = Buffer.from(part);
    size += bytes.length;
    if (size > largestBytes) return null;
    parts.push(bytes);
  }
  return Buffer.concat(parts);
}
