import { useState } from "react";
import type { Bench } from "../stages/placement/bench.ts";
import { shown } from "../stages/placement/shown.ts";
import { text } from "../strings/text.ts";
import { AngleChart } from "./angle-chart.tsx";
import { type Curve, extremes, valueAt } from "./curve.ts";

/** Lever arm, clearance and toe speed over the swing, on one angle axis: as curves or as a table. */
export function SwingCharts({ bench }: { readonly bench: Bench }) {
  const [asTable, setAsTable] = useState(false);
  const curves = curvesOf(bench);
  const { setTheta, openAngle } = bench;
  if (curves.length === 0) return null;
  return (
    <section className="charts" aria-label={text("charts.heading")}>
      <header>
        <h3>{text("charts.heading")}</h3>
        <button type="button" onClick={() => setTheta(0)}>
          {text("sheet.closed")}
        </button>
        <button type="button" onClick={() => setTheta(openAngle)}>
          {text("sheet.open")}
        </button>
        <button type="button" aria-pressed={asTable} onClick={() => setAsTable(!asTable)}>
          {text("charts.asTable")}
        </button>
      </header>
      {asTable ? (
        <SwingTable bench={bench} curves={curves} />
      ) : (
        <div className="chart-row">
          {curves.map((curve) => (
            <AngleChart key={curve.id} curve={curve} bench={bench} summary={summaryOf(curve, bench)} />
          ))}
        </div>
      )}
      <ul className={asTable ? "summaries" : "summaries unseen"}>
        {curves.map((curve) => (
          <li key={curve.id}>{summaryOf(curve, bench)}</li>
        ))}
      </ul>
    </section>
  );
}

function curvesOf({ gate }: Bench): Curve[] {
  if (gate === null) return [];
  const { series, prepared } = gate;
  const { need } = prepared.situation;
  const { theta } = series;
  return [
    {
      id: "lever",
      name: text("charts.lever"),
      what: "length",
      theta,
      values: series.lever,
      limit: need.lever,
    },
    {
      id: "clearance",
      name: text("charts.clearance"),
      what: "length",
      theta,
      values: series.leafGap,
      limit: need.clearance,
    },
    {
      id: "toeSpeed",
      name: text("charts.toeSpeed"),
      what: "toeSpeed",
      theta,
      values: series.toeSpeed,
      limit: null,
    },
  ];
}

function summaryOf(curve: Curve, { display }: Bench): string {
  const range = extremes(curve);
  const { name } = curve;
  if (range === null) return text("charts.none", { name, why: text("charts.noSpeed") });
  const amount = (si: number) => shown(si, curve.what, display);
  const values = {
    name,
    least: amount(range.least),
    leastAt: shown(range.leastAt, "angle", display),
    greatest: amount(range.greatest),
    greatestAt: shown(range.greatestAt, "angle", display),
  };
  return curve.limit === null || curve.limit === 0
    ? text("charts.summary", values)
    : text("charts.summaryWithLimit", { ...values, limit: amount(curve.limit) });
}

function SwingTable({ bench, curves }: { readonly bench: Bench; readonly curves: readonly Curve[] }) {
  const { openAngle, display } = bench;
  const step = (10 * Math.PI) / 180;
  const count = Math.floor(openAngle / step - 1e-6);
  const angles = [...Array.from({ length: count + 1 }, (_, i) => i * step), openAngle];
  return (
    <div className="table-scroll">
      <table>
        <thead>
          <tr>
            <th scope="col">{text("charts.angle")}</th>
            {curves.map((curve) => (
              <th key={curve.id} scope="col">
                {curve.name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {angles.map((angle) => (
            <tr key={angle}>
              <th scope="row">{shown(angle, "angle", display)}</th>
              {curves.map((curve) => {
                const value = valueAt(curve, angle);
                return <td key={curve.id}>{value === null ? "–" : shown(value, curve.what, display)}</td>;
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
