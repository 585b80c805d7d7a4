import { z } from 'zod'
import { defaultLimits } from '../contract/fold.ts'
import type { Limits } from '../contract/fold.ts'

/** A number of the form: its bounds keep nonsense out, its text says what it does and where the default comes from. */
function limit(name: keyof Limits, bounds: [low: number, high: number], unit: string, text: string, source: string) {
  return z.number().min(bounds[0]).max(bounds[1]).default(defaultLimits[name]).meta({ description: text, unit, source })
}

const practice = 'common practice, no source'

/** The limits of one kiln. Sources are sections of the handbook: trade facts (T), instrument facts (I). */
export const limitsSchema = z.strictObject({
  smokeStartC: limit('smokeStartC', [50, 150], 'Cel', 'Smoke probe at the chimney: collecting may start from here on.', 'T 2.1'),
  smokeStopC: limit('smokeStopC', [100, 250], 'Cel', 'Smoke probe at the chimney: collecting stops from here on.', 'T 2.1'),
  condenserNoticeC: limit('condenserNoticeC', [20, 90], 'Cel', 'Condenser outlet: a notice from here on.', 'I 8.3'),
  condenserWarningC: limit('condenserWarningC', [25, 95], 'Cel', 'Condenser outlet: a warning from here on.', 'I 8.3'),
  condenserOnDelayS: limit('condenserOnDelayS', [0, 300], 's', 'How long the outlet must be over its limit before it alarms.', practice),
  condenserOffDelayS: limit('condenserOffDelayS', [0, 600], 's', 'How long it must be under its limit before the alarm ends.', 'I 6.3'),
  condenserDeadBandK: limit('condenserDeadBandK', [0.5, 20], 'K', 'How far under its limit it must fall first.', 'I 6.3'),
  fireLowC: limit('fireLowC', [100, 900], 'Cel', 'Firebox: the small fire needs wood below this.', practice),
  fireOutC: limit('fireOutC', [50, 700], 'Cel', 'Firebox: the small fire counts as out below this.', practice),
  openHottestC: limit('openHottestC', [20, 45], 'Cel', 'Hottest part of the charge: no trial opening above this.', 'T 7.3.1'),
  openMinimumWaitH: limit('openMinimumWaitH', [4, 120], 'h', 'No trial opening sooner after sealing than this.', practice),
  coCautionPpm: limit('coCautionPpm', [10, 100], 'ppm', 'Carbon monoxide: caution from here on.', 'T 7.1.2'),
  coLeavePpm: limit('coLeavePpm', [50, 400], 'ppm', 'Carbon monoxide: leave the place from here on.', 'T 7.1.2'),
})
