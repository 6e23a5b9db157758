import type { Limit } from "@pintle/core";
import { fromSi } from "@pintle/job";
import type { Bench } from "../stages/placement/bench.ts";
import { shown } from "../stages/placement/shown.ts";
import { Note } from "./marks.tsx";
import type { Projection } from "./projection.ts";

/** Where on the plan the marked limit is tightest, and every place where a limit is broken. */
export function LimitMarks({ bench, on }: { readonly bench: Bench; readonly on: Projection }) {
  const { gate, marked, theta } = bench;
  if (gate === null) return null;
  const near = (limit: Limit) => limit.atAngle !== null && Math.abs(limit.atAngle - theta) < 0.03;
  const limits = gate.limits.filter(
    (limit) => limit.where !== null && (limit.id === marked || (limit.state === "fail" && near(limit))),
  );
  return (
    <g>
      {limits.map((limit) => (
        <Mark key={limit.id} limit={limit} bench={bench} on={on} />
      ))}
    </g>
  );
}

function Mark({
  limit,
  bench,
  on,
}: {
  readonly limit: Limit;
  readonly bench: Bench;
  readonly on: Projection;
}) {
  if (limit.where === null) return null;
  const at = on.toScreen({ x: fromSi(limit.where.x, "mm"), y: fromSi(limit.where.y, "mm") });
  const left = at.x > on.width * 0.7;
  return (
    <g className="limit-mark">
      <circle cx={at.x} cy={at.y} r="11" />
      <line x1={at.x + (left ? -11 : 11)} y1={at.y} x2={at.x + (left ? -34 : 34)} y2={at.y} />
      {limit.value !== null && (
        <Note at={{ x: at.x + (left ? -38 : 38), y: at.y + 4 }} anchor={left ? "end" : "start"}>
          {shown(limit.value, "length", bench.display)}
        </Note>
      )}
    </g>
  );
}
