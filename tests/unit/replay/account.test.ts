import { expect, test } from 'vitest'
import type { Output } from '../../../server/contract/fold.ts'
import type { RecordingLine } from '../../../server/contract/recording.ts'
import type { AlarmState } from '../../../server/contract/vocabulary.ts'
import { makeKilnFold } from '../../../server/domain/firing/fold.ts'
import { configOf, play, playLines } from '../../../server/recordings/play.ts'
import { accountOf } from '../../../server/replay/account.ts'
import { alarmSpans } from '../../../server/replay/alarm-spans.ts'
import { gather } from '../../../server/replay/gather.ts'
import { languages, speechIn } from '../../../server/replay/words/speech.ts'
import type { Language } from '../../../server/replay/words/speech.ts'
import { plainIntake } from '../../support/plain-intake.ts'
import { storyHeader, storyLines } from '../../support/firing-story.ts'

// by rules alone: what is tested here is the account
const folds = { intake: plainIntake, kiln: makeKilnFold<never>(null) }

const at = (hour: number, minute: number): string => new Date(Date.UTC(2026, 2, 1, hour, minute)).toISOString()
const done = (hour: number, minute: number, id: string, act: object): RecordingLine =>
  ({ at: at(hour, minute), id, doneAt: at(hour, minute), ...act }) as RecordingLine

/** The story of six hours, with what a maker logs meanwhile. */
function recording() {
  const acts = [
    ...[0, 1, 2, 3].map((n) => done(8, 10 + n, `feed-${String(n)}`, { action: 'refuel' })),
    done(9, 0, 'start', { action: 'start-collecting' }),
    done(9, 30, 'note', { action: 'note', text: 'wind from the hill' }),
    done(10, 0, 'bottle', { action: 'swap-bottle', litres: 4 }),
    done(11, 0, 'stop', { action: 'stop-collecting' }),
    done(10, 10, 'glass-1', { action: 'glass', number: 1, drip: 'pale' }),
    done(10, 30, 'glass-2', { action: 'glass', number: 2 }),
    done(11, 5, 'wrong', { action: 'open' }),
    done(11, 6, 'not-so', { action: 'note', text: '', corrects: 'wrong' }),
  ]
  const lines = [...storyLines(6), ...acts].sort((a, b) => a.at.localeCompare(b.at))
  return { header: storyHeader, lines }
}
const whole = recording()
const played = gather(playLines(folds, whole))
const events = [...play(folds, whole)]
const tell = (language: Language, from = played): string[] => accountOf(from, configOf(storyHeader), speechIn(language))

test('a firing is told in fewer than 60 lines, with what was logged and with forecasts that order nothing', () => {
  const lines = tell('en')
  expect(lines.length).toBeLessThan(60)
  expect(lines).toContain('2026-03-01 07:40  Logged: lit')
  expect(lines).toContain('2026-03-01 10:00  Logged: changed the bottle: 4.0 L')
  expect(lines).toContain('2026-03-01 09:30  Logged: note: wind from the hill')
  expect(lines.find((line) => line.includes('Logged: opened'))).toMatch(/taken back later/)
  expect(lines.filter((line) => line.includes('fed the fire')).join()).toMatch(/4 times/)
  expect(lines.filter((line) => /\bSoon\b/.test(line))).toEqual([])
  for (const line of lines.filter((one) => / between \d\d:\d\d and /.test(one))) expect(line).toMatch(/Forecast then:/)
})

test('every call that was given stands there with a reason, and sealing with its caution', () => {
  const given = events.filter((event) => event.event === 'call' && event.state === 'due')
  const told = tell('en').filter((line) => line.includes('CALL: '))
  expect(given.length).toBeGreaterThan(0)
  expect(told).toHaveLength(given.length)
  for (const line of told) expect(line).toMatch(/CALL: [a-z ]+( \(.+\))?\. \w/)
  for (const line of told.filter((one) => one.includes('CALL: seal'))) expect(line).toMatch(/standing aside/)
})

