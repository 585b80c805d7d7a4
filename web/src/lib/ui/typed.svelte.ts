/** What stands in a number field: its text as typed, and the number it means. */
export class Typed {
  text = $state('')

  /** Null while empty, NaN while it is no number; a decimal comma counts as a point. */
  get value(): number | null {
    const plain = this.text.trim().replace(',', '.')
    return plain === '' ? null : Number(plain)
  }

  get wrong(): boolean {
    return Number.isNaN(this.value)
  }

  get given(): boolean {
    return this.value !== null && !this.wrong
  }
}
