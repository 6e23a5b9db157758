import { type Display, type FindingUnit, type LimitDocument, limitName } from "@pintle/job";
import { cleanText } from "../../output/clean-text.ts";
import type { Page } from "./page.ts";
import { shownQuantity } from "./shown-quantity.ts";
import { wrapped } from "./wrapped.ts";

/** A full bar stands for this much slack; what has more is not what decides. */
const fullBar: Readonly<Record<FindingUnit, number>> = { mm: 100, deg: 30, ratio: 1 };
const longestBar = 20;
const shortestBar = 12;
const narrowestName = 20;
/** Between two columns. */
const gap = "  ";

const eighths = ["", "▏", "▎", "▍", "▌", "▋", "▊", "▉"];

interface Row {
  readonly name: string;
  readonly value: string;
  readonly asked: string;
  readonly slack: string;
  readonly at: string;
  /** Share of a full bar, 0 … 1; null when the limit is broken. */
  readonly share: number | null;
}

const head: Row = { name: "", value: "is", asked: "needs", slack: "to spare", at: "at", share: 0 };

/** Limits as bars of slack, tightest first, each from its limit to the right; then what was not checked (rule I2). */
export function slackBars(limits: readonly LimitDocument[], display: Display, page: Page): string[] {
  const judged = limits.filter(({ slack }) => slack !== null);
  const rows = [...judged].sort((a, b) => tightness(a) - tightness(b)).map((limit) => row(limit, display));
  return [...(rows.length > 0 ? table(rows, page) : []), ...unjudged(limits, page)];
}

function tightness({ slack, unit }: LimitDocument): number {
  return (slack ?? 0) / fullBar[unit];
}

function row(limit: LimitDocument, display: Display): Row {
  const { id, value, limit: asked, slack, unit, atDeg, state } = limit;
  const shown = (number: number | null) => (number === null ? "" : shownQuantity(number, unit, display));
  return {
    name: cleanText(limitName(id)),
    value: shown(value),
    asked: asked === null ? "" : `${isAtMost(limit) ? "≤" : "≥"} ${shown(asked)}`,
    slack: shown(slack),
    at: atDeg === null ? "" : shownQuantity(atDeg, "deg", display),
    share: state === "fail" ? null : Math.min(1, Math.max(0, tightness(limit))),
  };
}

/** Slack is limit − value where the limit is an upper one, value − limit where it is a lower one. */
function isAtMost({ value, limit, slack }: LimitDocument): boolean {
  if (value === null || limit === null || slack === null) return false;
  return Math.abs(limit - value - slack) < Math.abs(value - limit - slack);
}

function table(rows: readonly Row[], page: Page): string[] {
  const all = [head, ...rows];
  const widest = (key: "name" | "value" | "asked" | "slack" | "at") =>
    Math.max(...all.map((one) => one[key].length));
  const [value, asked, slack, at] = [widest("value"), widest("asked"), widest("slack"), widest("at")];
  const facts = value + asked + slack + at + 5 * gap.length;
  const name = Math.min(widest("name"), Math.max(narrowestName, page.columns - facts - shortestBar));
  const longest = Math.min(longestBar, Math.max(shortestBar, page.columns - facts - name)) - 1;
  const inColumns = (one: Row, label: string) =>
    [
      label.padEnd(name),
      one.value.padStart(value),
      one.asked.padEnd(asked),
      one.slack.padStart(slack),
      one.at.padStart(at),
    ].join(gap);
  const lines = rows.flatMap((one) => {
    const [label = "", ...more] = wrapped(one.name, name);
    const line = inColumns(one, label);
    const drawn =
      one.share === null
        ? page.style.bad(`${line}${gap}BROKEN`)
        : `${line}${gap}│${page.style.accent(bar(one.share * longest))}`;
    return [drawn, ...more];
  });
  return [page.style.quiet(inColumns(head, "").trimEnd()), ...lines];
}

/** A bar of so many columns, to an eighth of one. */
function bar(columns: number): string {
  const whole = Math.floor(columns);
  return "█".repeat(whole) + (eighths[Math.floor((columns - whole) * eighths.length)] ?? "");
}

function unjudged(limits: readonly LimitDocument[], page: Page): string[] {
  const named = (state: LimitDocument["state"]) =>
    limits.filter((one) => one.state === state).map(({ id }) => cleanText(limitName(id)));
  const [open, without] = [named("not-checked"), named("not-applicable")];
  return [
    ...(open.length > 0 ? wrapped(`Not checked: ${open.join(", ")}.`, page.columns) : []),
    ...(without.length > 0 ? wrapped(`Does not apply: ${without.join(", ")}.`, page.columns) : []),
  ];
}