test('the summary says when, how many, and what could not be judged', () => {
  const text = tell('en').join('\n')
  const row = (name: string): string => new RegExp(`^  ${name}: (.*)$`, 'm').exec(text)?.[1] ?? ''
  expect(row('Lit')).toBe('logged 2026-03-01 07:40')
  expect(row('Collecting')).toMatch(/logged 2026-03-01 09:00 to 11:00$/)
  expect(row('Sealing')).toMatch(/logged 2026-03-01 12:00$/)
  expect(row('Opening')).toMatch(/not logged$/)
  expect(row('Liquid')).toMatch(/4.0 L in the bottles/)
  expect(row('glass of the drip')).toBe('1 2026-03-01 10:10 pale, 2 10:30')
  expect(row('Readings')).toMatch(/^6,480; turned away: none/)
  expect(row('Not judged')).toMatch(/no reading of smoke/)
  const hints = events.filter((event) => event.event === 'hint').length
  expect([...row('Hints').matchAll(/ (\d+)/g)].reduce((sum, [, n]) => sum + Number(n), 0)).toBe(hints)
  const alarms = events.filter((event) => event.event === 'alarm' && event.state === 'unacknowledged').length
  expect([...row('Alarms').matchAll(/ (\d+)/g)].reduce((sum, [, n]) => sum + Number(n), 0)).toBe(alarms)
})

test('feeding and wetting all day long is counted from one phase or call to the next, whatever stands between', () => {
  const busy = Array.from({ length: 90 }, (_, n) => [
    done(8, 2 * n, `busy-feed-${String(n)}`, { action: 'refuel' }),
    done(8, 2 * n + 1, `busy-note-${String(n)}`, n % 10 === 0 ? { action: 'swap-bottle', litres: 1 } : { action: 'wet-condenser' }),
  ]).flat()
  const lines = [...storyLines(6), ...busy].sort((a, b) => a.at.localeCompare(b.at))
  const told = tell('en', gather(playLines(folds, { header: storyHeader, lines })))
  expect(told.length).toBeLessThan(60)
  const times = told.flatMap((line) => [...line.matchAll(/fed the fire(?: \((\d+) times\))?/g)].map(([, n]) => Number(n ?? 1)))
  expect(times.reduce((sum, n) => sum + n, 0)).toBe(90)
  expect(times.length).toBeLessThan(10)
  expect(told.filter((line) => line.includes('changed the bottle'))).toHaveLength(9)
  const stamps = told.flatMap((line) => /^2026-03-01 \d\d:\d\d/.exec(line) ?? [])
  expect(stamps).toEqual([...stamps].sort())
})

test('a loss of vapour is told as a range, as on the page', () => {
  const range = [
    { code: 'vapour-lost-least', value: 2 },
    { code: 'vapour-lost-most', value: 5 },
  ]
  const alarm = {
    kind: 'alarm',
    cause: 0,
    n: 0,
    at: Date.parse(at(9, 0)),
    alarm: 'condenser-hot',
    state: 'unacknowledged',
    priority: 'warning',
  } as const
  const told = accountOf({ ...played, outputs: [{ ...alarm, because: range }] }, configOf(storyHeader), speechIn('en')).join('\n')
  expect(told).toContain('Warning: condenser hot')
  expect(told).not.toMatch(/least|most;/)
})

test('a probe that was without a number for an hour is told', () => {
  const silent = whole.lines.filter((line) => !('topic' in line) || line.at < at(9, 0) || line.at >= at(10, 0))
  expect(tell('en', gather(playLines(folds, { ...whole, lines: silent }))).join('\n')).toMatch(/firebox without a number for 60 min;/)
})

test('every language has every word of its own', () => {
  const english = new Set(tell('en').map((line) => line.replace(/^[\d: -]+/, '')))
  for (const language of languages) {
    const text = tell(language).join('\n')
    expect(text).not.toMatch(/undefined|NaN|\[object/)
    if (language !== 'en')
      for (const line of tell(language).slice(1)) if (/[a-z]{4}/.test(line)) expect(english).not.toContain(line.replace(/^[\d: -]+/, ''))
  }
})

test('an alarm that comes and goes within a phase is one line with a count, and a new one in the next', () => {
  const alarm = (minute: number, state: AlarmState): Output => ({
    kind: 'alarm',
    cause: 0,
    n: 0,
    at: minute,
    alarm: 'condenser-warm',
    state,
    priority: 'notice',
    because: [],
  })
  const spans = alarmSpans([
    alarm(1, 'unacknowledged'),
    alarm(2, 'acknowledged'),
    alarm(3, 'normal'),
    alarm(5, 'unacknowledged'),
    alarm(8, 'normal'),
    { kind: 'phase', cause: 0, n: 0, at: 9, phase: 'tar', because: [] },
    alarm(10, 'unacknowledged'),
  ])
  expect(spans.map(({ times, from, to, seenAt }) => [times, from, to, seenAt])).toEqual([
    [2, 1, 8, 2],
    [1, 10, null, null],
  ])
})
