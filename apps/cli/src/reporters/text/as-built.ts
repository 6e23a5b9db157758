import type { Job } from "@pintle/job";
import type { AsBuiltDocument } from "../../documents.ts";
import { cleanText } from "../../output/clean-text.ts";
import { jobHeading } from "./job-heading.ts";
import type { Page } from "./page.ts";
import { planText } from "./plan.ts";
import { sentence } from "./sentence.ts";
import { slackBars } from "./slack-bars.ts";

/** Where the pins really are, and what that means for the limits (rule G18). */
export function asBuiltText(job: Job, { leaves }: AsBuiltDocument, page: Page): string[] {
  const display = job.display ?? "metric";
  return [
    ...jobHeading(job, page.style),
    ...leaves.flatMap(({ id, lines, reserveText, limits, pins }) => {
      const leaf = job.leaves.find((one) => one.id === id);
      const ram = (job.rams ?? []).find((one) => one.id === leaf?.ram) ?? null;
      return [
        "",
        page.style.strong(`Leaf ${cleanText(id)}`),
        ...lines.map((line) => `  ${cleanText(line)}`),
        ...(reserveText === null ? [] : ["", sentence(reserveText)]),
        ...(limits.length > 0 ? ["", ...slackBars(limits, display, page.style)] : []),
        ...(page.plan && leaf !== undefined && pins !== null
          ? ["", ...planText({ leaf, placement: pins, ram }, page.columns)]
          : []),
      ];
    }),
  ];
}
