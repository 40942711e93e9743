import { DomainError } from "../units/index.ts";

/** What the settle loop needs to know about a graph: joints of a walkway, cells of a map, anything with numbered nodes. */
export interface SearchSpace {
  readonly nodes: number;
  /** Calls `settle.relax` for every neighbour of `node`. */
  readonly expand: (node: number, settle: Settle) => void;
  /** Never more than the remaining cost, and consistent along every arc [whole units]; 0 for a plain settle, negative where nothing leads on. */
  readonly ahead: (node: number) => number;
}

const NOTHING = -1;

/**
 * Settles nodes in order of cost: shortest paths with whole-number arc costs in a bucket queue.
 *
 * cost  per node, 0 = never seen, else cost + 1: fresh memory is all zero, so untouched pages cost nothing
 * arc   per node, the number the space gave to the arc (or seed) it was last improved by
 *
 * Exact for the whole-number costs given. Entries are dropped lazily; a node is settled once.
 * Costs must stay below 2^31 - 2; larger throws `DomainError`.
 */
export class Settle {
  readonly cost: Int32Array;
  readonly arc: Uint8Array;
  settled = 0;
  /** Lowest and highest node that has a cost. */
  lowest = Infinity;
  highest = -1;
  private space: SearchSpace;
  private heads = new Int32Array(1 << 12).fill(NOTHING);
  private next = new Int32Array(1 << 12);
  private held = new Int32Array(1 << 12);
  private free = NOTHING;
  private used = 0;
  private waiting = 0;
  private bucket = 0;
  private base = 0;

  constructor(space: SearchSpace) {
    this.space = space;
    this.cost = new Int32Array(space.nodes);
    this.arc = new Uint8Array(space.nodes);
  }

  /** Cost of a node in whole units, or -1 when it was never reached. */
  costOf(node: number): number {
    return this.cost[node]! - 1;
  }

  /** The space's own bound on what is left from a node. */
  ahead(node: number): number {
    return this.space.ahead(node);
  }

  /** Forgets everything but keeps the memory; goes on over another space of as many nodes if one is given. */
  reset(space: SearchSpace = this.space): void {
    if (space.nodes !== this.space.nodes)
      throw new DomainError("another-number-of-nodes", { nodes: space.nodes });
    this.space = space;
    this.cost.fill(0);
    this.heads.fill(NOTHING);
    this.free = NOTHING;
    this.used = this.waiting = this.bucket = this.base = 0;
    this.lowest = Infinity;
    this.highest = -1;
  }

  /** Offers a node at a cost of its own: the beginning of a search. Must not lie before what is already settled. */
  seed(node: number, cost: number, arc: number): void {
    this.base = 0;
    this.relax(node, cost, arc);
  }

  /** Offers `to` over an arc from the node being expanded. `step` >= 0, whole. */
  relax(to: number, step: number, arc: number): void {
    const cost = this.base + step;
    const old = this.cost[to]!;
    if (old !== 0 && old <= cost + 1) return;
    const ahead = this.space.ahead(to);
    if (ahead < 0) return;
    const key = cost + ahead;
    this.cost[to] = cost + 1;
    this.arc[to] = arc;
    if (to < this.lowest) this.lowest = to;
    if (to > this.highest) this.highest = to;
    this.push(to, key);
  }

  /**
   * Settles up to `most` nodes of keys up to `lastKey`. Returns the node for which `isGoal` held, -1 when nothing
   * of that kind is left, -2 when there is more to do. What lies beyond `lastKey` stays for a later run.
   */
  run(most: number, isGoal: (node: number) => boolean, lastKey = 0x7ffffffd): number {
    let left = most;
    while (this.waiting > 0 && this.bucket <= lastKey) {
      let entry = this.heads[this.bucket]!;
      if (entry === NOTHING) {
        this.bucket++;
        continue;
      }
      if (left <= 0) return -2;
      const node = this.held[entry]!;
      this.heads[this.bucket] = this.next[entry]!;
      this.next[entry] = this.free;
      this.free = entry;
      this.waiting--;
      const cost = this.cost[node]! - 1;
      if (cost + this.space.ahead(node) !== this.bucket) continue;
      left--;
      this.settled++;
      this.base = cost;
      if (isGoal(node)) {
        entry = this.take();
        this.put(entry, node, this.bucket);
        return node;
      }
      this.space.expand(node, this);
    }
    return -1;
  }

  /** Key up to which every node is settled. */
  get frontier(): number {
    return this.bucket;
  }

  /** Whether nothing waits to be settled. */
  get isDone(): boolean {
    return this.waiting === 0;
  }

  private push(node: number, key: number): void {
    if (key < this.bucket) throw new DomainError("settled-out-of-order", { node, key, bucket: this.bucket });
    if (key >= this.heads.length) this.growHeads(key);
    this.put(this.take(), node, key);
  }

  private put(entry: number, node: number, key: number): void {
    this.held[entry] = node;
    this.next[entry] = this.heads[key]!;
    this.heads[key] = entry;
    this.waiting++;
  }

  private take(): number {
    const entry = this.free;
    if (entry !== NOTHING) {
      this.free = this.next[entry]!;
      return entry;
    }
    if (this.used === this.next.length) {
      this.next = grown(this.next, 2 * this.used);
      this.held = grown(this.held, 2 * this.used);
    }
    return this.used++;
  }

  private growHeads(key: number): void {
    if (!(key < 0x7ffffffd)) throw new DomainError("cost-too-large", { key });
    let size = this.heads.length;
    while (size <= key) size *= 2;
    const heads = new Int32Array(size).fill(NOTHING);
    heads.set(this.heads);
    this.heads = heads;
  }
}

function grown(from: Int32Array, size: number): Int32Array<ArrayBuffer> {
  const to = new Int32Array(size);
  to.set(from);
  return to;
}
