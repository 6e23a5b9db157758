/** One step of a JSON Patch (RFC 6902). */
export interface PatchStep {
  readonly op: "add";
  readonly path: string;
  readonly value: unknown;
}
