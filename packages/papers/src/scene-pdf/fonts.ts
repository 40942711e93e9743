/** The text face as whole TrueType files: the PDF carries the signs that it uses. */
export interface Fonts {
  readonly regular: Uint8Array;
  readonly semibold: Uint8Array;
}
