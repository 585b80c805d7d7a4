/** The steps of the first run, in order; each stands in the address as `#/setup/<name>`. */
export const stepNames = ['language', 'clock', 'kiln', 'nodes', 'roles', 'calibration', 'sound', 'tablet', 'rehearsal'] as const
export type StepName = (typeof stepNames)[number]
