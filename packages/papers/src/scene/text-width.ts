/**
 * About how wide a short text is [mm], for drawings that are laid out without a font at hand. Errs to the wide
 * side for digits and capitals of the pack's own font, whose digits are 0.6 of the letter size wide.
 *
 * ### Example
 *   expect(roughTextWidth("1144", 3)).toBeCloseTo(7.2, 9);
 */
export function roughTextWidth(text: string, size: number): number {
  return [...text].length * 0.6 * size;
}
