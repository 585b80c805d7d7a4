import { describe, expect, it } from 'vitest'
import { againstLighting, checkList } from '../../../../server/domain/plan/check-list.ts'
import { evening, sunOf } from '../../../../server/domain/plan/sun.ts'
import { hoursToSeal, lightBy, publishedHoursToSeal } from '../../../../server/domain/plan/light-by.ts'
import { planBack } from '../../../../server/domain/plan/back.ts'
import { foldLedger } from '../../../../server/domain/lots/ledger.ts'
import { checkCodes } from '../../../../server/contract/plan.ts'
import { lifeOfALot } from '../../../support/lot-story.ts'
import { taken } from '../../../support/taken.ts'

function clock(minutes: number): string {
  const whole = Math.round(minutes)
  return `${String(Math.floor(whole / 60)).padStart(2, '0')}:${String(whole % 60).padStart(2, '0')}`
}

function minutesOf(time: string): number {
  const [hours = '', minutes = ''] = time.split(':')
  return Number(hours) * 60 + Number(minutes)
}

describe('the sun', () => {
  it('stands where Meeus puts it', () => {
    // Meeus, Astronomical Algorithms, examples 25.a and 28.b: 13 Oct 1992, declination -7.785°, equation of time +13 min 42.6 s (from memory)
    const sun = sunOf('1992-10-13', 0)
    expect(Math.abs(sun.declinationDeg + 7.785)).toBeLessThan(0.01)
    expect(Math.abs(sun.equationOfTimeMin - 13.71)).toBeLessThan(0.05)
  })

  it('is at the tropics at the solstices and on the equator at the equinoxes', () => {
    expect(Math.abs(sunOf('2026-06-21').declinationDeg - 23.44)).toBeLessThan(0.05)
    expect(Math.abs(sunOf('2026-12-21').declinationDeg + 23.44)).toBeLessThan(0.05)
    expect(Math.abs(sunOf('2026-03-20').declinationDeg)).toBeLessThan(0.5)
  })

  // sunset tables computed by P. Schlyter's public-domain program (rim of the sun, refraction), as shipped with Astro::Sunrise
  it.each<[string, string, number, number, number, string]>([
    ['Greenwich', '2013-01-01', 51.467, 0, 0, '16:02'],
    ['Greenwich', '2013-03-21', 51.467, 0, 0, '18:15'],
    ['Greenwich', '2013-06-21', 51.467, 0, 0, '20:21'],
    ['Reykjavik', '2013-01-01', 64.067, -21.967, -60, '14:45'],
    ['Reykjavik', '2013-03-21', 64.067, -21.967, -60, '18:46'],
    ['Quito', '2013-01-01', -0.25, -78.583, -300, '18:22'],
    ['Quito', '2013-03-21', -0.25, -78.583, -300, '18:25'],
    ['El Hierro', '2013-01-01', 27.733, -18.05, -60, '17:29'],
    ['El Hierro', '2013-03-21', 27.733, -18.05, -60, '18:24'],
    // a published test value of another library: Cupertino, 17:00:33
    ['Cupertino', '2024-01-01', 37.323, -122.032, -480, '17:00'],
    // London tables, 21 December (from memory)
    ['London', '2026-12-21', 51.507, -0.128, 0, '15:53'],
    // Sydney tables, 21 December, summer time (from memory)
    ['Sydney', '2026-12-21', -33.868, 151.209, 660, '20:05'],
  ])('sets at %s on %s within three minutes of the table', (_, date, latitude, longitude, offset, time) => {
    const { sunsetMin, darkMin } = taken(evening(date, latitude, longitude, offset))
    expect(Math.abs(sunsetMin - minutesOf(time)), clock(sunsetMin)).toBeLessThanOrEqual(3)
    expect(darkMin).toBeGreaterThan(sunsetMin)
  })

  it('does not set everywhere, and the place must be on earth', () => {
    expect(evening('2026-06-21', 75, 20, 120)).toMatchObject({ ok: false, problems: [{ code: 'no-sunset' }] })
    expect(evening('2026-06-21', 95, 20, 120)).toMatchObject({ ok: false, problems: [{ field: 'latitude' }] })
    expect(evening('21.6.2026', 5, 20, 120)).toMatchObject({ ok: false, problems: [{ code: 'not-a-date' }] })
    const white = taken(evening('2026-06-21', 65, 25, 180))
    expect(white.darkMin).toBe(white.sunsetMin)
  })
})

describe('light by', () => {
  it('leaves time for a slow firing before the sun is down, from what others wrote until there are three of one’s own', () => {
    const plan = taken(lightBy('2026-11-25', 15, 100, 420, []))
    expect(plan.from).toBe('published')
    expect(plan.hoursToSeal).toEqual(publishedHoursToSeal)
    expect(plan.sealByMin).toBeLessThanOrEqual(plan.sunsetMin - 30)
    expect(plan.lightByMin + 60 * plan.hoursToSeal.high).toBeLessThanOrEqual(plan.sealByMin)
    expect(plan.sealByMin - plan.lightByMin - 60 * plan.hoursToSeal.high).toBeLessThan(5)
  })

  it('holds the drum burners’ own times in the published range', () => {
    // bamboo drum kiln, runs 55, 56, 60 and 62 to 68: refining ends 6 h 54, 6 h 19, 6 h 07; begins 7 h 24, 8 h 22, 7 h 58, 7 h 15, 6 h 36, 7 h 17, 6 h 22
    const hours = [6.9, 6.32, 6.12, 7.4, 8.37, 7.97, 7.25, 6.6, 7.28, 6.37]
    expect(hours.filter((h) => h >= publishedHoursToSeal.low && h <= publishedHoursToSeal.high)).toHaveLength(hours.length)
  })

  it('takes the slowest of few own firings, and leaves out the rarest of many', () => {
    expect(hoursToSeal([9, 7, 8])).toEqual({ range: { low: 7, likely: 8, high: 9 }, from: 'own-record' })
    const many = hoursToSeal([7, 7.1, 7.2, 7.3, 7.4, 7.5, 7.6, 7.7, 7.8, 7.9, 8, 8.1, 8.2, 8.3, 8.4, 8.5, 8.6, 8.7, 8.8, 20])
    expect(many.range.high).toBeLessThan(10)
    expect(many.range.likely).toBeCloseTo(7.95, 10)
  })
})

