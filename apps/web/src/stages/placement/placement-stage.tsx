import type { Job } from "@pintle/job";
import { SwingCharts } from "../../charts/swing-charts.tsx";
import { Sheet } from "../../drawing/sheet.tsx";
import { BenchContext, type ChangeJob, useNewBench } from "./bench.ts";
import { Panel } from "./panel.tsx";

/** The drawing table for the two pins: the sheet, what decides beside it, the swing below. */
export function PlacementStage(props: {
  readonly job: Job;
  readonly leafIndex: number;
  readonly change: ChangeJob;
}) {
  const bench = useNewBench(props.job, props.leafIndex, props.change);
  return (
    <BenchContext value={bench}>
      <div className="bench">
        <Sheet />
        <Panel />
        <SwingCharts bench={bench} />
      </div>
    </BenchContext>
  );
}
