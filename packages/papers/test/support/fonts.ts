import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Fonts } from "../../src/scene-pdf/index.ts";

const require = createRequire(import.meta.url);
const bytesOf = (face: string): Uint8Array =>
  new Uint8Array(readFileSync(require.resolve(`@expo-google-fonts/source-sans-3/${face}.ttf`)));

/** The text face as the shells load it. */
export const fonts: Fonts = {
  regular: bytesOf("400Regular/SourceSans3_400Regular"),
  semibold: bytesOf("600SemiBold/SourceSans3_600SemiBold"),
};
