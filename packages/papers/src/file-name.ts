/**
 * A text as a part of a file name: lower-case letters, digits and hyphens, at most 60, `otherwise` when nothing
 * of it is left. Accents fall away; other scripts cannot be kept.
 *
 * ### Example
 *   expect(fileNamePart("Quarry lane, east gate", "job")).toBe("quarry-lane-east-gate");
 *   expect(fileNamePart("../../etc/passwd", "job")).toBe("etc-passwd");
 *   expect(fileNamePart("門", "job")).toBe("job");
 */
export function fileNamePart(text: string, otherwise: string): string {
  const part = text
    .normalize("NFKD")
    .toLowerCase()
    .replace(/\p{M}/gu, "")
    .replace(/[^a-z0-9]+/g, "-")
    .slice(0, 60)
    .replace(/^-+|-+$/g, "");
  return part === "" ? otherwise : part;
}
