import type { Bounds } from '../../../../server/contract/act-bounds.ts'

/** What stands in a number field: its text as typed, and the number it means. */
export class Typed {
  text = $state('')
  /** What may be typed, in the unit that it is typed in. */
  readonly bounds: Bounds | null

  constructor(bounds: Bounds | null = null) {
    this.bounds = bounds
  }

  /** Null while empty, NaN while it is no number; a decimal comma counts as a point. */
  get value(): number | null {
    const plain = this.text.trim().replace(',', '.')
    return plain === '' ? null : Number(plain)
  }

  get wrong(): boolean {
    const { value, bounds } = this
    return Number.isNaN(value) || (value !== null && bounds !== null && (value < bounds.low || value > bounds.high))
  }

  get given(): boolean {
    return this.value !== null && !this.wrong
  }
}
