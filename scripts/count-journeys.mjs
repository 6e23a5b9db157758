// Reporter of Node's test runner: writes what was counted, for the last line of `npm test`.

/** @param {AsyncIterable<{ type: string, data: any }>} source */
export default async function* countJourneys(source) {
  const counts = { passed: 0, failed: 0, skipped: 0 };
  for await (const { type, data } of source) {
    if (data?.details?.type === "suite" || (type !== "test:pass" && type !== "test:fail")) continue;
    if (data.skip !== undefined) counts.skipped += 1;
    else counts[type === "test:pass" ? "passed" : "failed"] += 1;
  }
  yield JSON.stringify(counts);
}
