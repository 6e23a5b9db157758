import type { Finding, FindingSummary, Job } from "@pintle/job";
import type { CheckDocument } from "../../documents.ts";
import { cleanText } from "../../output/clean-text.ts";
import { jobHeading } from "./job-heading.ts";
import type { Page } from "./page.ts";
import { planText } from "./plan.ts";
import { slackBars } from "./slack-bars.ts";
import type { Style } from "./style.ts";

/** What fails in words, every limit as a bar, what nobody looked at in words, and the count. */
export function checkText(job: Job, { findings, summary }: CheckDocument, page: Page): string[] {
  const leafIds = [...new Set(findings.map(({ leaf }) => leaf))];
  return [
    ...jobHeading(job, page.style),
    ...leafIds.flatMap((leaf) => {
      const ofLeaf = findings.filter((finding) => finding.leaf === leaf);
      return [
        "",
        page.style.strong(`Leaf ${cleanText(leaf)}`),
        ...leafFindings(ofLeaf, job, page.style),
        ...(page.plan ? ["", ...placedPlan(job, leaf, page.columns)] : []),
      ];
    }),
    "",
    verdict(summary, page.style),
  ];
}

function leafFindings(findings: readonly Finding[], job: Job, style: Style): string[] {
  const inWords = (state: Finding["state"], paint: (text: string) => string) =>
    findings.filter((one) => one.state === state).map(({ text }) => paint(cleanText(text)));
  const measured = findings.filter(({ slack }) => slack !== null);
  const holdsWithoutNumber = findings.filter(({ slack, state }) => slack === null && state === "pass");
  const bars = slackBars(measured, job.display ?? "metric", style);
  const failures = inWords("fail", (text) => style.bad(`FAILS: ${text}`));
  const open = inWords("not-checked", style.warn);
  return [
    ...failures,
    ...spaced(failures, bars),
    ...holdsWithoutNumber.map(({ text }) => cleanText(text)),
    ...spaced(bars, open),
    ...inWords("not-applicable", style.quiet),
  ];
}

/** An empty line between two parts that are both there. */
function spaced(before: readonly string[], after: readonly string[]): readonly string[] {
  return before.length > 0 && after.length > 0 ? ["", ...after] : after;
}

function verdict({ fail, pass, notChecked }: FindingSummary, style: Style): string {
  const counted = `${fail} ${fail === 1 ? "fails" : "fail"}, ${pass} ${pass === 1 ? "holds" : "hold"}, ${notChecked} not checked`;
  return fail > 0 ? style.bad(counted) : counted;
}

function placedPlan(job: Job, id: string, columns: number): string[] {
  const leaf = job.leaves.find((one) => one.id === id);
  if (leaf === undefined) return [];
  const ram = (job.rams ?? []).find((one) => one.id === leaf.ram) ?? null;
  return planText({ leaf, placement: leaf.placement ?? null, ram }, columns);
}
