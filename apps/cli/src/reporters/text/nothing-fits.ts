import { type Display, limitName, type NothingFitsDocument } from "@pintle/job";
import { cleanText } from "../../output/clean-text.ts";
import type { Page } from "./page.ts";
import { sentence } from "./sentence.ts";
import { slackBars } from "./slack-bars.ts";
import { wrapped } from "./wrapped.ts";

/** What stands in the way, how the nearest placement fails, and each single change that would help (rule G16). */
export function nothingFitsLines(
  { binding, changes, undecided, nearest }: NothingFitsDocument,
  display: Display,
  page: Page,
): string[] {
  const failing = (nearest?.limits ?? []).filter(({ state }) => state === "fail");
  const names = binding.map((id) => cleanText(limitName(id)));
  return [
    page.style.bad("Nothing within reach fits."),
    ...(names.length === 0 ? [] : wrapped(`In the way: ${names.join(", ")}.`, page.columns)),
    ...(failing.length === 0
      ? []
      : [
          "",
          page.style.strong("The placement that comes nearest breaks"),
          ...slackBars(failing, display, page),
        ]),
    "",
    ...changeLines(changes, page),
    ...(undecided.length === 0
      ? []
      : wrapped(
          `Not settled, the search stopped short of an answer: ${undecided.join(", ")}.`,
          page.columns,
        )),
  ];
}

function changeLines(changes: NothingFitsDocument["changes"], page: Page): string[] {
  if (changes.length === 0) return ["No single change that is looked at would make it fit."];
  const canApply = changes.filter(({ patch }) => patch !== null);
  const widest = Math.max(0, ...canApply.map(({ kind }) => kind.length));
  return [
    page.style.strong(
      changes.length === 1 ? "This change would make it fit" : "Any one of these changes would make it fit",
    ),
    ...changes.flatMap(({ text, patch, kind }) => {
      const before = `  ${(patch === null ? "" : kind).padEnd(widest)}  `;
      return wrapped(sentence(text), page.columns, before);
    }),
    ...(canApply[0] === undefined
      ? []
      : [
          ...wrapped("To make one of them and search again, and to write the changed job:", page.columns),
          `  ${page.again("place", "--apply", canApply[0].kind)}`,
          `  ${page.again("place", "--apply", canApply[0].kind, "--out", "changed.json")}`,
        ]),
  ];
}
