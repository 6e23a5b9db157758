import type { Limit } from "@pintle/core";
import { limitName } from "@pintle/job";
import { useState } from "react";
import { text } from "../../strings/text.ts";
import type { Bench } from "./bench.ts";
import { tightestFirst, tightness } from "./gate.ts";
import { LimitOrigin } from "./limit-origin.tsx";
import { shown } from "./shown.ts";

/** Where the limit's mark stands on a bar, as a share of its length: left of it is broken. */
const markAt = 0.22;

/** Limits as bars of slack, tightest first; a tap swings the leaf there and marks the place. */
export function LimitList({ bench, limits }: { readonly bench: Bench; readonly limits: readonly Limit[] }) {
  const [open, setOpen] = useState<string | null>(null);
  const unjudged = limits.filter((limit) => limit.state === "not-checked");
  return (
    <section className="limits">
      <h3>{text("limits.heading")}</h3>
      <ol>
        {tightestFirst(limits).map((limit) => (
          <LimitRow
            key={limit.id}
            limit={limit}
            bench={bench}
            isOpen={open === limit.id}
            toggle={() => setOpen(open === limit.id ? null : limit.id)}
          />
        ))}
      </ol>
      {unjudged.length > 0 && (
        <p className="quiet">
          {text("limits.notChecked")}: {unjudged.map((limit) => limitName(limit.id)).join(", ")}.
        </p>
      )}
      <p className="caution">{text("limits.caution")}</p>
    </section>
  );
}

function LimitRow(props: {
  readonly limit: Limit;
  readonly bench: Bench;
  readonly isOpen: boolean;
  readonly toggle: () => void;
}) {
  const { limit, bench } = props;
  const { id, value, limit: bound, slack, atAngle, unit, state } = limit;
  if (value === null || bound === null || slack === null) return null;
  const amount = (si: number) =>
    unit === "ratio"
      ? String(Number(si.toFixed(2)))
      : shown(si, unit === "m" ? "length" : "angle", bench.display);
  const isUpper = Math.abs(bound - value - slack) < Math.abs(value - bound - slack);
  const isMarked = bench.marked === id;
  const show = () => {
    bench.mark(isMarked ? null : id);
    if (atAngle !== null && !isMarked) bench.setTheta(atAngle);
  };
  return (
    <li className={state === "fail" ? "limit fails" : "limit"}>
      <button
        type="button"
        className="limit-show"
        aria-pressed={isMarked}
        title={text("limits.show", { name: limitName(id) })}
        onClick={show}
      >
        <span className="limit-name">{withCapital(limitName(id))}</span>
        <span className="limit-slack">
          {text(slack < 0 ? "limits.short" : "limits.spare", { amount: amount(Math.abs(slack)) })}
        </span>
        <SlackBar limit={limit} />
        <span className="limit-facts">
          {text(isUpper ? "limits.upTo" : "limits.of", { value: amount(value), limit: amount(bound) })}
          {atAngle !== null && ` · ${text("limits.at", { angle: shown(atAngle, "angle", bench.display) })}`}
        </span>
      </button>
      <button
        type="button"
        className="origin-button"
        aria-expanded={props.isOpen}
        aria-label={`${text("limits.origin")}: ${limitName(id)}`}
        onClick={props.toggle}
      >
        ?
      </button>
      {props.isOpen && <LimitOrigin bench={bench} limit={limit} />}
    </li>
  );
}

/** The bar runs from the limit's mark to the right by the slack; broken, to the left by what is short. */
function SlackBar({ limit }: { readonly limit: Limit }) {
  const share = tightness(limit);
  const from = share < 0 ? Math.max(0, markAt + share * markAt * 3) : markAt;
  const to = share < 0 ? markAt : Math.min(1, markAt + share * (1 - markAt));
  return (
    <svg className="slack-bar" viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
      <line className="track" x1="0" x2="100" y1="5" y2="5" />
      <rect className="slack" x={from * 100} width={Math.max(0.8, (to - from) * 100)} y="2" height="6" />
      <line className="bound" x1={markAt * 100} x2={markAt * 100} y1="-2" y2="12" />
    </svg>
  );
}

const withCapital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1);
