import type { Action } from '../../../../server/contract/actions.ts'
import type { Words } from '../../words/en.ts'
import { keptNotes } from '../../words/kept-notes.ts'
import type { Measures } from '../words/measures.ts'

/** One entry of the log in words. */
export function actText(act: Action, words: Words, measures: Measures): string {
  const name = words.acts[act.action]
  const parts = detailOf(act, words, measures).filter((part): part is string => part !== undefined)
  return parts.length === 0 ? name : `${name}: ${parts.join(', ')}`
}

function detailOf(act: Action, words: Words, measures: Measures): (string | undefined)[] {
  switch (act.action) {
    case 'load':
      return [
        act.massKg === undefined ? undefined : measures.kilograms(act.massKg),
        act.moisturePct === undefined ? undefined : words.loaded.water(`${measures.number(act.moisturePct)} %`),
        act.pieceMm === undefined ? undefined : words.loaded.thick(`${measures.number(act.pieceMm)} mm`),
      ]
    case 'swap-bottle':
      return [act.litres === undefined ? undefined : measures.litres(act.litres)]
    case 'air':
      return [
        act.mouth && `${words.panel.mouth} ${words.openings[act.mouth]}`,
        act.chimney && `${words.panel.chimney} ${words.openings[act.chimney]}`,
      ]
    case 'weather':
      return [words.weathers[act.weather]]
    case 'unload':
      return [
        act.charcoalKg === undefined ? undefined : measures.kilograms(act.charcoalKg),
        act.finesKg === undefined ? undefined : `${small(words.panel.fines)} ${measures.kilograms(act.finesKg)}`,
      ]
    case 'glass':
      return [String(act.number), act.drip && words.dripLooks[act.drip]]
    case 'observe':
      return [
        act.smoke && `${words.shortRoles.smoke} ${words.smokeLooks[act.smoke]}`,
        act.drip && `${words.picture.drip} ${words.dripLooks[act.drip]}`,
      ]
    case 'note':
      return [act.text === '' ? words.panel.takenBack : noteText(act.text, words)]
    case 'reading':
      return [`${nameOf(act.channel, words)} ${measures.temperature(act.value)}`]
    case 'acknowledge':
    case 'shelve':
    case 'unshelve':
      return [words.alarms[act.alarm].name]
    default:
      return []
  }
}

/** What a key logged is told in the reader's language; what a person wrote stays as it was written. */
function noteText(text: string, words: Words): string {
  if (Object.values(keptNotes.listGone).includes(text)) return words.ready.logged
  return Object.values(keptNotes.looked).includes(text) ? words.looked : text
}

/** `yard/n1/wall` in words, where its last part is a role. */
export function nameOf(channel: string, words: Words): string {
  const last = channel.split('/').at(-1) ?? channel
  return (words.roles as Record<string, string>)[last] ?? last
}

/** The name of a field in the middle of a line. */
function small(text: string): string {
  return text.charAt(0).toLocaleLowerCase() + text.slice(1)
}
