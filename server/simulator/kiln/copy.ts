/** A copy of a kiln that goes its own way from here: every number and every list of its own. */
export function copyOf<T>(thing: T): T {
  if (thing instanceof Float64Array) return thing.slice() as T
  if (Array.isArray(thing)) return thing.map((part: unknown) => copyOf(part)) as T
  if (typeof thing !== 'object' || thing === null) return thing
  const copy = Object.create(Object.getPrototypeOf(thing) as object) as Record<string, unknown>
  for (const [name, part] of Object.entries(thing)) copy[name] = copyOf(part as unknown)
  return copy as T
}
