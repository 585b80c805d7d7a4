import type { Language } from '../../lib/choice/choice.svelte.ts'
import type { Words } from '../../words/en.ts'
import type { SetupWords } from '../../words/setup/en.ts'
import { es } from '../../words/setup/why/es.ts'
import { th } from '../../words/setup/why/th.ts'
import type { Field } from './form.ts'

const whys: Record<Language, Record<string, string>> = { en: {}, es, th }

/** The name of a setting by its path; of several kilns with the number of the kiln. A path without a word stays as it is. */
export function nameOfPath(path: string, words: Words): string {
  const parts = path.split('.')
  const name = (words.setup.fields as Record<string, string>)[parts.at(-1) ?? '']
  if (name === undefined) return path
  return parts[0] === 'kilns' && Number(parts[1]) > 0 ? `${name} (${Number(parts[1]) + 1})` : name
}

/** What a choice of a list is called. */
export function optionText(field: Field, option: string, words: SetupWords): string {
  const { covers, ways, condensers, signs } = words.kiln
  const lists: Record<string, Record<string, string>> = { cover: covers, way: ways, condenser: condensers, sign: signs }
  const list = field.schema.type === 'boolean' ? words.form.yesNo : (lists[String(field.path.at(-1))] ?? words.form.levels)
  return (list as Record<string, string>)[option] ?? option
}

/** What a setting does; English stands in the schema of the service. */
export function whyOf(field: Field, language: Language): string {
  return whys[language][String(field.path.at(-1))] ?? field.schema.description ?? ''
}
