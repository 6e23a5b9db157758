import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { PackFonts } from "../src/pdf/pdf-fonts.ts";

const require = createRequire(import.meta.url);
const read = (file: string) => new Uint8Array(readFileSync(file));

/** The pack's own fonts, from their package. */
export const packFonts: PackFonts = {
  regular: read(require.resolve("@expo-google-fonts/ibm-plex-sans/400Regular/IBMPlexSans_400Regular.ttf")),
  bold: read(require.resolve("@expo-google-fonts/ibm-plex-sans/600SemiBold/IBMPlexSans_600SemiBold.ttf")),
};
