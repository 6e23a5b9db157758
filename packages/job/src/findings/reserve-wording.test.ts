import { expect, test } from "vitest";
import { pinErrorText, reserveText } from "./reserve-wording.ts";

test("[G11] a reserve is rounded down and a shortfall up, never the other way", () => {
  const say = (reserve: number) =>
    reserveText({ reserve, asShareOfLimit: false, firstToBreak: null }, "metric");
  expect(say(0.02509)).toBe("every pin may be 25 mm off and this still works");
  expect(say(0.025)).toBe("every pin may be 25 mm off and this still works");
  expect(say(0.00004)).toBe("every pin may be 0 mm off and this still works");
  expect(say(-0.01761)).toBe("this does not work as it is: 17.7 mm short");
  expect(say(-0.00001)).toBe("this does not work as it is: 0.1 mm short");
});

test("[G11] in US units, and as a ratio where no length is broken", () => {
  expect(
    reserveText({ reserve: 0.026, asShareOfLimit: false, firstToBreak: { limit: "clearance.pier" } }, "us"),
  ).toBe('every pin may be 1" off and this still works; first to go: clearance to pier');
  expect(
    reserveText({ reserve: -0.00025, asShareOfLimit: true, firstToBreak: { limit: "deadCentre" } }, "metric"),
  ).toBe("this does not work as it is: 25 % short; broken most: angle to dead centre");
});

test("[G11] the direction in words leaves out what does not decide", () => {
  expect(pinErrorText({ postAlong: -1, postOut: 1, leafAlong: 1, leafOff: 1 })).toBe(
    "post pin further behind the hinge and further out, leaf pin nearer the toe and further off the leaf",
  );
  expect(pinErrorText({ postAlong: 0.2, postOut: -0.4, leafAlong: 0, leafOff: -1 })).toBe(
    "leaf pin nearer the leaf",
  );
  expect(pinErrorText({ postAlong: 0, postOut: 0, leafAlong: 0, leafOff: 0 })).toBe("");
});
