import { assumedValues, cautions, type Job } from "@pintle/job";
import { cleanText } from "../../output/clean-text.ts";
import type { Page } from "./page.ts";
import { wrapped } from "./wrapped.ts";

/** The end of a report: how much of it rests on values that nobody measured, and what a calculation is not. */
export function closing(job: Job, page: Page): string[] {
  return [
    "",
    ...assumedLines(job, page),
    ...cautions.flatMap((words) => wrapped(words, page.columns)).map(page.style.quiet),
  ];
}

function assumedLines(job: Job, page: Page): string[] {
  const assumed = assumedValues(job);
  if (assumed.length === 0) return [];
  const keysByOwner = new Map<string, Set<string>>();
  for (const { path } of assumed) {
    const { owner, key } = partOf(job, path);
    keysByOwner.set(owner, (keysByOwner.get(owner) ?? new Set()).add(key));
  }
  const counted = assumed.length === 1 ? "1 value is" : `${assumed.length} values are`;
  return [
    page.style.strong(`${counted} only assumed, not measured`),
    ...[...keysByOwner].flatMap(([owner, keys]) =>
      wrapped(cleanText(`${owner}: ${[...keys].join(", ")}`), page.columns, "- "),
    ),
  ];
}

/** `leaves[1].reach.postPin.outMm` is the reach of a leaf; all rams together count as one owner. */
function partOf(job: Job, path: string): { readonly owner: string; readonly key: string } {
  const [first = "", key = first] = path.split(".");
  const [group = "", index] = first.split("[");
  if (group === "leaves")
    return { owner: `leaf ${job.leaves[Number.parseInt(index ?? "", 10)]?.id ?? ""}`, key };
  return { owner: group, key: key.split("[")[0] ?? key };
}
