import { describe, expect, test } from "vitest";
import { type JsonObject, type Migration, migrate, readableVersions } from "./migration.ts";

const chain: Migration[] = [
  {
    from: 2,
    what: "widths are halved",
    lift: (d) => ({ ...d, halfWidthMm: (d.widthMm as number) / 2, widthMm: undefined }),
  },
  { from: 1, what: "w becomes widthMm", lift: ({ w, ...rest }) => ({ ...rest, widthMm: w }) },
];

describe("migrate", () => {
  test("walks the chain in order of versions, whatever the order of the list", () => {
    expect(migrate({ version: 1, w: 40, kept: [1] }, chain, 3)).toEqual({
      ok: true,
      from: 1,
      document: { version: 3, halfWidthMm: 20, kept: [1] },
    });
  });

  test("hands the current version back as it is", () => {
    const document = { version: 3 };
    const migrated = migrate(document, chain, 3);
    expect(migrated.ok && migrated.document).toBe(document);
  });

  test("gives each document a copy, so that a migration that changes in place does no harm", () => {
    const document: JsonObject = { version: 1, list: [1] };
    const greedy: Migration = {
      from: 1,
      what: "adds in place",
      lift: (d) => {
        (d.list as number[]).push(2);
        return d;
      },
    };
    expect(migrate(document, [greedy], 2)).toEqual({
      ok: true,
      from: 1,
      document: { version: 2, list: [1, 2] },
    });
    expect(document).toEqual({ version: 1, list: [1] });
  });

  test.each([[4], [0], [1.5], ["1"], [null], [undefined]])(
    "refuses version %j with the readable ones",
    (version) => {
      expect(migrate({ version }, chain, 3)).toEqual({ ok: false, readable: [1, 2, 3] });
    },
  );

  test("a gap in the chain ends what can be read", () => {
    expect(readableVersions([chain[0] as Migration], 4)).toEqual([4]);
    expect(readableVersions([], 1)).toEqual([1]);
  });
});
