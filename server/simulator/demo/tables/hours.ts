/** When the demo's person does what is called, seconds after lighting; made by `npm run demo-firing`, which listens to the calls. */
export const demoHours: Hours = { start: 6420, stop: 18960, seal: 34620, crack: 107700 }

export interface Hours {
  start: number | null
  stop: number | null
  seal: number | null
  crack: number | null
}
