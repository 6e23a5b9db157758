import { lstat } from "node:fs/promises";
import { type ExitCode, exitCode } from "../exit-code.ts";
import type { Outside } from "../outside.ts";
import { cleanText } from "./clean-text.ts";
import { writeNewFile } from "./write-new-file.ts";

/** Where a command that makes a job file puts it. */
export interface TargetOptions {
  readonly out?: string;
  readonly force?: true;
}

/** Whether something has that name already, be it a link that leads nowhere. */
export async function isThere(path: string): Promise<boolean> {
  return lstat(path).then(
    () => true,
    () => false,
  );
}

/** A made file goes to `--out`, or to standard output without it. */
export async function printOrWrite(
  text: string,
  { out, force }: TargetOptions,
  outside: Outside,
): Promise<ExitCode> {
  if (out === undefined || out === "-") {
    outside.print(text);
    return exitCode.nothingFails;
  }
  const written = await writeNewFile(out, text, force === true);
  if (written.ok) return exitCode.nothingFails;
  outside.tell([cleanText(`${out}: not written: ${written.reason}`)]);
  return exitCode.badInput;
}
