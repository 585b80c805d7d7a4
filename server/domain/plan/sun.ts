import type { Checked } from '../../contract/entry-problems.ts'
import type { DateText } from '../../contract/lots.ts'
import { dayNumber, readDate } from '../entered/calendar.ts'
import { accept, outside, problem, refuse } from '../entered/number.ts'

const degree = Math.PI / 180

const sin = (deg: number): number => Math.sin(deg * degree)
const cos = (deg: number): number => Math.cos(deg * degree)
const tan = (deg: number): number => Math.tan(deg * degree)

/** Sun at an hour UTC: Meeus, Astronomical Algorithms, chapters 25 and 28, low accuracy (about 0.01 degree; coefficients from memory). */
export function sunOf(date: DateText, hourUtc = 12): { declinationDeg: number; equationOfTimeMin: number } {
  // 2000-01-01 12:00 is day 10957.5 since 1970
  const t = (dayNumber(date) + hourUtc / 24 - 10_957.5) / 36_525
  const meanLongitude = 280.46646 + t * (36_000.76983 + 0.0003032 * t)
  const anomaly = 357.52911 + t * (35_999.05029 - 0.0001537 * t)
  const eccentricity = 0.016708634 - t * (0.000042037 + 0.0000001267 * t)
  const centre =
    sin(anomaly) * (1.914602 - t * (0.004817 + 0.000014 * t)) + sin(2 * anomaly) * (0.019993 - 0.000101 * t) + sin(3 * anomaly) * 0.000289
  const node = 125.04 - 1934.136 * t
  const longitude = meanLongitude + centre - 0.00569 - 0.00478 * sin(node)
  const obliquity = 23.4392911 - t * 0.0130042 + 0.00256 * cos(node)
  const y = tan(obliquity / 2) * tan(obliquity / 2)
  const equation =
    y * sin(2 * meanLongitude) -
    2 * eccentricity * sin(anomaly) +
    4 * eccentricity * y * sin(anomaly) * cos(2 * meanLongitude) -
    0.5 * y * y * sin(4 * meanLongitude) -
    1.25 * eccentricity * eccentricity * sin(2 * anomaly)
  return { declinationDeg: Math.asin(sin(obliquity) * sin(longitude)) / degree, equationOfTimeMin: (4 * equation) / degree }
}

/** Height of the sun's centre: its rim at the horizon with refraction, and the end of civil twilight. */
const sunsetZenithDeg = 90.833
const darkZenithDeg = 96

export interface Evening {
  /** Minutes after local midnight; may pass 1440. */
  sunsetMin: number
  darkMin: number
}

/** @param longitude east positive, degrees; @param offsetMin local time minus UTC. Good to about two minutes below 60° latitude. */
export function evening(date: DateText, latitude: number, longitude: number, offsetMin: number): Checked<Evening> {
  const day = readDate('date', date)
  const wrong = [
    ...(day.ok ? [] : day.problems),
    ...outside('latitude', latitude, -90, 90, '°'),
    ...outside('longitude', longitude, -180, 180, '°'),
    ...outside('offsetMin', offsetMin, -720, 840, 'min'),
  ]
  if (wrong.length > 0) return refuse(...wrong)
  const eveningHourUtc = 18 - longitude / 15
  const { declinationDeg, equationOfTimeMin } = sunOf(date, eveningHourUtc)
  const at = (zenithDeg: number): number => {
    const cosine = cos(zenithDeg) / (cos(latitude) * cos(declinationDeg)) - tan(latitude) * tan(declinationDeg)
    return 720 - 4 * (longitude - Math.acos(cosine) / degree) - equationOfTimeMin + offsetMin
  }
  const sunsetMin = at(sunsetZenithDeg)
  if (Number.isNaN(sunsetMin)) return refuse(problem('no-sunset', 'date', { date, latitude }))
  const darkMin = at(darkZenithDeg)
  // white nights: it never gets dark, so the sunset is all there is to go by
  return accept({ sunsetMin, darkMin: Number.isNaN(darkMin) ? sunsetMin : darkMin })
}
