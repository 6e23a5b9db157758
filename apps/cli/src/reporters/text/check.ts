import type { CheckDocument, Finding, FindingSummary, Job } from "@pintle/job";
import { cleanText } from "../../output/clean-text.ts";
import { closing } from "./closing.ts";
import { jobHeading } from "./job-heading.ts";
import { leafHeading } from "./leaf-heading.ts";
import type { Page } from "./page.ts";
import { planText } from "./plan.ts";
import { sentence } from "./sentence.ts";
import { slackBars } from "./slack-bars.ts";
import { wrapped } from "./wrapped.ts";

/** Leaf by leaf the verdict, what fails in words and every limit as a bar; then what nobody looked at, and the count. */
export function checkText(job: Job, { findings, summary }: CheckDocument, page: Page): string[] {
  const leafIds = [...new Set(findings.map(({ leaf }) => leaf))];
  return [
    ...jobHeading(job, page.style),
    ...leafIds.flatMap((leaf) => [
      ...leafHeading(job, leaf, page),
      ...leafFindings(
        findings.filter((finding) => finding.leaf === leaf),
        job,
        page,
      ),
      ...(page.plan ? ["", ...placedPlan(job, leaf, page)] : []),
    ]),
    ...notCheckedLines(findings, leafIds, page),
    "",
    verdict(summary, page),
    ...closing(job, page),
  ];
}

function leafFindings(findings: readonly Finding[], job: Job, page: Page): string[] {
  const reserve = findings.find(({ id }) => id === "reserve");
  const others = findings.filter((finding) => finding !== reserve);
  const measured = others.filter(({ slack }) => slack !== null);
  const inWords = (state: Finding["state"]) =>
    others.filter((one) => one.state === state && one.slack === null);
  const failures = others.filter(({ state }) => state === "fail");
  const paint = reserve?.state === "fail" ? page.style.bad : page.style.strong;
  return [
    ...(reserve === undefined
      ? []
      : wrapped(sentence(reserve.text.replace(/^Reserve: /, "")), page.columns).map(paint)),
    ...failures.flatMap(({ text }) => wrapped(cleanText(text), page.columns, "FAILS: ").map(page.style.bad)),
    ...(measured.length > 0 ? ["", ...slackBars(measured, job.display ?? "metric", page)] : []),
    ...[...inWords("pass"), ...inWords("not-applicable")].flatMap(({ text }) =>
      wrapped(cleanText(text), page.columns),
    ),
  ];
}

/** What was not checked, once where it is the same for every leaf. */
function notCheckedLines(findings: readonly Finding[], leafIds: readonly string[], page: Page): string[] {
  const leavesByText = new Map<string, string[]>();
  for (const { state, text, leaf } of findings) {
    if (state !== "not-checked") continue;
    const words = text.replace(": not checked; ", ": ");
    leavesByText.set(words, [...(leavesByText.get(words) ?? []), leaf]);
  }
  if (leavesByText.size === 0) return [];
  const lines = [...leavesByText].flatMap(([words, leaves]) => {
    const of = leaves.length === leafIds.length ? "" : `Leaf ${leaves.join(", ")}: `;
    return wrapped(cleanText(of + words), page.columns - 2, "- ");
  });
  return ["", page.style.strong("Not checked"), ...lines];
}

function verdict(summary: FindingSummary, { style }: Page): string {
  return (summary.fail > 0 ? style.bad : style.strong)(countedVerdict(summary));
}

export function countedVerdict({ fail, pass, notChecked }: FindingSummary): string {
  const failing = fail === 0 ? "Nothing fails" : `${fail} ${fail === 1 ? "limit fails" : "limits fail"}`;
  return `${failing}; ${pass} ${pass === 1 ? "holds" : "hold"}, ${notChecked} not checked.`;
}

function placedPlan(job: Job, id: string, page: Page): string[] {
  const leaf = job.leaves.find((one) => one.id === id);
  if (leaf === undefined) return [];
  const ram = (job.rams ?? []).find((one) => one.id === leaf.ram) ?? null;
  return planText({ leaf, placement: leaf.placement ?? null, ram, display: job.display ?? "metric" }, page);
}
