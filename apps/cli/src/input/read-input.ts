import { open } from "node:fs/promises";
import { reasonOf } from "./system-error.ts";

/** A job of a hundred leaves with notes takes well under 1 MB; what is larger than this is not a job. */
const largestBytes = 20_000_000;

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
    bytes = path === "-" ? await readAll(process.stdin) : await readFile(path);
  } catch (error) {
    return bad(reasonOf(error), "a job file that can be read");
  }
  if (bytes === null) return bad(`more than ${largestBytes / 1e6} MB`, "a job file");
  try {
    return { ok: true, name, text: new TextDecoder("utf-8", { fatal: true }).decode(bytes) };
  } catch {
    return bad("bytes that are not UTF-8 text", "a job file (JSON text)");
  }
}

async function readFile(path: string): Promise<Buffer | null> {
  const file = await open(path);
  try {
    const { size } = await file.stat();
    return size > largestBytes ? null : await file.readFile();
  } finally {
    await file.close();
  }
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
