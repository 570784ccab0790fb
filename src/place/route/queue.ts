/**
 * States by key, lowest first and the newest of equals first: buckets of whole-numbered keys, each a list through one
 * shared store, so that nothing is allocated once it has grown.
 */
export class BucketQueue {
  /** By key: the entry to be taken next, 0 for none. */
  #heads = new Int32Array(1024);
  /** By entry: its state, and the entry below it. */
  #states = new Int32Array(4096);
  #below = new Int32Array(4096);
  /** Entry 0 stands for none. */
  #entries = 1;
  #lowest = 0;
  #highest = 0;

  clear(): void {
    this.#heads.fill(0, 0, this.#highest + 1);
    this.#entries = 1;
    this.#lowest = 0;
    this.#highest = 0;
  }

  /** Keys below the last one taken count as that one. */
  push(state: number, wanted: number): void {
    const key = Math.max(wanted, this.#lowest);
    if (key > this.#highest) this.#highest = key;
    if (key >= this.#heads.length) this.#heads = grown(this.#heads, key);
    const entry = this.#entries++;
    if (entry >= this.#states.length) {
      this.#states = grown(this.#states, entry);
      this.#below = grown(this.#below, entry);
    }
    this.#states[entry] = state;
    this.#below[entry] = this.#heads[key] ?? 0;
    this.#heads[key] = entry;
  }

  /** Takes the next state, or answers -1 when none has a key under `end`. */
  pop(end: number): number {
    for (; this.#lowest < end && this.#lowest <= this.#highest; this.#lowest++) {
      const entry = this.#heads[this.#lowest] ?? 0;
      if (entry === 0) continue;
      this.#heads[this.#lowest] = this.#below[entry] ?? 0;
      return this.#states[entry] ?? -1;
    }
    return -1;
  }
}

function grown(array: Int32Array<ArrayBuffer>, least: number): Int32Array<ArrayBuffer> {
  const larger = new Int32Array(2 * least);
  larger.set(array);
  return larger;
}
