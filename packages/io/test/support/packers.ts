/** LZW of TIFF 6.0, section 13, as a writer of the year 1992 would do it. */
export function lzwEncode(data: Uint8Array): Uint8Array {
  const bits: number[] = [];
  let table = new Map<string, number>();
  let width = 9;
  let next = 258;
  const emit = (code: number): void => {
    for (let b = width - 1; b >= 0; b--) bits.push((code >> b) & 1);
  };
  const clear = (): void => {
    emit(256);
    table = new Map();
    [width, next] = [9, 258];
  };
  const codeOf = (text: string): number => (text.length === 1 ? text.charCodeAt(0) : table.get(text)!);
  clear();
  let run = "";
  for (const byte of data) {
    const longer = run + String.fromCharCode(byte);
    if (longer.length === 1 || table.has(longer)) {
      run = longer;
      continue;
    }
    emit(codeOf(run));
    table.set(longer, next++);
    if (next === 4094) clear();
    else if (next + 1 > 1 << width) width += 1;
    run = longer.at(-1)!;
  }
  if (run !== "") {
    emit(codeOf(run));
    next += 1;
    if (next + 1 > 1 << width && width < 12) width += 1;
  }
  emit(257);
  const out = new Uint8Array(Math.ceil(bits.length / 8));
  bits.forEach((b, i) => (out[i >> 3] = out[i >> 3]! | (b << (7 - (i & 7)))));
  return out;
}

/** PackBits of TIFF 6.0, section 9: runs of three and more, the rest as it is. */
export function packBitsEncode(data: Uint8Array): Uint8Array {
  const out: number[] = [];
  for (let at = 0; at < data.length;) {
    let run = 1;
    while (run < 128 && data[at + run] === data[at]) run += 1;
    if (run >= 3) {
      out.push(257 - run, data[at]!);
      at += run;
      continue;
    }
    const start = at;
    while (at < data.length && at - start < 128 && !(data[at] === data[at + 1] && data[at] === data[at + 2]))
      at += 1;
    out.push(at - start - 1, ...data.subarray(start, at));
  }
  return Uint8Array.from(out);
}

/** A ZSTD frame (RFC 8878) of stored blocks, with no content size, as GDAL leaves it out. */
export function zstdStore(data: Uint8Array): Uint8Array {
  const out = [0x28, 0xb5, 0x2f, 0xfd, 0x00, 0x58];
  for (let at = 0; at < data.length || at === 0; at += 100_000) {
    const part = data.subarray(at, at + 100_000);
    const isLast = at + 100_000 >= data.length ? 1 : 0;
    const head = (part.length << 3) | isLast;
    out.push(head & 255, (head >> 8) & 255, (head >> 16) & 255);
    for (const b of part) out.push(b);
  }
  return Uint8Array.from(out);
}

/** A ZSTD frame of run-length blocks: a few bytes that unpack to `blocks` times 128 kB. */
export function zstdBomb(blocks: number): Uint8Array {
  const out = [0x28, 0xb5, 0x2f, 0xfd, 0x00, 0x58];
  for (let i = 0; i < blocks; i++) {
    const head = (131_072 << 3) | (1 << 1) | (i === blocks - 1 ? 1 : 0);
    out.push(head & 255, (head >> 8) & 255, (head >> 16) & 255, 0);
  }
  return Uint8Array.from(out);
}
