import type { AsBuiltDocument, Job } from "@pintle/job";
import { cleanText } from "../../output/clean-text.ts";
import { closing } from "./closing.ts";
import { jobHeading } from "./job-heading.ts";
import { leafHeading } from "./leaf-heading.ts";
import type { Page } from "./page.ts";
import { planText } from "./plan.ts";
import { sentence } from "./sentence.ts";
import { slackBars } from "./slack-bars.ts";
import { wrapped } from "./wrapped.ts";

/** Where the pins really are, what that means for the limits, and what would mend it (rule G18). */
export function asBuiltText(job: Job, { leaves }: AsBuiltDocument, page: Page): string[] {
  return [
    ...jobHeading(job, page.style),
    ...leaves.flatMap((leaf) => [...leafHeading(job, leaf.id, page), ...builtLeaf(job, leaf, page)]),
    ...closing(job, page),
  ];
}

function builtLeaf(job: Job, found: AsBuiltDocument["leaves"][number], page: Page): string[] {
  const display = job.display ?? "metric";
  const { id, lines, reserveText, reserveMm, limits, pins } = found;
  const leaf = job.leaves.find((one) => one.id === id);
  const ram = (job.rams ?? []).find((one) => one.id === leaf?.ram) ?? null;
  const paint = (reserveMm ?? 0) < 0 ? page.style.bad : page.style.strong;
  return [
    ...(reserveText === null ? [] : wrapped(sentence(reserveText), page.columns).map(paint)),
    ...lines.flatMap((line) => wrapped(cleanText(line), page.columns, "- ")),
    ...(limits.length > 0 ? ["", ...slackBars(limits, display, page)] : []),
    ...(page.plan && leaf !== undefined && pins !== null
      ? ["", ...planText({ leaf, placement: pins, ram, display }, page)]
      : []),
  ];
}
