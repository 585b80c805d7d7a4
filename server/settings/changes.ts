/** One setting that has another value than before. */
export interface Change {
  path: string
  from: unknown
  to: unknown
}

/** Every plain value that differs, by its path; what is only in one of the two stands against null. */
export function changesOf(before: unknown, after: unknown, path = ''): Change[] {
  if (isGroup(before) || isGroup(after)) {
    const [a, b] = [entriesOf(before), entriesOf(after)]
    return [...new Set([...a.keys(), ...b.keys()])].flatMap((key) =>
      changesOf(a.get(key), b.get(key), path === '' ? key : `${path}.${key}`),
    )
  }
  return before === after ? [] : [{ path, from: before ?? null, to: after ?? null }]
}

const isGroup = (value: unknown): value is object => typeof value === 'object' && value !== null

function entriesOf(value: unknown): Map<string, unknown> {
  return new Map(isGroup(value) ? Object.entries(value) : [])
}
