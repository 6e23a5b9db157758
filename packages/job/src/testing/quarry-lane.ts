/** The east gate of an invented farm, with an invented ram: a whole job as text, for tests. */
export const quarryLaneText = `{
  "format": "pintle-job", "version": 1, "title": "Quarry lane, east gate", "display": "metric",
  "site": { "rules": "us", "latitudeDeg": 0, "longitudeDeg": 0, "elevationM": 0, "operatingWindMs": 12, "survivalWindMs": 35 },
  "leaves": [ {
    "id": "east", "hingeSide": "left", "swing": "toward", "openAngleDeg": 92,
    "lengthMm": 3600, "heelMm": 30, "thicknessMm": 50, "faceMm": 25, "heightMm": 1250, "groundGapMm": 90,
    "ram": "demo-ram-400",
    "placement": { "postPin": { "alongMm": -150, "outMm": 150 }, "leafPin": { "alongMm": 950, "offMm": 140 }, "riseMm": 0 },
    "reach": { "postPin": { "alongMm": [-260, -60], "outMm": [80, 320] }, "leafPin": { "alongMm": [600, 1400], "offMm": [85, 145] } },
    "need": { "clearanceMm": 50, "fixedClearanceMm": 15, "leverMm": 120, "forceFactor": 1.5 },
    "fixed": [ { "name": "pier", "outlineMm": [[-440, -215], [-40, -215], [-40, 70], [-440, 70]] } ]
  } ],
  "rams": [ { "id": "demo-ram-400", "retractedMm": 760, "strokeMm": 400, "retractedMarginMm": 10, "extendedMarginMm": 10,
    "tube": [ { "fromMm": -60, "toMm": 560, "halfWidthMm": 45 } ], "rodHalfWidthMm": 12, "thrustN": 1500, "speedMmS": 18, "supplyV": 24 } ]
}`;

/** A fresh copy of the same job, free to be changed. */
// biome-ignore lint/suspicious/noExplicitAny: tests put wrong values into it on purpose
export function quarryLane(): any {
  return JSON.parse(quarryLaneText);
}
