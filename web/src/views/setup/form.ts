/** As much of JSON Schema (2020-12) as the settings use; `unit`, `source` and `restart` are our own words beside it. */
export interface FormSchema {
  type?: string
  description?: string
  default?: unknown
  enum?: string[]
  anyOf?: FormSchema[]
  properties?: Record<string, FormSchema>
  items?: FormSchema
  minimum?: number
  maximum?: number
  unit?: string
  source?: string
  restart?: boolean
}

export interface Field {
  /** Where in the settings: names and, in a list, numbers. */
  path: (string | number)[]
  schema: FormSchema
  value: unknown
}

/** Plain fields of a form, in the order of the schema; maps and lists of free names are left to the settings file. */
export function fieldsOf(schema: FormSchema, value: unknown, path: Field['path'] = []): Field[] {
  const whole = schema.anyOf?.find((one) => one.type !== 'null') ?? schema
  if (whole.properties) {
    const values = (value ?? {}) as Record<string, unknown>
    return Object.entries(whole.properties).flatMap(([name, part]) => fieldsOf(part, values[name], [...path, name]))
  }
  if (whole.type === 'array' && whole.items?.properties && Array.isArray(value)) {
    const { items } = whole
    return value.flatMap((one, index) => fieldsOf(items, one, [...path, index]))
  }
  const plain = whole.enum !== undefined || ['number', 'integer', 'boolean', 'string'].includes(whole.type ?? '')
  return plain && path.at(-1) !== 'version' ? [{ path, schema: { ...whole, ...schema, type: whole.type ?? 'string' }, value }] : []
}

/** The settings with one value put in; what is around it stays. */
export function withValue(settings: unknown, path: Field['path'], value: unknown): unknown {
  const [head, ...rest] = path
  if (head === undefined) return value
  if (typeof head === 'number') {
    const list = Array.isArray(settings) ? [...(settings as unknown[])] : []
    list[head] = withValue(list[head], rest, value)
    return list
  }
  const object = typeof settings === 'object' && settings !== null ? (settings as Record<string, unknown>) : {}
  return { ...object, [head]: withValue(object[head], rest, value) }
}

/** What to enter instead, where a field's own bounds can say it; null where only the service knows why. */
export function boundsOf({ minimum, maximum }: FormSchema): { low: number; high: number } | null {
  // bounds that stand for "any whole number" say nothing to a person
  return minimum !== undefined && maximum !== undefined && Math.abs(maximum) < 1e9 ? { low: minimum, high: maximum } : null
}

/** Problems of the service by the field that they belong to; what belongs to no field on the page stays under its own path. */
export function byField(problems: readonly { path: string; what: string }[]): Map<string, string> {
  return new Map(problems.map(({ path, what }) => [path, what]))
}

/** What was typed, in the type that the schema wants; undefined when it can not be that. */
export function parsed(schema: FormSchema, text: string): unknown {
  if (schema.type === 'number' || schema.type === 'integer') {
    const number = Number(text.trim().replace(',', '.'))
    return text.trim() === '' || Number.isNaN(number) ? undefined : number
  }
  if (schema.type === 'boolean') return text === 'true'
  return text === '' && schema.default === null ? null : text
}
