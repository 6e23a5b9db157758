import DxfParser from "dxf-parser";
import { describe, expect, test } from "vitest";
import { dxfFile } from "../src/dxf/dxf-file.ts";
import { leafPlan } from "../src/sheets/plan-sheet.ts";
import { sampleJob } from "../src/testing/sample-jobs.ts";
import { fileFor, runTool } from "./run-tool.ts";

// The pins and the pier of the sample job, y up: worked out by hand from its numbers.
const postPin = [-150, -160];
const leafPin = [907, -85];
const pier = [
  [-440, 215],
  [-40, 215],
  [-40, -70],
  [-440, -70],
];

interface Entity {
  readonly type: string;
  readonly layer: string;
  readonly center?: { readonly x: number; readonly y: number };
  readonly radius?: number;
  readonly startAngle?: number;
  readonly endAngle?: number;
  readonly text?: string;
  readonly vertices?: readonly { readonly x: number; readonly y: number }[];
}

const drawing = (change?: Parameters<typeof sampleJob>[0]) =>
  dxfFile(leafPlan({ job: sampleJob(change) }, 0, "ramSide"), 20);

function parsed(text: string): { units: unknown; entities: readonly Entity[] } {
  const file = new DxfParser().parseSync(text);
  if (file === null) throw new Error("dxf-parser read nothing");
  return { units: file.header.$INSUNITS, entities: file.entities as unknown as Entity[] };
}

describe("[F10] the plan as DXF, read back by dxf-parser", () => {
  const { units, entities } = parsed(drawing());

  test("millimetres, and pins, pier and the toe's way where the job has them", () => {
    expect(units).toBe(4);
    const centres = entities
      .filter((entity) => entity.type === "CIRCLE" && entity.layer === "RAM")
      .map(({ center }) => [center?.x, center?.y]);
    expect(centres).toEqual([postPin, leafPin]);
    const corners = entities
      .filter((entity) => entity.type === "LWPOLYLINE" && entity.layer === "FIXED")
      .map(({ vertices }) => vertices?.map(({ x, y }) => [x, y]));
    expect(corners).toEqual([pier]);
    const sweep = entities.find((entity) => entity.type === "ARC");
    expect(sweep?.radius).toBeCloseTo(Math.hypot(3600, 25), 5);
    // Closed at 0°, open a quarter turn clockwise on a drawing with y up.
    expect((((sweep?.startAngle ?? 0) * 180) / Math.PI + 360) % 360).toBeCloseTo(270, 5);
    expect(((sweep?.endAngle ?? 1) * 180) / Math.PI).toBeCloseTo(0, 5);
  });

  test("dimensions carry the job's figures as text", () => {
    const texts = entities.filter((entity) => entity.layer === "DIMENSION").map(({ text }) => text);
    expect(texts).toEqual(expect.arrayContaining(["150", "160", "907", "60"]));
  });

  test("a right-hand leaf is the mirror image, its texts are not", () => {
    const mirrored = parsed(drawing((job) => (job.leaves[0].hingeSide = "right"))).entities;
    const centre = mirrored.find((entity) => entity.type === "CIRCLE" && entity.layer === "RAM")?.center;
    expect([centre?.x, centre?.y]).toEqual([150, -160]);
    expect(mirrored.map(({ text }) => text)).toEqual(expect.arrayContaining(["150", "160", "907", "60"]));
  });
});

const audit = `
import sys, json, ezdxf
drawing = ezdxf.readfile(sys.argv[1])
audit = drawing.audit()
space = drawing.modelspace()
print(json.dumps({
  "errors": [str(e.message) for e in audit.errors] + [str(e.message) for e in audit.fixes],
  "units": drawing.units,
  "count": len(space),
  "circles": [[c.dxf.center.x, c.dxf.center.y] for c in space.query("CIRCLE[layer=='RAM']")],
  "texts": [t.plain_text() for t in space.query("TEXT")],
}))
`;

function audited(text: string): {
  errors: string[];
  units: number;
  count: number;
  circles: number[][];
  texts: string[];
} {
  return JSON.parse(runTool("/usr/bin/python3", ["-c", audit, fileFor("plan.dxf", text)]).toString("utf8"));
}

describe("[F10] the plan as DXF, read back by ezdxf", () => {
  test("nothing to complain of or to mend, and the pins where they belong", () => {
    const { errors, units, circles } = audited(drawing());
    expect(errors).toEqual([]);
    expect(units).toBe(4);
    expect(circles).toEqual([postPin, leafPin]);
  });

  test("a hostile name is a text and nothing more", () => {
    const names = ["pier 0 LINE 8 0 ENDSEC", "%%c%%d^J\\U+0041", "門 ½ ⌀", "\u202egnp.etag"];
    const plain = audited(drawing());
    for (const name of names) {
      const { errors, count, texts } = audited(drawing((job) => (job.leaves[0].fixed[0].name = name)));
      expect(errors).toEqual([]);
      expect(count).toBe(plain.count);
      expect(texts.some((text) => text.includes("\n"))).toBe(false);
    }
  });
});
