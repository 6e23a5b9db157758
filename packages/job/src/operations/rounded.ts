import type { Limit, Placement, TradeOffs } from "@pintle/core";
import { fromSi } from "../quantity/units.ts";
import type { LimitDocument, PinsDocument, TradeOffsDocument } from "./documents.ts";

const millionths = (value: number): number => Math.round(value * 1e6) / 1e6 + 0;

/** Metres as millimetres, radians as degrees and a bare number, all to a millionth: what documents carry. */
export const inMm = (metres: number): number => millionths(fromSi(metres, "mm"));
export const inDeg = (radians: number): number => millionths(fromSi(radians, "deg"));
export const bare = millionths;

/** NaN and infinity have no place in JSON: null. */
export const orNull = (value: number | null, convert: (value: number) => number): number | null =>
  value === null || !Number.isFinite(value) ? null : convert(value);

export const pinsDocument = ({ postPin, leafPin, rise }: Placement): PinsDocument => ({
  postPin: { alongMm: inMm(postPin.along), outMm: inMm(postPin.out) },
  leafPin: { alongMm: inMm(leafPin.along), offMm: inMm(leafPin.off) },
  riseMm: inMm(rise),
});

const units = { m: "mm", rad: "deg", ratio: "ratio" } as const;
const converted = { m: inMm, rad: inDeg, ratio: bare } as const;

export function limitDocument(limit: Limit): LimitDocument {
  const convert = converted[limit.unit];
  return {
    id: limit.id,
    state: limit.state,
    unit: units[limit.unit],
    value: orNull(limit.value, convert),
    limit: orNull(limit.limit, convert),
    slack: orNull(limit.slack, convert),
    atDeg: orNull(limit.atAngle, inDeg),
  };
}

export const tradeOffsDocument = (tradeOffs: TradeOffs): TradeOffsDocument => ({
  leastLeverMm: inMm(tradeOffs.leastLever),
  forceMargin: orNull(tradeOffs.forceMargin, bare),
  toeSpeedMmS: orNull(tradeOffs.toeSpeed, inMm),
  thrustAtToeN: orNull(tradeOffs.thrustAtToe, bare),
  leafClearanceMm: orNull(tradeOffs.leafClearance, inMm),
  openingTimeS: orNull(tradeOffs.openingTime, bare),
  runOutMm: inMm(tradeOffs.runOut),
  standsOutMm: inMm(tradeOffs.standsOut),
});
