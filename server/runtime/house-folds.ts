import { kilnFold } from '../domain/firing/fold.ts'
import { intakeFold } from '../domain/intake/fold.ts'

/** The folds of the house, the same for the kiln, the demo and every replay. */
export const houseFolds = { intake: intakeFold, kiln: kilnFold }
