/** A seeded stream of chance (sfc32): the same seed gives the same world on every machine and every Node. */
export class Chance {
  private a = 0
  private b = 0
  private c = 0
  private d = 1

  private readonly seed: string

  constructor(seed: string) {
    this.seed = seed
    // FNV-1a spreads the letters of the seed over the three words of the state
    let hash = 2166136261
    const word = () => {
      for (let i = 0; i < seed.length; i++) hash = Math.imul(hash ^ seed.charCodeAt(i), 16777619)
      hash = Math.imul(hash ^ 0x9e3779b9, 16777619)
      return hash | 0
    }
    this.a = word()
    this.b = word()
    this.c = word()
    for (let i = 0; i < 20; i++) this.uniform()
  }

  /** A stream of its own, so that a draw more in one part of a world changes no other part. */
  branch(name: string): Chance {
    return new Chance(`${this.seed}/${name}`)
  }

  /** 0 <= x < 1. */
  uniform(): number {
    const t = (((this.a + this.b) | 0) + this.d) | 0
    this.d = (this.d + 1) | 0
    this.a = this.b ^ (this.b >>> 9)
    this.b = (this.c + (this.c << 3)) | 0
    this.c = ((this.c << 21) | (this.c >>> 11)) + t
    return (t >>> 0) / 4294967296
  }

  between(low: number, high: number): number {
    return low + (high - low) * this.uniform()
  }

  whole(low: number, high: number): number {
    return Math.floor(this.between(low, high + 1))
  }

  often(probability: number): boolean {
    return this.uniform() < probability
  }

  /** Mean 0, standard deviation 1 (Box and Muller). */
  normal(): number {
    return Math.sqrt(-2 * Math.log(1 - this.uniform())) * Math.cos(2 * Math.PI * this.uniform())
  }

  pick<T>(choices: readonly [T, ...T[]]): T {
    return choices[Math.floor(this.uniform() * choices.length)] ?? choices[0]
  }
}
