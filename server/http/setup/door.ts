import type { BeepView, ClockWord, HeardWord, RehearsalScene, RehearsalView, SetupAnswer } from '../../contract/setup.ts'

/** What the first run asks of the box beside its sites. */
export interface SetupDoor {
  box(): SetupAnswer['box']
  clockWord(): ClockWord | null
  /** @throws StoreProblem */
  sayClock(right: boolean, by: string): Promise<void>
  heard(): HeardWord[]
  /** @throws StoreProblem */
  sayHeard(word: Omit<HeardWord, 'at'>, by: string): Promise<void>
  /** Asks every buzzer in reach to beep. */
  beep(): void
  beeps(): BeepView[]
  /** Only while no kiln burns: the buzzers belong to the kiln then. */
  rehearse(scene: RehearsalScene): 'started' | 'kiln-burns'
  rehearsal(): RehearsalView | null
  endRehearsal(): void
}
