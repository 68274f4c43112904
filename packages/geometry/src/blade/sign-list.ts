/** Numbers each of which changes its sign where something changes its structure; filled again at every station. */
export class SignList {
  values = new Float64Array(32);
  count = 0;

  clear(): this {
    this.count = 0;
    return this;
  }

  push(value: number): void {
    if (this.count === this.values.length) {
      const longer = new Float64Array(2 * this.count);
      longer.set(this.values);
      this.values = longer;
    }
    this.values[this.count++] = value;
  }
}
