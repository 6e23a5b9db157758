/** A stretch of the ram's tube: a rectangle along the pin-to-pin line, measured from the post pin (negative = tail behind it) [m]. */
export interface TubeSection {
  readonly from: number;
  readonly to: number;
  readonly halfWidth: number;
}

/** A linear actuator by its numbers (rule G7), SI. */
export interface Ram {
  readonly id: string;
  /** Pin to pin, fully in [m]. */
  readonly retracted: number;
  /** How far it extends beyond `retracted` [m]. */
  readonly stroke: number;
  /** Stroke kept unused at the retracted end [m]. */
  readonly retractedMargin: number;
  /** Stroke kept unused at the extended end [m]. */
  readonly extendedMargin: number;
  readonly tube: readonly TubeSection[];
  readonly rodHalfWidth: number;
  /** Rod speed [m/s]; null when the sheet does not give it. */
  readonly speed: number | null;
  /** Thrust [N]; null when the sheet does not give it. */
  readonly thrust: number | null;
  /** Longest leaf that the maker allows [m]; null when not given. */
  readonly longestLeaf: number | null;
  /** Heaviest leaf that the maker allows [kg]; null when not given. */
  readonly heaviestLeaf: number | null;
}
