const LONGEST = 60;

/** "Nördliches Ried 2" -> "nordliches-ried-2": letters and digits of any script. Empty when there are none. */
export const idFromName = (name: string): string =>
  name
    .normalize("NFKD")
    .replaceAll(/\p{M}/gu, "")
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, "-")
    .slice(0, LONGEST)
    .replaceAll(/^-|-$/g, "");

/** An id that visits can name: one without blanks stays as it is, any other becomes a word. */
export const wordId = (id: string): string => (/^[^\s\p{Cc}]{1,80}$/u.test(id) ? id : idFromName(id) || id);
