import { Buzzer } from '../../server/simulator/buzzer/buzzer.ts'
import type { Sound } from '../../server/simulator/buzzer/rules.ts'

export interface Listening {
  buzzer: Buzzer
  /** What it sounds now; undefined until it has heard anything. */
  sound: () => Sound | undefined
}

/** The reference buzzer beside a service on this machine, started. The caller stops it. */
export function listeningBuzzer(mqttPort: number | null, node = 'buzzer'): Listening {
  const sounds: Sound[] = []
  const buzzer = new Buzzer({
    broker: `mqtt://127.0.0.1:${String(mqttPort)}`,
    root: 'firing',
    site: 'yard',
    node,
    boot: 7,
    onSound: (sound) => sounds.push(sound),
  })
  buzzer.start()
  return { buzzer, sound: () => sounds.at(-1) }
}
