import type { CheckDocument, Job, PlaceDocument, PlaceLeafDocument } from "@pintle/job";
import { cautions } from "@pintle/job";
import { countedVerdict } from "./check.ts";
import { jobHeading } from "./job-heading.ts";
import { leafHeading } from "./leaf-heading.ts";
import type { Page } from "./page.ts";
import { placementPlan } from "./place.ts";
import { sentence } from "./sentence.ts";
import { settingOutLines } from "./setting-out.ts";
import { wrapped } from "./wrapped.ts";

/** Narrower than the page, so that plan and sheet are seen together. */
const planColumns = 72;

/** The demo job on one screen: a verdict for each leaf, plan and setting out of the first, and what to try next. */
export function firstLook(job: Job, checked: CheckDocument, { leaves }: PlaceDocument, page: Page): string[] {
  return [
    ...jobHeading(job, page.style),
    ...wrapped(
      "This job is invented: the farm, its people and its rams. Nobody makes these rams.",
      page.columns,
    ),
    ...leaves.flatMap((leaf, index) => leafLook(job, leaf, index === 0, page)),
    "",
    ...wrapped(
      `${countedVerdict(checked.summary)} That is for the pins that the job holds now.`,
      page.columns,
    ),
    ...cautions.flatMap((words) => wrapped(words, page.columns)).map(page.style.quiet),
    "",
    page.style.strong("Two commands to try next"),
    `  ${page.again("check")}`,
    `  ${page.again("place", "--every-ram", "--map", "61x21")}`,
  ];
}

function leafLook(job: Job, { id, placements }: PlaceLeafDocument, isWhole: boolean, page: Page): string[] {
  const [best] = placements;
  if (best === undefined) return [...leafHeading(job, id, page), "No placement was found."];
  return [
    ...leafHeading(job, id, page),
    ...wrapped(sentence(best.reserveText), page.columns).map(page.style.strong),
    ...(isWhole
      ? [
          "",
          ...placementPlan(job, id, best, { ...page, columns: Math.min(page.columns, planColumns) }),
          "",
          ...settingOutLines(best, page),
        ]
      : []),
  ];
}
