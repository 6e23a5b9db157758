import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fitText, wrapText } from "./text-lines.ts";

/** Every character one size wide. */
const measure = (text: string, size: number) => [...text].length * size;

describe("[F10] texts on paper", () => {
  const words = fc.array(fc.stringMatching(/^[a-zé½]{1,30}$/), { minLength: 1, maxLength: 30 });

  test("no line is wider than its room, and no letter is lost", () => {
    fc.assert(
      fc.property(words, fc.integer({ min: 2, max: 40 }), (texts, width) => {
        const lines = wrapText(texts.join(" "), 1, width, measure);
        for (const line of lines) expect(measure(line, 1)).toBeLessThanOrEqual(width);
        expect(lines.join("").replace(/ /g, "")).toBe(texts.join(""));
      }),
      { seed: 7, numRuns: 300 },
    );
  });

  test("with a number of lines at most, what is dropped is owned up to", () => {
    fc.assert(
      fc.property(
        words,
        fc.integer({ min: 3, max: 40 }),
        fc.integer({ min: 1, max: 4 }),
        (texts, width, most) => {
          const whole = wrapText(texts.join(" "), 1, width, measure);
          const lines = wrapText(texts.join(" "), 1, width, measure, { most });
          expect(lines.length).toBeLessThanOrEqual(most);
          for (const line of lines) expect(measure(line, 1)).toBeLessThanOrEqual(width);
          expect(lines.at(-1)?.endsWith("…")).toBe(whole.length > most);
        },
      ),
      { seed: 8, numRuns: 300 },
    );
  });

  test("a text of twenty thousand letters without a space is cut, not measured to its end", () => {
    let longest = 0;
    const counting = (text: string, size: number) => {
      longest = Math.max(longest, text.length);
      return measure(text, size);
    };
    expect(fitText("W".repeat(20_000), 1, 10, counting)).toBe(`${"W".repeat(9)}…`);
    expect(wrapText("W".repeat(20_000), 1, 10, counting, { most: 2 })).toHaveLength(2);
    expect(longest).toBeLessThan(700);
  });

  test("nothing to say is no line", () => {
    expect(wrapText("", 1, 10, measure)).toEqual([]);
    expect(wrapText(" \n ", 1, 10, measure)).toEqual([]);
  });
});
