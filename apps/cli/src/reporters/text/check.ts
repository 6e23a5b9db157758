import type { Job } from "@pintle/job";
import type { CheckDocument, FindingDocument, State } from "../../documents.ts";
import { cleanText } from "../../output/clean-text.ts";
import { jobHeading } from "./job-heading.ts";
import type { Page } from "./page.ts";
import { planText } from "./plan.ts";
import type { Style } from "./style.ts";

/** What fails comes first, then what nobody looked at, then what holds. */
const order: readonly State[] = ["fail", "not-checked", "pass", "not-applicable"];

const words: Readonly<Record<State, string>> = {
  fail: "FAILS",
  "not-checked": "not checked",
  pass: "holds",
  "not-applicable": "not applicable",
};

export function checkText(job: Job, { findings }: CheckDocument, page: Page): string[] {
  const leafIds = [...new Set(findings.map(({ leaf }) => leaf))];
  return [
    ...jobHeading(job, page.style),
    ...leafIds.flatMap((leaf) => {
      const ofLeaf = findings.filter((finding) => finding.leaf === leaf);
      return [
        "",
        page.style.strong(leaf === null ? "The job" : `Leaf ${cleanText(leaf)}`),
        ...order.flatMap((state) =>
          ofLeaf.filter((finding) => finding.state === state).flatMap(lines(page.style)),
        ),
        ...(page.plan && leaf !== null ? ["", ...placedPlan(job, leaf, page.columns)] : []),
      ];
    }),
    "",
    verdict(findings, page.style),
  ];
}

function lines(style: Style) {
  const paint: Readonly<Record<State, (text: string) => string>> = {
    fail: style.bad,
    "not-checked": style.warn,
    pass: style.good,
    "not-applicable": style.quiet,
  };
  return ({ state, rule, text }: FindingDocument): string[] => [
    `  ${paint[state](words[state].padEnd(14))}  ${cleanText(text)} ${style.quiet(`[${cleanText(rule)}]`)}`,
  ];
}

/** How many findings of each state, in words. */
function verdict(findings: readonly FindingDocument[], style: Style): string {
  const count = (state: State) => findings.filter((finding) => finding.state === state).length;
  const [fails, holds] = [count("fail"), count("pass")];
  const counted = `${fails} ${fails === 1 ? "fails" : "fail"}, ${holds} ${holds === 1 ? "holds" : "hold"}, ${count("not-checked")} not checked`;
  return fails > 0 ? style.bad(counted) : counted;
}

function placedPlan(job: Job, id: string, columns: number): string[] {
  const leaf = job.leaves.find((one) => one.id === id);
  if (leaf === undefined) return [];
  const ram = (job.rams ?? []).find((one) => one.id === leaf.ram) ?? null;
  return planText({ leaf, placement: leaf.placement ?? null, ram }, columns);
}
