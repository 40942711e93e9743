/** Labels of a search in arrays that grow, and a heap that gives them back by cost, the older of equals first. */
export class LabelQueue {
  readonly cost: number[] = [];
  readonly node: number[] = [];
  /** Guide point beside the node. */
  readonly beside: number[] = [];
  /** Steps since the last place to pass. */
  readonly since: number[] = [];
  readonly from: number[] = [];
  readonly arc: number[] = [];
  readonly price: number[] = [];
  private readonly heap: number[] = [];

  get size(): number {
    return this.cost.length;
  }

  add(
    cost: number,
    node: number,
    beside: number,
    since: number,
    from: number,
    arc: number,
    price: number,
  ): void {
    const label = this.cost.length;
    this.cost.push(cost);
    this.node.push(node);
    this.beside.push(beside);
    this.since.push(since);
    this.from.push(from);
    this.arc.push(arc);
    this.price.push(price);
    let at = this.heap.length;
    this.heap.push(label);
    while (at > 0) {
      const up = (at - 1) >> 1;
      if (this.isBefore(this.heap[up]!, label)) break;
      this.heap[at] = this.heap[up]!;
      at = up;
    }
    this.heap[at] = label;
  }

  /** The cheapest label not yet taken; -1 when none is left. */
  take(): number {
    const first = this.heap[0] ?? -1;
    const last = this.heap.pop();
    if (last === undefined || this.heap.length === 0) return first;
    let at = 0;
    for (;;) {
      let down = 2 * at + 1;
      if (down >= this.heap.length) break;
      if (down + 1 < this.heap.length && this.isBefore(this.heap[down + 1]!, this.heap[down]!)) down++;
      if (this.isBefore(last, this.heap[down]!)) break;
      this.heap[at] = this.heap[down]!;
      at = down;
    }
    this.heap[at] = last;
    return first;
  }

  private isBefore(a: number, b: number): boolean {
    const [x, y] = [this.cost[a]!, this.cost[b]!];
    return x < y || (x === y && a < b);
  }
}