describe('planning back', () => {
  const ledger = taken(foldLedger(lifeOfALot))
  const wish = { wantedMl: 5000, by: '2027-12-01', crudeLPerFiring: { low: 4, likely: 7, high: 10 }, woodKgPerFiring: 65, daysPerFiring: 3 }
  const today = { date: '2027-01-14', clockSure: true }

  it('needs no firing while the shelf holds enough', () => {
    expect(taken(planBack(wish, ledger, today))).toMatchObject({ fromStockMl: 5000, shortMl: 0, firings: { likely: 0 }, gatherBy: null })
  })

  it('counts firings, wood and days back from the date', () => {
    const plan = taken(planBack({ ...wish, wantedMl: 20_000 }, ledger, today))
    // 7 L on the shelf; 150 mL crude with 50 mL of middle left in lot 7; 12.95 L short; 7 L x 0.65 = 4.55 L a firing: 3 firings, 2 at best (7.5 L), 7 at worst (2 L)
    expect(plan.fromStockMl).toBe(7000)
    expect(plan.fromResting).toEqual([{ lot: '7', readyOn: '2027-01-16', expectedMl: 50 }])
    expect(plan.shortMl).toBe(12_950)
    expect(plan.firings).toEqual({ least: 2, likely: 3, most: 7 })
    expect(plan.woodKg).toBe(195)
    // 1 Dec less 92 days is 31 Aug, two firings earlier 25 Aug, 28 days of drying before 28 July
    expect(plan).toMatchObject({ lastFiringOn: '2027-08-31', firstFiringOn: '2027-08-25', gatherBy: '2027-07-28' })
  })

  it('takes a resting lot into account only when its mark comes in time', () => {
    const resting = taken(foldLedger(lifeOfALot.slice(0, 1)))
    const early = taken(planBack({ ...wish, by: '2027-05-01' }, resting, { date: '2026-11-01', clockSure: true }))
    expect(early.fromResting).toEqual([{ lot: '7', readyOn: '2027-01-14', expectedMl: 5000 }])
    expect(taken(planBack({ ...wish, by: '2027-01-14' }, resting, { date: '2026-11-01', clockSure: true })).fromResting).toHaveLength(1)
    const first = lifeOfALot[0]
    if (first?.event.what !== 'fill') throw new Error('the story begins with filling')
    const treated = taken(foldLedger([{ ...first, event: { ...first.event, treatedWood: true } }]))
    expect(taken(planBack({ ...wish, by: '2027-05-01' }, treated, { date: '2026-11-01', clockSure: true })).fromResting).toEqual([])
    const tooSoon = planBack({ ...wish, by: '2027-01-13' }, resting, { date: '2026-11-01', clockSure: true })
    expect(tooSoon).toMatchObject({ ok: false, problems: [{ code: 'date-too-early', field: 'by' }] })
  })

  it('says the first date that can be met', () => {
    const refused = planBack({ ...wish, wantedMl: 20_000, by: '2027-03-01' }, ledger, today)
    if (refused.ok) throw new Error('was accepted')
    const date = String(refused.problems[0]?.params['date'])
    expect(planBack({ ...wish, wantedMl: 20_000, by: date }, ledger, today).ok).toBe(true)
  })

  it('refuses bad entries, a day that has gone, and a clock in doubt', () => {
    expect(planBack({ ...wish, wantedMl: 0, woodKgPerFiring: -1 }, ledger, today)).toMatchObject({
      ok: false,
      problems: [{ field: 'wantedMl' }, { field: 'woodKgPerFiring' }],
    })
    expect(planBack({ ...wish, by: '2026-12-01' }, ledger, today)).toMatchObject({ ok: false, problems: [{ code: 'date-too-early' }] })
    expect(planBack(wish, ledger, { ...today, clockSure: false })).toMatchObject({ ok: false, problems: [{ code: 'clock-unconfirmed' }] })
  })
})

describe('before lighting', () => {
  it('asks for each thing once and refuses to light on any open refusal', () => {
    expect(checkList().map(({ code }) => code)).toEqual([...checkCodes])
    const all = Object.fromEntries(checkCodes.map((code) => [code, true]))
    expect(againstLighting(all, 20, 20)).toEqual([])
    expect(againstLighting({ ...all, 'wood-not-treated': false }, 20, 20)).toEqual(['wood-not-treated'])
    expect(againstLighting({ ...all, 'water-ready': false }, 20, 20)).toEqual([])
  })

  it('takes a drum or earth above 40 °C for one that may hold embers', () => {
    const all = Object.fromEntries(checkCodes.map((code) => [code, true]))
    expect(againstLighting(all, 41, null)).toEqual(['drum-cold'])
    expect(againstLighting(all, 20, 45)).toEqual(['drum-cold'])
  })
})
