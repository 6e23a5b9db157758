import { jsonText } from "@pintle/job";

/** A document as `--json` prints it: keys in the order in which the operation made them, so that runs compare. */
export function documentText(document: unknown): string {
  return jsonText(document);
}
