const longestStem = 60;

/** Names that some systems keep for devices, whatever follows the dot. */
const reserved = /^(con|prn|aux|nul|com\d|lpt\d)$/i;

/**
 * A file name for a job: letters and digits of any script, joined by hyphens, so that no title can name another
 * folder, hide its ending or turn the text around. Different for each call with the same `taken`, which it adds to.
 *
 * ### Example
 *   const taken = new Set<string>();
 *   expect(jobFileName("Quarry lane, east gate", taken)).toBe("quarry-lane-east-gate.json");
 *   expect(jobFileName("Quarry Lane: east gate", taken)).toBe("quarry-lane-east-gate-2.json");
 *   expect(jobFileName("../../etc/passwd", taken)).toBe("etc-passwd.json");
 *   expect(jobFileName("", taken)).toBe("job.json");
 */
export function jobFileName(title: string, taken: Set<string>): string {
  const words =
    title
      .normalize("NFC")
      .toLowerCase()
      .match(/[\p{L}\p{M}\p{N}]+/gu) ?? [];
  const short = [...words.join("-")].slice(0, longestStem).join("").replace(/-$/, "");
  const stem = short === "" ? "job" : reserved.test(short) ? `job-${short}` : short;
  let name = `${stem}.json`;
  for (let number = 2; taken.has(name); number += 1) name = `${stem}-${number}.json`;
  taken.add(name);
  return name;
}
