import { link, open, rename, rm } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { reasonOf } from "../input/system-error.ts";
import { holdSignals } from "./hold-signals.ts";

export type Written = { readonly ok: true } | { readonly ok: false; readonly reason: string };

/**
 * Writes a whole file or nothing.
 *
 * The text goes to a neighbour first and takes the name in one step, so a full disk or a pulled plug
 * leaves either the old file or the new one; Ctrl-C waits for it. Without `force` a file that is there is never replaced,
 * not even one that appears while this one is being written.
 */
export async function writeNewFile(
  path: string,
  text: string | Uint8Array,
  force: boolean,
): Promise<Written> {
  const aside = join(dirname(path), `.${basename(path)}.${process.pid}.part`);
  const release = holdSignals();
  try {
    const file = await open(aside, "wx");
    try {
      await file.writeFile(text);
      await file.sync();
    } finally {
      await file.close();
    }
    if (force) await rename(aside, path);
    else await link(aside, path);
    return { ok: true };
  } catch (error) {
    const isTaken = !force && (error as NodeJS.ErrnoException).code === "EEXIST";
    return {
      ok: false,
      reason: isTaken ? "a file of that name is there already; --force replaces it" : reasonOf(error),
    };
  } finally {
    await rm(aside, { force: true }).catch(() => undefined);
    release();
  }
}
