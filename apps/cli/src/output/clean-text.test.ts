import { expect, test } from "vitest";
import { cleanText, shortCleanText } from "./clean-text.ts";

const esc = "\u001b";

test.each([
  ["a colour", `${esc}[31mred${esc}[0m`, "red"],
  ["a window title", `${esc}]0;owned\u0007gate`, "gate"],
  ["a link", `${esc}]8;;http://example.org${esc}\\here${esc}]8;;${esc}\\`, "here"],
  ["a one-character control sequence", "\u009b2Jgate", "gate"],
  ["a reset", `${esc}cgate`, "gate"],
  ["lines and tabs", "one\r\n\ttwo", "one two"],
  ["a turned writing direction", "gate\u202etxt.exe", "gate txt.exe"],
  ["letters of any script", "Señor Groß, 門 ½", "Señor Groß, 門 ½"],
])("[I15] %s in a title cannot reach the terminal", (_name, text, expected) => {
  expect(cleanText(text)).toBe(expected);
});

test("[I15] a long text is cut, with a sign that it was", () => {
  expect(shortCleanText("x".repeat(100), 10)).toBe("xxxxxxxxx…");
});
