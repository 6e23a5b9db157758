import { type Fault, faultInWords } from "@pintle/job";
import { shortCleanText } from "../../output/clean-text.ts";

const longestLine = 400;

/** One line a fault: file, path in the file, what was found, what was expected (rule I16). */
export function faultText(name: string, faults: readonly Fault[]): string[] {
  return faults.map((fault) => shortCleanText(`${name}: ${faultInWords(fault)}`, longestLine));
}
