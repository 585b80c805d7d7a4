function lend(to: object, name: string, value: unknown): void {
  if (!(name in to)) Object.defineProperty(to, name, { value, writable: true, configurable: true })
}

/**
 * What a tablet with Chrome 88 or Safari 14.1 lacks and this page uses: `at` (Chrome 92, Safari 15.4) and `findLast` (Chrome 97,
 * Safari 15.4). Syntax is lowered by the build, these are not.
 */
export function lendWhatIsMissing(): void {
  lend(Array.prototype, 'at', function at<T>(this: readonly T[], index: number): T | undefined {
    return this[index < 0 ? this.length + index : index]
  })
  lend(Array.prototype, 'findLast', function findLast<T>(this: readonly T[], wanted: (value: T, index: number) => unknown): T | undefined {
    for (let index = this.length - 1; index >= 0; index -= 1) if (wanted(this[index] as T, index)) return this[index]
    return undefined
  })
}
