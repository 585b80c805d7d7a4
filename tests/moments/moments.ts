import { en } from '../../web/src/words/en.ts'
import type { DemoDay } from './demo-day.ts'

export interface Moment {
  name: string
  title: string
  /** What somebody who has fired such a kiln for years would say, standing there. */
  neighbour: string
  /** Brings the day to this moment. */
  reach: (day: DemoDay) => Promise<void>
}

const at = (time: string): number => Date.parse(`2026-03-${time}:00Z`)

/** In the order of the day, ten of the firing and four around it; what the person does between two of them follows what the screen said. */
export const moments: Moment[] = [
  {
    name: 'loading',
    title: 'Loading',
    neighbour:
      'Dry clean wood, nothing painted or treated, and no drum that held chemicals. Put your hand on the drum and the earth: cold? Then load, and weigh what you load.',
    reach: (day) => day.playTo(at('14T05:46')),
  },
  {
    name: 'before-lighting',
    title: 'Before lighting',
    neighbour:
      'The drum is loaded. Go through the list once more, prove the alarm, then light a small fire. Do it early: you need the daylight.',
    reach: (day) => day.playTo(at('14T05:55')),
  },
  {
    name: 'kindling',
    title: 'Kindling',
    neighbour:
      'Keep the small fire going. It is only steam for more than an hour yet; leave the bottle where it is, and look at the smoke.',
    reach: async (day) => {
      await day.act({ action: 'note', text: en.ready.logged })
      await day.playTo(at('14T05:58'))
      await day.act({ action: 'arm', tablet: true, buzzer: true })
      await day.playTo(at('14T06:24'))
    },
  },
  {
    name: 'plateau',
    title: 'Plateau: the wood is drying',
    neighbour:
      'The smoke stands where it is because the wood is drying. Do not collect: that is water. Keep the fire even and the cloths wet.',
    reach: (day) => day.playTo(at('14T07:05')),
  },
  {
    name: 'before-starting',
    title: 'Ten minutes before starting',
    neighbour: 'Soon. Put the clean bottle ready and stay here; when the smoke turns yellow and stings, start at once.',
    reach: (day) => day.playTo(at('14T07:30')),
  },
  {
    name: 'collecting-well',
    title: 'Collecting well',
    neighbour:
      'It runs well. Keep the cloths wet, feed a little, look at the drip every twenty minutes, and have the next bottle ready. Some hours of this are left.',
    reach: async (day) => {
      await day.playTo(at('14T08:20'), () => day.due('start-collecting'))
      await day.playFor(3)
      await day.act({ action: 'start-collecting' })
      await day.playTo(at('14T09:00'))
    },
  },
  {
    name: 'cloths-dry',
    title: 'The cloths are dry',
    neighbour: 'Your pipe is hot, the good stuff flies off as vapour. Wet the cloths, now, before anything else.',
    reach: async (day) => {
      await day.playTo(at('14T10:20'), () => day.alarmed('condenser-warm') || day.alarmed('condenser-hot'))
      await day.playFor(1)
    },
  },
  {
    name: 'drip-turning',
    title: 'The drip turns',
    neighbour: 'Look, it is getting dark. Take the bottle away now, and put the tar vessel there. Do not mix them.',
    reach: async (day) => {
      await day.playTo(at('14T11:32'), () => day.due('stop-collecting'))
      await day.playTo(at('14T11:35'))
    },
  },
  {
    name: 'tar',
    title: 'The tar run',
    neighbour:
      'What comes now is tar, keep it apart. Keep the fire, have plate and clay ready, and watch until the smoke is thin and clear.',
    reach: async (day) => {
      await day.playTo(at('14T11:37'))
      await day.act({ action: 'stop-collecting' })
      await day.playTo(at('14T12:40'))
    },
  },
  {
    name: 'seal',
    title: 'Sealing',
    neighbour: 'The smoke is clear, it is charcoal now. Close the mouth first, the chimney last, clay on every crack. Stand to the side.',
    reach: async (day) => {
      // the recording's person seals at 15:37
      await day.playTo(at('14T15:35'), () => day.due('seal'))
      await day.playFor(1)
    },
  },
  {
    name: 'night',
    title: 'Night',
    neighbour:
      'It is shut and it cools. Leave it shut, whatever it looks like. Look for smoke at the seams once, then sleep upwind; the box calls you.',
    reach: async (day) => {
      await day.playTo(at('14T15:42'))
      await day.act({ action: 'arm', tablet: true, buzzer: true })
      await day.playTo(at('14T22:30'))
    },
  },
  {
    name: 'morning',
    title: 'Morning',
    neighbour:
      'It feels cold, but the heart may not be. No sooner than the box says; then a small gap first, stand aside, clay at hand, and wait half an hour.',
    reach: (day) => day.playTo(at('15T06:40')),
  },
  {
    name: 'gap',
    title: 'The small gap',
    neighbour: 'Stand aside and watch it half an hour, clay in your hand. If it glows, smokes or gets warmer: close it at once.',
    reach: async (day) => {
      await day.playTo(at('15T12:24'), () => day.due('open'))
      await day.act({ action: 'crack' })
      await day.playFor(4)
    },
  },
  {
    name: 'unloading',
    title: 'Unloading',
    neighbour: 'Nothing glows, nothing smokes: spread it in the open and watch it. Not into the shed while it is warm, it heats itself.',
    reach: async (day) => {
      await day.playFor(31)
      await day.act({ action: 'open' })
      await day.playFor(2)
    },
  },
]
