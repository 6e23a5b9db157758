import { expect, test } from "vitest";
import { sparkline } from "./sparkline.ts";

test("[I15] a series drawn from its least to its greatest, blank where nothing is known", () => {
  expect(sparkline([0, 1, 2, 3, 4, 5, 6, 7], 8)).toBe("▁▂▃▄▅▆▇█");
  expect(sparkline([10, null, 20], 3)).toBe("▁ █");
  expect(sparkline([10, 20], 6)).toBe("▁▁▁███");
});

test("[I15] a series that never changes is a level line", () => {
  expect(sparkline([3, 3, 3], 3)).toBe("▅▅▅");
});
