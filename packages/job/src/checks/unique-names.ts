import type { Fault } from "../fault.ts";
import type { DocumentPart } from "./document-part.ts";

/** Faults for every part whose `key` repeats that of an earlier part in the list. */
export function repeatedNames(parts: readonly DocumentPart[], key: string, what: string): Fault[] {
  const seen = new Set<string>();
  return parts.flatMap((part) => {
    const name = part.text(key);
    if (name === null) return [];
    if (seen.has(name)) return [part.fault([key], `${what} that no earlier one has`)];
    seen.add(name);
    return [];
  });
}
