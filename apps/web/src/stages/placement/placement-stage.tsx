import type { Job } from "@pintle/job";
import { proxy } from "comlink";
import { lazy, Suspense, useMemo, useState } from "react";
import { SwingCharts } from "../../charts/swing-charts.tsx";
import type { MapCell } from "../../drawing/map-cell.ts";
import { Sheet } from "../../drawing/sheet.tsx";
import { text } from "../../strings/text.ts";
import { useSearch } from "../../worker/use-search.ts";
import { BenchContext, type ChangeJob, useNewBench } from "./bench.ts";
import { MapControl } from "./map-control.tsx";
import { Panel } from "./panel.tsx";
import { useQuestion, useWhenSettled } from "./question.ts";
import { pinsTaken } from "./take-pins.ts";

const BuiltLayer = lazy(async () => ({
  default: (await import("../../drawing/built-layer.tsx")).BuiltLayer,
}));
const MapLayer = lazy(async () => ({ default: (await import("../../drawing/map-layer.tsx")).MapLayer }));

/** Fine enough for smooth contours, coarse enough to be there in a few seconds. */
const mapSize = { columns: 19, rows: 19 };

/** The drawing table for the two pins: the sheet, what decides beside it, the swing below. */
export function PlacementStage(props: {
  readonly job: Job;
  readonly leafIndex: number;
  readonly change: ChangeJob;
}) {
  const { job, leafIndex, change } = props;
  const bench = useNewBench(job, leafIndex, change);
  const [isMapShown, showMap] = useState(false);
  const map = useSearch((searches, tell: (share: number) => void) =>
    searches.map(job, leafIndex, mapSize, proxy(tell)),
  );
  useWhenSettled(useQuestion(job, leafIndex, false), isMapShown, map.start);
  const found = isMapShown && map.search.state === "done" ? map.search.found : null;
  const lookAt = useMemo(
    () =>
      found === null
        ? null
        : [0, -1].map((end) => ({
            x: (found.along.at(end) ?? 0) * 1000,
            y: (found.out.at(end) ?? 0) * 1000,
          })),
    [found],
  );
  const hasReadings = (bench.leaf.asBuilt?.readings.length ?? 0) > 0;
  const take = ({ post, leafPin }: MapCell) => {
    if (leafPin === null) return;
    const pins = {
      postPin: { alongMm: post.x, outMm: post.y },
      leafPin,
      riseMm: job.leaves[leafIndex]?.placement?.riseMm ?? 0,
    };
    change(pinsTaken(job, leafIndex, pins), text("edit.place"));
  };
  return (
    <BenchContext value={bench}>
      <div className="bench">
        <Sheet
          lookAt={lookAt}
          layer={(on) => (
            <Suspense>
              {found !== null && <MapLayer map={found} bench={bench} on={on} take={take} />}
              {hasReadings && <BuiltLayer bench={bench} on={on} />}
            </Suspense>
          )}
        />
        <Panel
          map={
            <MapControl
              bench={bench}
              search={map.search}
              isShown={isMapShown}
              show={() => showMap(true)}
              hide={() => showMap(false)}
            />
          }
        />
        <SwingCharts bench={bench} />
      </div>
    </BenchContext>
  );
}
