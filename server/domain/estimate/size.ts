export const memberCount = 80
/** Members live in beats of two minutes. */
export const beatS = 120
/** History that the members are run through again: 20 h of burning, in beats. */
export const historyBeats = 600
/** Grid steps in a beat. */
export const gridS = 10
export const gridsPerBeat = beatS / gridS
