/** Disjoint sets over names, for nets and contacts. */
export class DisjointSet {
  readonly #parent = new Map<string, string>();

  find(name: string): string {
    let root = name;
    for (let up = this.#parent.get(root); up !== undefined; up = this.#parent.get(root)) root = up;
    if (root !== name) this.#parent.set(name, root);
    return root;
  }

  join(a: string, b: string): void {
    const [ra, rb] = [this.find(a), this.find(b)];
    if (ra !== rb) this.#parent.set(rb, ra);
  }

  same(a: string, b: string): boolean {
    return this.find(a) === this.find(b);
  }
}
