/** One record with the base fields worked in (RFC 8428, 4.6); time still as sent, s: relative below 2^28, Unix time from there on. */
export interface SenmlRecord {
  /** Place in the pack. */
  index: number
  name: string
  /** False where neither this nor an earlier record of the pack gave a base name. */
  based: boolean
  unit: string | null
  timeS: number
  updateS: number | null
  value: number | null
  text: string | null
}

export interface RecordProblem {
  index: number
  reason: RecordReason
}
export type RecordReason = 'not-a-record' | 'bad-name' | 'bad-number' | 'bad-field' | 'two-values' | 'no-value' | 'no-number' | 'nested'
export type PackReason = 'empty-pack' | 'too-many-records' | 'unknown-label' | 'unknown-version' | 'bad-base'

export type Pack =
  { ok: true; records: SenmlRecord[]; problems: RecordProblem[]; secondaryUnits: boolean } | { ok: false; reason: PackReason }

/** Wire format, rule 9. */
const mostRecords = 512
/** RFC 8428 gives 10; RFC 9100 makes the number a set of features, of which bit 4 (secondary units) is understood. */
const plainVersion = 10
const versionWithSecondaryUnits = 26

interface Base {
  name: string | null
  timeS: number
  unit: string | null
  value: number
}

/** Works the base fields of a pack into its records. A record that is wrong in itself is left out and named in `problems`. */
export function resolvePack(pack: readonly unknown[]): Pack {
  if (pack.length === 0) return { ok: false, reason: 'empty-pack' }
  if (pack.length > mostRecords) return { ok: false, reason: 'too-many-records' }
  const base: Base = { name: null, timeS: 0, unit: null, value: 0 }
  const records: SenmlRecord[] = []
  const problems: RecordProblem[] = []
  let version: number | null = null
  for (const [index, item] of pack.entries()) {
    if (!isObject(item)) {
      problems.push({ index, reason: 'not-a-record' })
      continue
    }
    for (const label in item) if (label.endsWith('_')) return { ok: false, reason: 'unknown-label' }
    if (item['bver'] !== undefined) {
      if (!isKnownVersion(item['bver']) || (version !== null && version !== item['bver'])) return { ok: false, reason: 'unknown-version' }
      version = item['bver']
    }
    if (!takeBase(base, item)) return { ok: false, reason: 'bad-base' }
    const record = readRecord(item, base, index)
    if (typeof record === 'string') problems.push({ index, reason: record })
    else if (record !== null) records.push(record)
  }
  return { ok: true, records, problems, secondaryUnits: version === versionWithSecondaryUnits }
}

type Fields = Record<string, unknown>

const isObject = (item: unknown): item is Fields => typeof item === 'object' && item !== null && !Array.isArray(item)

const isNumber = (item: unknown): item is number => typeof item === 'number' && Number.isFinite(item)

const isKnownVersion = (version: unknown): version is number =>
  Number.isInteger(version) &&
  ((version as number) === versionWithSecondaryUnits || ((version as number) >= 1 && (version as number) <= plainVersion))

/** False when a base field has the wrong type: then nothing after it can be trusted. */
function takeBase(base: Base, { bn, bt, bu, bv, bs }: Fields): boolean {
  if (bn !== undefined) {
    if (typeof bn !== 'string') return false
    base.name = bn
  }
  if (bt !== undefined) {
    if (!isNumber(bt)) return false
    base.timeS = bt
  }
  if (bu !== undefined) {
    if (typeof bu !== 'string') return false
    base.unit = bu
  }
  if (bv !== undefined) {
    if (!isNumber(bv)) return false
    base.value = bv
  }
  // Sums are not used here, but a broken one is still a broken pack.
  return bs === undefined || isNumber(bs)
}

const valueLabels = ['v', 'vs', 'vb', 'vd'] as const
const baseLabels = new Set(['bn', 'bt', 'bu', 'bv', 'bs', 'bver'])
/** RFC 8428, 4.5.1. */
const legalName = /^[A-Za-z0-9][A-Za-z0-9\-:./_]*$/
const longestName = 256

/** Null for a record that only sets base fields. */
function readRecord(item: Fields, base: Base, index: number): SenmlRecord | RecordReason | null {
  let onlyBase = true
  for (const label in item) {
    const field = item[label]
    if (typeof field === 'object' && field !== null) return 'nested'
    onlyBase &&= baseLabels.has(label)
  }
  if (onlyBase) return null
  const { n, u, t, ut, v, vs, s } = item
  if (n !== undefined && typeof n !== 'string') return 'bad-name'
  const name = (base.name ?? '') + (n ?? '')
  if (name.length > longestName || !legalName.test(name)) return 'bad-name'
  if (u !== undefined && typeof u !== 'string') return 'bad-field'
  if ((t !== undefined && !isNumber(t)) || (ut !== undefined && !isNumber(ut)) || (s !== undefined && !isNumber(s))) return 'bad-number'
  let given = 0
  for (const label of valueLabels) if (item[label] !== undefined) given++
  if (given > 1) return 'two-values'
  if (given === 0) return s === undefined ? 'no-value' : 'no-number'
  if (v !== undefined && !isNumber(v)) return 'bad-number'
  if (vs !== undefined && typeof vs !== 'string') return 'bad-field'
  if (v === undefined && vs === undefined) return 'no-number'
  return {
    index,
    name,
    based: base.name !== null,
    unit: u ?? base.unit,
    timeS: base.timeS + (t ?? 0),
    updateS: ut ?? null,
    // Adding 0 turns -0 into 0.
    value: v === undefined ? null : v + base.value + 0,
    text: vs ?? null,
  }
}
