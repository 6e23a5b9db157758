import { type Job, readJob } from "@pintle/job";

/** One leaf of an invented farm with an invented ram; `change` alters the job before it is judged. */
// biome-ignore lint/suspicious/noExplicitAny: tests change what they like
export function sampleJob(change: (job: any) => void = () => {}): Job {
  const job = {
    format: "pintle-job",
    version: 1,
    title: "Windle Farm, yard gate",
    note: "Invented: the farm, its people and the ram.",
    display: "metric",
    leaves: [
      {
        id: "yard",
        hingeSide: "left",
        swing: "toward",
        openAngleDeg: 90,
        lengthMm: 3600,
        heelMm: 30,
        thicknessMm: 50,
        faceMm: 25,
        ram: "ram-a",
        placement: { postPin: { alongMm: -150, outMm: 160 }, leafPin: { alongMm: 907, offMm: 85 } },
        need: { leverMm: 100 },
        post: { gatewayFaceAlongMm: -40, ramFaceOutMm: 70 },
        fixed: [
          {
            name: "pier",
            outlineMm: [
              [-440, -215],
              [-40, -215],
              [-40, 70],
              [-440, 70],
            ],
          },
        ],
      },
    ],
    rams: [
      {
        id: "ram-a",
        retractedMm: 740,
        strokeMm: 400,
        tube: [{ fromMm: -60, toMm: 560, halfWidthMm: 45 }],
        rodHalfWidthMm: 12,
        speedMmS: 18,
      },
    ],
  };
  change(job);
  const read = readJob(JSON.stringify(job));
  if (!read.ok) throw new Error(`the sample job is none: ${JSON.stringify(read.faults)}`);
  return read.job;
}
