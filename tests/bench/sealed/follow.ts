import { defaultKilnConfig } from '../../../server/contract/kiln-defaults.ts'
import { roles } from '../../../server/contract/vocabulary.ts'
import { emptyBoard, tell, tickBoard } from '../../../server/domain/alarms/board.ts'
import type { Fallen } from '../../../server/contract/learnt.ts'
import { judgeSealed } from '../../../server/domain/alarms/sealed.ts'
import { alarmTable } from '../../../server/domain/alarms/tables/definitions.ts'
import { nightLesson } from '../../../server/domain/cooling/lesson.ts'
import type { Night, NightAdvice } from '../../../server/domain/cooling/night.ts'
import { stepNight } from '../../../server/domain/cooling/night.ts'
import { mustWithdraw } from '../../../server/domain/cooling/open.ts'
import { noFacts } from '../../../server/domain/firing/facts.ts'
import { emptyHistory, write } from '../../../server/domain/firing/history.ts'
import type { Look } from '../../../server/domain/firing/look.ts'
import type { Signs } from './burning.ts'
import { coldForGood, leadMin, type Course } from './course.ts'
import type { Readings } from './probes.ts'

const minuteMs = 60_000
const sealedAt = 1_000 * leadMin * minuteMs

/** What the fold said of one sealed phase. Minutes after the seal. */
export interface Followed {
  /** Every time the trial opening became due. */
  openings: number[]
  /** Times at which each alarm was raised. */
  raised: { alarm: string; minute: number; because: string }[]
  /** What "not before" said until then, whenever it changed: minutes after the seal. */
  notBefore: number[]
  /** Why it was not due, by the last look before it was: codes. */
  lastAgainst: string[]
  /** What it leaves to the nights after it, newest first; as it was where it leaves nothing. */
  behind: readonly Fallen[]
}

/** Drives the cooling part of the fold, and the alarms of the sealed kiln through the alarm engine, minute by minute. */
export function follow(
  course: Course,
  readings: Readings,
  advise: ((look: Look) => NightAdvice) | null,
  signs?: Signs,
  behind: readonly Fallen[] = [],
): Followed {
  const look: Look = {
    at: sealedAt - leadMin * minuteMs,
    now: {},
    past: Object.fromEntries(roles.map((role) => [role, emptyHistory()])) as Look['past'],
    facts: {
      ...noFacts(),
      litAt: sealedAt - course.litH * 60 * minuteMs,
      sealedAt,
      charge: readings.woodKg === null ? {} : { massKg: readings.woodKg, moisturePct: 0 },
    },
    config: { ...defaultKilnConfig('bench'), ...(behind.length === 0 ? {} : { prior: { firings: behind.length, night: behind } }) },
    litAt: sealedAt - course.litH * 60 * minuteMs,
  }
  const night: Night = { cooling: null, open: null, openNotBefore: null }
  const board = emptyBoard()
  const followed: Followed = { openings: [], raised: [], notBefore: [], lastAgainst: [], behind }
  const channels = [
    ['firebox', readings.firebox],
    ['wall', readings.wall],
    ['outlet', readings.outlet],
    ['smoke', readings.smoke],
    ['ambient', readings.ambient],
    ['core', readings.core],
  ] as const
  let due = false
  const coldFrom = coldForGood(course)
  for (let i = 0; i < course.wall.length; i++) {
    const minute = i - leadMin
    look.at = sealedAt + minute * minuteMs
    for (const [role, values] of channels) {
      const value = values?.[i]
      const level = value === undefined || Number.isNaN(value) ? null : value
      write(look.past[role], look.at - 1, level)
      if (level === null) delete look.now[role]
      else look.now[role] = level
    }
    if (minute < 0) continue
    const advice = minute % 10 === 0 && advise !== null ? advise(look) : null
    stepNight(night, look, { wallOverAirK: readings.coldWallK }, advice)
    const { cooling, open } = night
    if (cooling === null) continue
    if (followed.behind === behind && minute % 10 === 0) {
      const lesson = nightLesson(night, minute >= coldFrom)
      if (lesson !== null) followed.behind = [lesson, ...behind]
    }
    signs?.(cooling, minute, look)
    const said = (item: { alarm: string; state: string; because: { code: string }[] } | null): void => {
      if (item?.state === 'unacknowledged')
        followed.raised.push({ alarm: item.alarm, minute, because: item.because.map((r) => r.code).join(' ') })
    }
    judgeSealed({ cooling, look, modelLeak: advice?.airLeak ?? false }, (telling) =>
      said(tell(board, alarmTable, look.at, 'cooling', telling)),
    )
    for (const item of tickBoard(board, alarmTable, look.at)) said(item)
    if (open === null) continue
    const hour = night.openNotBefore === null ? null : (night.openNotBefore - sealedAt) / minuteMs
    if (hour !== null && followed.openings.length === 0 && followed.notBefore.at(-1) !== hour && hour > minute)
      followed.notBefore.push(hour)
    if (due && mustWithdraw(cooling, look) !== null) due = false
    else if (!due && open.due) {
      due = true
      followed.openings.push(minute)
    }
    if (followed.openings.length === 0 && open.unless.length > 0) followed.lastAgainst = open.unless.map((r) => r.code)
  }
  return followed
}
