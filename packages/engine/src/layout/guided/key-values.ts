/**
 * Numbers by whole-number key, for keys too sparse for an array and look-ups too many for a Map: open addressing over
 * two typed arrays. Keys are 0 or more and below 2^53; values are any number.
 */
export class KeyValues {
  private keys = new Float64Array(1 << 12).fill(-1);
  private values = new Float64Array(1 << 12);
  private count = 0;

  /** Value of a key; Infinity when it has none. */
  get(key: number): number {
    const at = this.slot(key);
    return this.keys[at] === key ? this.values[at]! : Infinity;
  }

  /** Gives a key a value when that is less than what it has; says whether it did. */
  lower(key: number, value: number): boolean {
    const at = this.slot(key);
    if (this.keys[at] !== key) {
      this.keys[at] = key;
      this.values[at] = value;
      if (2 * ++this.count > this.keys.length) this.grow();
      return true;
    }
    if (this.values[at]! <= value) return false;
    this.values[at] = value;
    return true;
  }

  private slot(key: number): number {
    const mask = this.keys.length - 1;
    const high = Math.floor(key / 4294967296);
    let at = (Math.imul(key | 0, 0x9e3779b1) ^ Math.imul(high + 1, 0x85ebca6b)) >>> 0;
    at = (at ^ (at >>> 15)) & mask;
    while (this.keys[at] !== -1 && this.keys[at] !== key) at = (at + 1) & mask;
    return at;
  }

  private grow(): void {
    const { keys, values } = this;
    this.keys = new Float64Array(2 * keys.length).fill(-1);
    this.values = new Float64Array(2 * keys.length);
    for (let k = 0; k < keys.length; k++)
      if (keys[k] !== -1) {
        const at = this.slot(keys[k]!);
        this.keys[at] = keys[k]!;
        this.values[at] = values[k]!;
      }
  }
}
