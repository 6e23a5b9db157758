import { type Display, type FindingUnit, limitName } from "@pintle/job";
import type { LimitDocument } from "../../documents.ts";
import { cleanText } from "../../output/clean-text.ts";
import { shownQuantity } from "./shown-quantity.ts";
import type { Style } from "./style.ts";

/** A full bar stands for this much slack; what has more is not what decides. */
const fullBar: Readonly<Record<FindingUnit, number>> = { mm: 100, deg: 30, ratio: 1 };
const barColumns = 20;

interface Row {
  readonly name: string;
  readonly value: string;
  readonly asked: string;
  readonly slack: string;
  readonly at: string;
  readonly bar: string;
  readonly isBroken: boolean;
}

/** Limits as bars of slack, tightest first, then what was not checked (rule I2). */
export function slackBars(limits: readonly LimitDocument[], display: Display, style: Style): string[] {
  const judged = limits.filter(({ slack }) => slack !== null);
  const rows = [...judged].sort((a, b) => tightness(a) - tightness(b)).map((limit) => row(limit, display));
  const widest = (key: "name" | "value" | "asked" | "slack" | "at") =>
    Math.max(0, ...rows.map((one) => one[key].length));
  const [name, value, asked, slack, at] = [
    widest("name"),
    widest("value"),
    widest("asked"),
    widest("slack"),
    widest("at"),
  ];
  const lines = rows.map((one) => {
    const facts = `${one.name.padEnd(name)}  ${one.value.padStart(value)}  ${one.asked.padEnd(asked)}`;
    const line = `${facts}  ${one.slack.padStart(slack)}  ${one.at.padStart(at)}  ${one.bar}`.trimEnd();
    return one.isBroken ? style.bad(line) : line;
  });
  return [...lines, ...unjudged(limits, style)];
}

function tightness({ slack, unit }: LimitDocument): number {
  return (slack ?? 0) / fullBar[unit];
}

function row(limit: LimitDocument, display: Display): Row {
  const { id, value, limit: asked, slack, unit, atDeg, state } = limit;
  const shown = (number: number | null) => (number === null ? "" : shownQuantity(number, unit, display));
  const isBroken = state === "fail";
  const columns = Math.min(barColumns, Math.max(0, Math.round(tightness(limit) * barColumns)));
  return {
    name: cleanText(limitName(id)),
    value: shown(value),
    asked: asked === null ? "" : `${isAtMost(limit) ? "at most " : "at least"} ${shown(asked)}`,
    slack: slack === null ? "" : isBroken ? `${shown(-slack)} short` : `${shown(slack)} to spare`,
    at: atDeg === null ? "" : `at ${shownQuantity(atDeg, "deg", display)}`,
    bar: isBroken ? "BROKEN" : "█".repeat(columns) || "▏",
    isBroken,
  };
}

/** Slack is limit − value where the limit is an upper one, value − limit where it is a lower one. */
function isAtMost({ value, limit, slack }: LimitDocument): boolean {
  if (value === null || limit === null || slack === null) return false;
  return Math.abs(limit - value - slack) < Math.abs(value - limit - slack);
}

function unjudged(limits: readonly LimitDocument[], style: Style): string[] {
  const named = (state: LimitDocument["state"]) =>
    limits.filter((one) => one.state === state).map(({ id }) => cleanText(limitName(id)));
  const [open, without] = [named("not-checked"), named("not-applicable")];
  return [
    ...(open.length > 0 ? [style.warn(`not checked: ${open.join(", ")}`)] : []),
    ...(without.length > 0 ? [style.quiet(`not applicable: ${without.join(", ")}`)] : []),
  ];
}
