/** A range of one coordinate [m]. With a step only `from`, `from + step`, ... ≤ `to` are possible; null means anywhere between. */
export interface Span {
  readonly from: number;
  readonly to: number;
  readonly step: number | null;
}

/** Positions that one choice of post bracket allows, fixed frame. `bracket` names the choice for people. */
export interface PostPinSite {
  readonly bracket: string;
  readonly along: Span;
  readonly out: Span;
}

/** Positions that one choice of leaf bracket allows, leaf axes. */
export interface LeafPinSite {
  readonly bracket: string;
  readonly along: Span;
  readonly off: Span;
}

/** Where the two pins may go (rules G12, G13): any post site with any leaf site. */
export interface Reach {
  readonly postPin: readonly PostPinSite[];
  readonly leafPin: readonly LeafPinSite[];
  /** Height of the leaf pin above the post pin [m]. */
  readonly rise: number;
}
