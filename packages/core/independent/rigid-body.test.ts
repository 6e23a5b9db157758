import { Box, DistanceJoint, RevoluteJoint, Vec2, World } from "planck";
import { describe, expect, test } from "vitest";
import { leverArm, pinToPin } from "../src/index.ts";
import { seededRandom } from "./seeded-random.ts";

// planck 1.4.2, a rigid-body engine: a leaf on a hinge, held by a rigid bar between the two pins (a DistanceJoint
// without give), pushed square at some radius. At rest the bar carries torque ÷ lever. The engine knows bodies,
// anchors and impulses only; none of our formulas.

const stepsASecond = 480;

/** The bar's length and its force [N] (positive: pushed together), and the hinge's, found by the engine. */
function hold(post: Vec2, leafPin: Vec2, turn: number, push: { force: number; radius: number }) {
  const world = new World({ gravity: new Vec2(0, 0), allowSleep: false });
  const ground = world.createBody();
  const leaf = world.createDynamicBody({ angle: turn });
  leaf.createFixture({ shape: new Box(1.8, 0.025, new Vec2(1.8, 0), 0), density: 20 });
  const hinge = new RevoluteJoint({}, ground, leaf, new Vec2(0, 0));
  const bar = new DistanceJoint({ frequencyHz: 0 }, ground, leaf, post, leaf.getWorldPoint(leafPin));
  world.createJoint(hinge);
  world.createJoint(bar);
  const along = new Vec2(Math.cos(turn), Math.sin(turn));
  const across = new Vec2(-Math.sin(turn), Math.cos(turn));
  // So many iterations that the joints settle within a step: with few, the leaf creeps before they do.
  for (let i = 0; i < 3; i++) {
    leaf.applyForce(Vec2.mul(push.force, across), Vec2.mul(push.radius, along), true);
    world.step(1 / stepsASecond, 20_000, 20);
  }
  const end = leaf.getWorldPoint(leafPin);
  const reaction = bar.getReactionForce(stepsASecond);
  const away = Vec2.sub(end, post);
  return {
    length: bar.getLength(),
    crept: Math.abs(leaf.getAngle() - turn),
    thrust: Vec2.dot(reaction, away) / away.length(),
    hinge: hinge.getReactionForce(stepsASecond).length(),
  };
}

const random = seededRandom(404);
const between = (from: number, to: number) => from + (to - from) * random();
const gates = Array.from({ length: 50 }, (_, i) => ({
  name: `gate ${i + 1}`,
  postPin: { along: between(-0.35, 0.1), out: between(0.08, 0.35) },
  leafPin: { along: between(0.5, 1.3), off: between(-0.1, 0.2) },
  swing: i % 2 === 0 ? ("toward" as const) : ("away" as const),
  theta: between(0, 1.5),
  push: { force: between(-300, 300), radius: between(0.5, 3.5) },
})).filter(({ postPin, leafPin, swing, theta }) => {
  // Near dead centre forces know no bound, and the engine takes long to settle.
  const travel = { swing, openAngle: 1.6 };
  return leverArm({ postPin, leafPin, rise: 0 }, travel, theta) > 0.06;
});

describe("[G5] [G6] length, lever and pin force as a rigid-body engine finds them", () => {
  test("there are at least thirty gates", () => {
    expect(gates.length).toBeGreaterThanOrEqual(30);
  });

  test.each(gates)("$name", ({ postPin, leafPin, swing, theta, push }) => {
    const placement = { postPin, leafPin, rise: 0 };
    const travel = { swing, openAngle: 1.6 };
    const turn = swing === "toward" ? theta : -theta;
    const found = hold(
      new Vec2(postPin.along, postPin.out),
      new Vec2(leafPin.along, leafPin.off),
      turn,
      push,
    );
    expect(found.crept).toBeLessThan(1e-6);
    expect(Math.abs(found.length - pinToPin(placement, travel, theta))).toBeLessThan(1e-9);
    const lever = Math.abs(push.force * push.radius) / Math.abs(found.thrust);
    expect(lever / leverArm(placement, travel, theta)).toBeCloseTo(1, 6);
  });
});

test("[G6] forces at ram and hinge of the geometry that is used as a reference case", () => {
  // By moments about the hinge: 200 N × 3.5 m ÷ 0.178421 m. Square to it, the hinge bears what is left.
  const found = hold(new Vec2(-0.15, 0.2), new Vec2(0.9, 0.06), 0, { force: 200, radius: 3.5 });
  expect(Math.abs(found.thrust)).toBeCloseTo(3923.3045, 2);
  expect(found.hinge).toBeCloseTo(Math.hypot(3888.889, 318.519), 2);
});
