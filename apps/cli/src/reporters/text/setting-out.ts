import { type PlacementDocument, plainReachName, setUpText } from "@pintle/job";
import { cleanText } from "../../output/clean-text.ts";
import type { Page } from "./page.ts";
import { wrapped } from "./wrapped.ts";

/** The sheet to drill by (rule G17): the position the ram is hung in, then each dimension, its checks marked. */
export function settingOutLines(
  { settingOut: { leafIs, dimensions }, postBracket, leafBracket }: PlacementDocument,
  page: Page,
): string[] {
  const brackets = [
    ...(postBracket === plainReachName ? [] : [`Post bracket: ${cleanText(postBracket)}.`]),
    ...(leafBracket === plainReachName ? [] : [`Leaf bracket: ${cleanText(leafBracket)}.`]),
  ];
  const rows = dimensions.map(({ text, checks }) => {
    // Amount and name are parted by two spaces; a level ram has no amount.
    const [first = "", ...rest] = cleanText(text).split("  ");
    return {
      amount: rest.length > 0 ? first : "",
      name: rest.join("  ") || first,
      isCheck: checks.length > 0,
    };
  });
  const widest = Math.max(0, ...rows.map(({ amount }) => amount.length));
  return [
    page.style.strong("Setting out"),
    ...wrapped(setUpText(leafIs), page.columns),
    ...(brackets.length > 0 ? wrapped(brackets.join(" "), page.columns) : []),
    ...rows.flatMap(({ amount, name, isCheck }) => {
      const before = `${isCheck ? "=" : " "} ${amount.padStart(widest)}  `;
      const [line = "", ...more] = wrapped(name, page.columns, before);
      return [`${page.style.strong(before)}${line.slice(before.length)}`, ...more];
    }),
  ];
}
