import type { Fault } from "../fault.ts";
import { documentPart } from "./document-part.ts";
import { leafFaults } from "./leaf-checks.ts";
import { ramFaults } from "./ram-checks.ts";
import { repeatedNames } from "./unique-names.ts";

/**
 * Faults between values of a job document: ids, references, and numbers that cannot hold together.
 * The document may be malformed; values that `single` names already are left out of the comparison.
 */
export function jobFaults(document: unknown, single: readonly Fault[]): Fault[] {
  const job = documentPart(document, new Set(single.map((fault) => fault.path)));
  const leaves = job.list("leaves");
  const rams = job.list("rams");
  const faults = [
    ...repeatedNames(leaves, "id", "an id"),
    ...repeatedNames(rams, "id", "an id"),
    ...rams.flatMap(ramFaults),
    ...leaves.flatMap((leaf) => leafFaults(leaf, rams)),
  ];
  // Two leaves that share a ram would report that ram twice.
  const unique = new Map(faults.map((fault) => [`${fault.path} ${fault.expected}`, fault]));
  return [...unique.values()];
}
