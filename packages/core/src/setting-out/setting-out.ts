import { pinToPin } from "../linkage/pin-to-pin.ts";
import type { Placement } from "../linkage/pins.ts";
import type { PostFaces } from "../placement/brackets.ts";
import type { Situation } from "../placement/situation.ts";
import { setUpAngle } from "../placement/trade-offs.ts";

/**
 * Dimensions that a person can measure from things that exist (rule G17). Names say from what to what:
 *
 * - `hingeToPostPin`, `hingeToLeafPin`: straight, centre to centre, square to the hinge axis;
 * - `postPinBehindHinge`: along the closed leaf's line, positive behind the hinge axis, away from the toe;
 * - `postPinOut`: square off the closed leaf's line through the hinge axis, positive to the ram's side;
 * - `postPinFromRamFace`, `postPinFromGatewayFace`: from the hinge post's faces, positive out from the face
 *   on the ram's side, and positive behind the gateway face;
 * - `leafPinFromHinge`: along the leaf from the hinge axis; `leafPinFromHeel`: from the leaf's hinge end;
 * - `leafPinFromLeafFace`: square off the leaf's ram-side face;
 * - `pinRise`: leaf pin above post pin;
 * - `pinToPinAtSetUp`, `runOutAtSetUp`: with the ram hung in the set-up position;
 * - `pinToPinClosed`, `pinToPinOpen`.
 */
export type DimensionId =
  | "hingeToPostPin"
  | "hingeToLeafPin"
  | "postPinBehindHinge"
  | "postPinOut"
  | "postPinFromRamFace"
  | "postPinFromGatewayFace"
  | "leafPinFromHinge"
  | "leafPinFromHeel"
  | "leafPinFromLeafFace"
  | "pinRise"
  | "pinToPinAtSetUp"
  | "runOutAtSetUp"
  | "pinToPinClosed"
  | "pinToPinOpen";

export interface Dimension {
  readonly id: DimensionId;
  /** [m] */
  readonly value: number;
  /** The dimensions that this one checks, found by another route; empty for those that set out. */
  readonly checks: readonly DimensionId[];
}

export interface SettingOut {
  /** Leaf angle in which the ram is hung [rad], and which that is. */
  readonly setUpAngle: number;
  readonly leafIs: "open" | "closed";
  /** In the order of work: post pin, leaf pin, hanging the ram, each followed by its check. */
  readonly dimensions: readonly Dimension[];
}

/**
 * A placement as dimensions to set out, for the position in which the ram is hung: leaf open for a leaf that
 * swings toward, closed for one that swings away, the ram nearly in either way (rule G17).
 *
 * `faces` null when the post's faces were not surveyed; the dimensions from them are then left out. Each pin
 * is fixed by two dimensions and checked by an independent third, the straight distance to the hinge; pin to
 * pin then checks both pins at once.
 *
 * ### Example
 *   const faces = { ramSideOut: 0.07, gatewayAlong: -0.04 };
 *   const sheet = settingOut(workedExample.situation, workedExample.roomy, faces);
 *   expect(sheet.leafIs).toBe("open");
 *   expect(sheet.dimensions.find((one) => one.id === "postPinFromRamFace")?.value).toBeCloseTo(0.075, 9);
 *   expect(sheet.dimensions.find((one) => one.id === "hingeToPostPin")?.checks).toContain("postPinOut");
 */
export function settingOut(situation: Situation, placement: Placement, faces: PostFaces | null): SettingOut {
  const { leaf, ram } = situation;
  const { postPin, leafPin } = placement;
  const angle = setUpAngle(situation);
  const atSetUp = pinToPin(placement, leaf.travel, angle);
  const sets = (id: DimensionId, value: number): Dimension => ({ id, value, checks: [] });
  const dimensions: Dimension[] = [
    sets("postPinBehindHinge", -postPin.along),
    sets("postPinOut", postPin.out),
    ...(faces === null
      ? []
      : [
          sets("postPinFromRamFace", postPin.out - faces.ramSideOut),
          sets("postPinFromGatewayFace", faces.gatewayAlong - postPin.along),
        ]),
    {
      id: "hingeToPostPin",
      value: Math.hypot(postPin.along, postPin.out),
      checks: ["postPinBehindHinge", "postPinOut"],
    },
    sets("leafPinFromHinge", leafPin.along),
    sets("leafPinFromHeel", leafPin.along - leaf.heel),
    sets("leafPinFromLeafFace", leafPin.off - leaf.face),
    {
      id: "hingeToLeafPin",
      value: Math.hypot(leafPin.along, leafPin.off),
      checks: ["leafPinFromHinge", "leafPinFromLeafFace"],
    },
    sets("pinRise", placement.rise),
    sets("runOutAtSetUp", atSetUp - ram.retracted),
    {
      id: "pinToPinAtSetUp",
      value: atSetUp,
      checks: ["postPinBehindHinge", "postPinOut", "leafPinFromHinge", "leafPinFromLeafFace"],
    },
    sets("pinToPinClosed", pinToPin(placement, leaf.travel, 0)),
    sets("pinToPinOpen", pinToPin(placement, leaf.travel, leaf.travel.openAngle)),
  ];
  return { setUpAngle: angle, leafIs: leaf.travel.swing === "toward" ? "open" : "closed", dimensions };
}
