// Numbers that look drawn by lot and come out the same for the same seed.

export class Chance {
  private state: number;

  constructor(seed: number) {
    this.state = seed >>> 0;
  }

  /** Even over 0…1. Generator: mulberry32 (T. Ettinger, public domain). */
  unit(): number {
    this.state = (this.state + 0x6d2b79f5) >>> 0;
    let t = this.state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4_294_967_296;
  }

  between(min: number, max: number): number {
    return min + (max - min) * this.unit();
  }

  /** True in this share of all cases. */
  in(share: number): boolean {
    return this.unit() < share;
  }

  pick<T>(...list: readonly [T, ...T[]]): T {
    return list[Math.floor(this.unit() * list.length)] ?? list[0];
  }
}
