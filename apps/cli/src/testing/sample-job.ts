/** A small job of an invented farm, as text; `change` alters it first. */
export function sampleJob(
  change: (job: Record<string, unknown>, leaf: Record<string, unknown>) => void = () => {},
): string {
  const leaf: Record<string, unknown> = {
    id: "yard",
    hingeSide: "left",
    swing: "toward",
    openAngleDeg: 90,
    lengthMm: 3600,
    heelMm: 30,
    thicknessMm: 50,
    faceMm: 25,
    ram: "ram-a",
    placement: { postPin: { alongMm: -150, outMm: 150 }, leafPin: { alongMm: 907.2, offMm: 85 } },
  };
  const job: Record<string, unknown> = {
    format: "pintle-job",
    version: 1,
    title: "Windle Farm, yard gate (invented)",
    display: "metric",
    leaves: [leaf],
    rams: [
      {
        id: "ram-a",
        retractedMm: 740,
        strokeMm: 400,
        tube: [{ fromMm: -60, toMm: 560, halfWidthMm: 45 }],
        rodHalfWidthMm: 12,
      },
    ],
  };
  change(job, leaf);
  return JSON.stringify(job, null, 2);
}
