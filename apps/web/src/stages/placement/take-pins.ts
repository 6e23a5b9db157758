import type { Job, PinsDocument } from "@pintle/job";
import type { Change } from "../../jobs/change.ts";
import { onTape } from "./shown.ts";

/** Changes that take pins which a search found, on the grid of a tape, as the plan of a leaf. */
export function pinsTaken(job: Job, leafIndex: number, pins: PinsDocument): Change[] {
  const display = job.display ?? "metric";
  const tape = (mm: number) => onTape(mm, display);
  const at = ["leaves", leafIndex, "placement"] as const;
  if (job.leaves[leafIndex]?.placement === undefined) {
    const { postPin, leafPin, riseMm } = pins;
    return [
      {
        path: at,
        value: {
          postPin: { alongMm: tape(postPin.alongMm), outMm: tape(postPin.outMm) },
          leafPin: { alongMm: tape(leafPin.alongMm), offMm: tape(leafPin.offMm) },
          riseMm,
        },
      },
    ];
  }
  return [
    { path: [...at, "postPin", "alongMm"], value: tape(pins.postPin.alongMm) },
    { path: [...at, "postPin", "outMm"], value: tape(pins.postPin.outMm) },
    { path: [...at, "leafPin", "alongMm"], value: tape(pins.leafPin.alongMm) },
    { path: [...at, "leafPin", "offMm"], value: tape(pins.leafPin.offMm) },
  ];
}

/** Whether these pins, on the grid of a tape, are the plan already. */
export function arePlanned(job: Job, leafIndex: number, pins: PinsDocument): boolean {
  const plan = job.leaves[leafIndex]?.placement;
  if (plan === undefined) return false;
  const near = (a: number, b: number) => Math.abs(a - b) <= 0.85;
  return (
    near(plan.postPin.alongMm, pins.postPin.alongMm) &&
    near(plan.postPin.outMm, pins.postPin.outMm) &&
    near(plan.leafPin.alongMm, pins.leafPin.alongMm) &&
    near(plan.leafPin.offMm, pins.leafPin.offMm)
  );
}
