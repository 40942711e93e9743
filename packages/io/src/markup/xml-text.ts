const NAMED: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };
const REFERENCE = /&(?:#x([0-9a-f]{1,6})|#(\d{1,7})|(amp|lt|gt|quot|apos));|&/gi;

/** Text with its references replaced (XML 1.0, 4.1 and 4.6); null when one of them is none that XML itself knows. */
export function unescaped(text: string): string | null {
  if (!text.includes("&")) return text;
  let isSound = true;
  const plain = text.replace(REFERENCE, (_, hex?: string, decimal?: string, name?: string) => {
    if (name !== undefined && Object.hasOwn(NAMED, name)) return NAMED[name]!;
    const code = hex !== undefined ? parseInt(hex, 16) : decimal !== undefined ? Number(decimal) : NaN;
    if (isCharacter(code)) return String.fromCodePoint(code);
    isSound = false;
    return "";
  });
  return isSound ? plain : null;
}

const isCharacter = (code: number): boolean =>
  code === 9 ||
  code === 10 ||
  code === 13 ||
  (code >= 32 && code < 0xd800) ||
  (code > 0xdfff && code < 0xfffe) ||
  (code > 0xffff && code <= 0x10ffff);

/** Signs that no XML 1.0 file may hold. */
// oxlint-disable-next-line no-control-regex
export const FORBIDDEN = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/;
