export { type Fault, faultInWords, faultLines, pathInWords } from "./fault.ts";
export { measureText } from "./findings/as-built-wording.ts";
export { cautions } from "./findings/cautions.ts";
export { changeText } from "./findings/change-wording.ts";
export {
  type Finding,
  type FindingSummary,
  type FindingUnit,
  findingSummary,
  notChecked,
} from "./findings/finding.ts";
export { limitFindings } from "./findings/limit-findings.ts";
export { limitName } from "./findings/limit-names.ts";
export { limitText } from "./findings/limit-wording.ts";
export { type PinErrors, pinErrorText, type ReserveToWord, reserveText } from "./findings/reserve-wording.ts";
export {
  type DimensionWords,
  dimensionText,
  dimensionWords,
  setUpText,
} from "./findings/setting-out-wording.ts";
export { kindText, tradeOffPhrases } from "./findings/trade-off-wording.ts";
export { unsuitedText } from "./findings/unsuited-wording.ts";
export {
  type JsonObject,
  type Migrated,
  type Migration,
  migrate,
  readableVersions,
} from "./migrate/migration.ts";
export { asBuiltJob } from "./operations/as-built-job.ts";
export { changePatch } from "./operations/change-patch.ts";
export { checkJob } from "./operations/check-job.ts";
export type * from "./operations/documents.ts";
export { draftJob, type JobAnswers } from "./operations/draft-job.ts";
export { joinedMap, type MapRows, type MapSize, mapLeaf } from "./operations/map-leaf.ts";
export type { PatchStep } from "./operations/patch-step.ts";
export { type PlaceOptions, placeJob, placeLeaf } from "./operations/place-job.ts";
export { rankRamOnLeaf, withRanks } from "./operations/rank-job-rams.ts";
export { type SetOutDocument, type SetOutLeafDocument, setOutJob } from "./operations/set-out-job.ts";
export { swingJob } from "./operations/swing-job.ts";
export { withPatch } from "./operations/with-patch.ts";
export { withPlacements } from "./operations/with-placements.ts";
export { type AppliedDefault, appliedDefaults } from "./origins/defaults.ts";
export { assumedValues, type Standing, type ValueOrigin, valueOrigins } from "./origins/value-origins.ts";
export { displayUnit, type Shown } from "./quantity/display-units.ts";
export { formatQuantity } from "./quantity/format-quantity.ts";
export { type ParsedQuantity, parseQuantity } from "./quantity/parse-quantity.ts";
export { sheetGaugeInches } from "./quantity/sheet-gauge.ts";
export { fromSi, type QuantityKind, toSi, type Unit } from "./quantity/units.ts";
export { judgeDocument, type ReadJob, readJob } from "./read-job.ts";
export type { JobAsBuilt, JobReading } from "./schema/as-built.ts";
export type { JobBrackets, JobLeafBracket, JobPostBracket } from "./schema/brackets.ts";
export type { JobFixedThing } from "./schema/fixed-thing.ts";
export { type Display, type Job, jobFormat, jobVersion } from "./schema/job.ts";
export type { JobLeaf } from "./schema/leaf.ts";
export type { JobNeed } from "./schema/need.ts";
export type { Origin } from "./schema/origin.ts";
export type { JobPlacement, JobReach } from "./schema/pins.ts";
export { publishedSchema } from "./schema/published-schema.ts";
export type { JobRam } from "./schema/ram.ts";
export type { JobSite } from "./schema/site.ts";
export { toFixedThings, toLeaf, toPostFaces, toRam, toTravel } from "./to-core/leaf-to-core.ts";
export {
  fromPlacement,
  plainReachName,
  type ReachOfLeaf,
  toLeafBracket,
  toPlacement,
  toPostBracket,
  toReach,
} from "./to-core/pins-to-core.ts";
export { type LeafAtReading, type ReadingInSi, toReadings } from "./to-core/readings-to-core.ts";
export { ramFor, toNeed, toSituation } from "./to-core/situation-to-core.ts";
export { jsonText, writeJob } from "./write-job.ts";
