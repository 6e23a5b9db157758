import { type Job, readJob } from "@pintle/job";

const text = `{
  "format": "pintle-job", "version": 1, "title": "Quarry lane, east gate", "display": "metric",
  "site": { "rules": "us", "operatingWindMs": 12, "survivalWindMs": 35 },
  "leaves": [ {
    "id": "east", "hingeSide": "left", "swing": "toward", "openAngleDeg": 92,
    "lengthMm": 3600, "heelMm": 30, "thicknessMm": 50, "faceMm": 25, "heightMm": 1250, "groundGapMm": 90,
    "ram": "demo-ram-400", "painter": { "colour": "moss", "coats": [2, null, "primer"] },
    "placement": { "postPin": { "alongMm": -150, "outMm": 150 }, "leafPin": { "alongMm": 950, "offMm": 140 }, "riseMm": 0 },
    "reach": { "postPin": { "alongMm": [-260, -60], "outMm": [80, 320] }, "leafPin": { "alongMm": [600, 1400], "offMm": [85, 145] } },
    "need": { "clearanceMm": 50, "fixedClearanceMm": 15, "leverMm": 120, "forceFactor": 1.5 },
    "fixed": [ { "name": "pier", "outlineMm": [[-440, -215], [-40, -215], [-40, 70], [-440, 70]] } ]
  } ],
  "rams": [ { "id": "demo-ram-400", "retractedMm": 760, "strokeMm": 400, "retractedMarginMm": 10, "extendedMarginMm": 10,
    "tube": [ { "fromMm": -60, "toMm": 560, "halfWidthMm": 45 } ], "rodHalfWidthMm": 12, "thrustN": 1500, "speedMmS": 18, "supplyV": 24 } ]
}`;

/** The east gate of an invented farm with a key that the job file does not know: a fresh copy, for tests. */
export function demoJob(): Job {
  const read = readJob(text);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return read.job;
}
