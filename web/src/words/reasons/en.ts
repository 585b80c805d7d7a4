import type { Reason } from '../../../../server/contract/fold.ts'
import { told } from '../../lib/words/told.ts'
import type { ReasonWords } from '../../lib/words/shape.ts'

const held = (r: Reason): string => (told.minutes(r) > 0 ? ` for ${told.minutes(r)} min` : '')
const span = (r: Reason): string =>
  told.span(
    r,
    (min) => `${min} min`,
    (h, min) => `${h} h ${min} min`,
  )

/** Why the service says what it says; one short sentence each, without its full stop. */
export const en = {
  logged: () => 'You logged it',
  'logged-light': () => 'You logged the lighting',
  'logged-seal': () => 'You logged the sealing',
  'seal-corrected': () => 'The sealing was taken back',
  unloaded: () => 'It was unloaded',
  'seen-smoke-yellow': () => 'The smoke looks yellow',
  'seen-smoke-blue': () => 'The smoke looks thin and blue',
  'seen-smoke-clear': () => 'The smoke looks clear',
  'seen-smoke-white': () => 'The smoke looks thick and white',
  'seen-smoke-none': () => 'No smoke is seen',
  'seen-drip-none': () => 'No drip is seen',
  'seen-drip-clear': () => 'The drip looks like water',
  'seen-drip-pale': () => 'The drip looks pale',
  'seen-drip-amber': () => 'The drip looks amber',
  'seen-drip-dark': () => 'The drip looks dark',
  'seen-drip-black': () => 'The drip looks black',

  'smoke-over': (r, m) => `Smoke ${told.temperature(r, m)}, over ${told.limit(r, m)}${held(r)}`,
  'smoke-under': (r, m) => `Smoke ${told.temperature(r, m)}, under ${told.limit(r, m)}${held(r)}`,
  'smoke-now': (r, m) => `Smoke now ${told.temperature(r, m)}`,
  'smoke-climbs': (r, m) => `Smoke climbs ${told.kelvins(r, m)} an hour`,
  'smoke-left-plateau': (r, m) => `Smoke ${told.temperature(r, m)} has left its level of the drying`,
  'smoke-will-reach': (r, m) => `Smoke will soon reach ${told.temperature(r, m)}`,
  'smoke-collapsed': (r, m) => `Smoke fell to ${told.temperature(r, m)} at once`,
  'wall-over': (r, m) => `Drum wall ${told.temperature(r, m)}, over ${told.limit(r, m)}${held(r)}`,
  'wall-over-earlier': (r, m) =>
    `Drum wall ${told.temperature(r, m)}, over the ${told.limit(r, m)} at which earlier firings of this kiln had to stop`,
  'wall-climbs': (r, m) => `Drum wall climbs ${told.kelvins(r, m)} an hour`,
  'wall-climbs-under': () => 'The drum wall hardly climbs any more',
  'wall-falling': (r, m) => `Drum wall changes by ${told.kelvins(r, m)} an hour`,
  'wall-unknown': () => 'The drum wall can not be judged',
  'wall-rose': (r, m) => `Drum wall rose by ${told.kelvins(r, m)} since its lowest`,
  'core-rose': (r, m) => `Inside rose by ${told.kelvins(r, m)} since its lowest`,
  'firebox-rose': (r, m) => `Firebox rose by ${told.kelvins(r, m)} since its lowest`,
  'firebox-over': (r, m) => `Firebox ${told.temperature(r, m)}, over ${told.limit(r, m)}${held(r)}`,
  'firebox-under': (r, m) => `Firebox ${told.temperature(r, m)}, under ${told.limit(r, m)}${held(r)}`,
  'firebox-now': (r, m) => `Firebox ${told.temperature(r, m)}`,
  'firebox-falls': (r, m) => `Firebox falls ${told.kelvins(r, m)} an hour`,
  'fed-before': (r, m) => `Fed ${told.number(r, m)} min ago`,
  'fire-out': (r, m) => `Firebox ${told.temperature(r, m)}: the fire is out`,
  'fire-failed': () => 'The fire died before the wood caught',
  'signs-gone': (r) => `The signs have been gone${held(r)}`,
  'outlet-over': (r, m) => `Outlet ${told.temperature(r, m)}, over ${told.limit(r, m)}${held(r)}`,
  'outlet-over-wet': (r, m) => `Outlet ${told.temperature(r, m)}, warmer than with wet cloths${held(r)}`,
  'outlet-climbs': (r, m) => `Outlet ${told.temperature(r, m)} and climbing`,
  'wetting-did-not-help': () => 'The last wetting did not help',

  'heat-in': () => 'Enough heat has gone in',
  'heat-since-wall-100': () => 'Enough heat has gone in since the wall passed 100 °C',
  'time-since-wall-160': () => 'Long enough since the wall passed 160 °C',
  'time-since-stop': () => 'Long enough since collecting stopped',
  'vapour-flows': () => 'Vapour comes through the pipe',
  'condenser-load-under': () => 'Less vapour comes through than before',
  'charge-assumed': (r, m) => `The charge was not weighed; ${r.value === undefined ? '' : m.kilograms(r.value)} is assumed`,
  'acid-share': (r, m) => `By estimate ${told.percent(r, m)} of the drip is what makes it vinegar`,
  'tar-share': (r, m) => `By estimate ${told.percent(r, m)} of the drip is tar`,
  'learned-tar': (r, m) => `By what many firings taught ${told.percent(r, m)} of the drip is tar`,
  'worth-now': (r) => ((r.value ?? 0) > 0 ? 'Collecting is worth it now' : 'Collecting is not worth it now'),
  charred: (r, m) => `By estimate ${told.percent(r, m)} is charred through`,

  'not-cold': () => 'It is not cold yet',
  'sealed-for': (r, m) => `Sealed for ${span(r)}; at least ${told.most(r, m)} h are needed`,
  'hottest-below': (r, m) => `The hottest part may be ${told.temperature(r, m)}; it must be below ${told.limit(r, m)}`,
  'hottest-over': (r, m) => `The hottest part may be ${told.temperature(r, m)}, over ${told.limit(r, m)}`,
  'hottest-upper': (r, m) => `The hottest part may be ${told.temperature(r, m)}; it must be below ${told.limit(r, m)}`,
  'model-hottest': (r, m) =>
    `By the model of the kiln the hottest part may be ${told.temperature(r, m)}; by that one it must be below ${told.limit(r, m)}`,
  'wall-fell-off': () => 'The wall fell faster than a sealed drum can: its probe has come off. Keep it shut',
  'wall-falls-fast': () =>
    'The drum wall cools faster than a sealed drum usually does: its probe may be losing touch, or the charcoal lags behind',
  'wall-tells-no-more': (r, m) =>
    `The drum wall has been as cool as the air for ${told.number(r, m)} h and tells nothing more of the inside`,
  'fire-came-back': () => 'A fire came back in the closed kiln: no opening is called before it has been closed anew and logged',
  'own-signs-only': () =>
    'Time alone is no proof: another day shut, then only by your own signs and local rules, a small gap, standing aside, clay ready, watched for 30 min',
  'hottest-unknown': () => 'How hot the inside is can not be told yet',
  'firebox-near-air': (r, m) => `Firebox ${told.temperature(r, m)}; wanted below ${told.limit(r, m)}`,
  'smoke-near-air': (r, m) => `Chimney ${told.temperature(r, m)}; wanted below ${told.limit(r, m)}`,
  'core-near-air': (r, m) => `Inside ${told.temperature(r, m)}; wanted below ${told.limit(r, m)}`,
  'no-rise': () => 'No rise since sealing',
  'no-leak': () => 'No sign of air getting in',
  'any-rise': () => 'Any rise, glow or smoke: close it again',
  'cools-slower': () => 'It cools slower than it did',
  'model-says-leak': () => 'It cools slower than a tight kiln',
  'may-burn-unseen': () => 'It may still burn where the wall probe feels little of it',
  'one-wall-probe': () => 'It rests on one probe at the wall: press it to the steel first; when its number rises, keep it shut',
  'no-core-probe': (r, m) =>
    `No probe sits inside the charge, so the wait is about ${told.number(r, m)} h longer; put none in before it is unloaded`,
  'no-air-probe': () => 'There is no probe for the air outside',
  'no-firebox': () => 'Nothing is heard of the firebox',
  'no-wall': () => 'Nothing is heard of the drum wall',
  'no-outlet': () => 'Nothing is heard of the condenser outlet',
  'no-smoke-probe': () => 'There is no smoke probe: the smoke is estimated',
  'smoke-as-learnt': (r, m) =>
    `No smoke probe: the smoke is estimated as ${r.value === 1 ? 'an earlier firing' : `${told.number(r, m)} earlier firings`} of this kiln taught`,
  'smoke-probe-failed': () => 'The smoke probe gives no number: the smoke is estimated',
  'smoke-probe-new': () => 'The smoke probe has been heard for too short a time: it counts in a few minutes',

  'stop-may-come': () => 'Stopping may come soon: a late stop then spoils one bottle only',
  'glass-every': (r, m) => `A glass every ${told.number(r, m)} min teaches most`,
  'start-near': () => 'The start is near',
  'stop-near': () => 'The stop is near',
  'seal-near': () => 'Sealing is near',
  'seal-not-logged': (r, m) => `Sealing was called ${told.number(r, m)} min ago and is not logged. Did you seal it?`,
  'burns-on': (r, m) => `Firebox still ${told.temperature(r, m)}, as before it was logged as sealed. Is it really sealed?`,
  'looks-closed': () => 'Fire and wall fall as in a closed kiln. Did you seal it?',
  'runs-by-itself': () => 'The charge runs by itself now',

  'co-over': (r, m) => `Carbon monoxide ${told.number(r, m)} ppm, over ${told.most(r, m)}${held(r)}`,
  'silent-for': (r, m, where) => `Nothing from ${where} for ${told.number(r, m)} s`,
  'same-for': (r, m, where) => `${where}: the same number for ${told.number(r, m)} min`,
  'node-said-lost': () => 'It fell off the network',
  'heard-again': () => 'It is heard again',
  'back-inside': (r, m) => `Now at ${told.temperature(r, m)}, on its way back`,
  'node-silent': (r, m) => `All its ${told.number(r, m)} probes are silent`,
} satisfies Record<string, ReasonWords>

export type ReasonList = Record<keyof typeof en, ReasonWords>

/** A range that arrives as two reasons, `…-least` and `…-most`. */
export const ranges = {
  'litres-lost': (low: string, high: string) => `${low} to ${high} an hour are lost`,
}
