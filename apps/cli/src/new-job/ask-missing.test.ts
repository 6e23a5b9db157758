import { expect, test } from "vitest";
import { askMissing } from "./ask-missing.ts";
import { draftJob } from "./draft-job.ts";

function answering(answers: readonly string[]) {
  const asked: string[] = [];
  const ask = async (question: string) => answers[asked.push(question) - 1] ?? "";
  return { ask, asked };
}

test("[I13] a new job takes six questions; an empty answer takes what is suggested", async () => {
  const { ask, asked } = answering(["Windle Farm", "3.6 m", "", "right", "", "95"]);
  const said = await askMissing({ values: {} }, "metric", ask);
  expect(asked).toHaveLength(6);
  expect(said).toEqual({
    title: "Windle Farm",
    values: { lengthMm: "3.6 m", hingeSide: "right", openAngleDeg: "95" },
  });
  const draft = draftJob(said, "metric");
  expect(draft).toMatchObject({ ok: true, assumed: ["thicknessMm", "swing", "heelMm", "faceMm"] });
});

test("[I15] what an option said is not asked again", async () => {
  const { ask, asked } = answering([]);
  const values = {
    lengthMm: "3600",
    thicknessMm: "50",
    hingeSide: "left",
    swing: "away",
    openAngleDeg: "90",
  };
  await askMissing({ title: "Windle Farm", values }, "metric", ask);
  expect(asked).toEqual([]);
});

test("[I15] an answer that cannot be read is asked again, saying what was expected", async () => {
  const { ask, asked } = answering(["Windle Farm", "long", "", "12 ft"]);
  const said = await askMissing({ values: {} }, "us", ask);
  expect(said.values.lengthMm).toBe("12 ft");
  expect(asked.slice(2, 4)).toEqual([
    expect.stringMatching(/^Expected a length such as /),
    expect.stringMatching(/^Expected a length such as /),
  ]);
});
