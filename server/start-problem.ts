import { BrokerProblem } from './mqtt/broker.ts'
import { StoreProblem } from './storage/store.ts'

/** Why the program could not start: one sentence for the person at the terminal, and its exit status (see --help). */
export function startProblem(
  problem: unknown,
  setup: { data: string; port: number; mqttPort: number },
): { sentence: string; status: number } {
  if (problem instanceof StoreProblem) {
    if (problem.code === 'in-use') return { sentence: `It is already running on the data folder ${setup.data}.`, status: 3 }
    return { sentence: `The data folder ${setup.data} cannot be written (${problem.code}): ${problem.message}`, status: 5 }
  }
  if (problem instanceof BrokerProblem) return { sentence: `The port ${setup.mqttPort} for the nodes: ${problem.message}`, status: 4 }
  const { code } = problem as NodeJS.ErrnoException
  if (code === 'EADDRINUSE')
    return { sentence: `The port ${setup.port} is taken by another program; choose another with --port.`, status: 4 }
  if (code === 'EACCES') return { sentence: `The port ${setup.port} may not be opened by this user; choose one above 1023.`, status: 4 }
  if (code === 'EADDRNOTAVAIL') return { sentence: 'This machine does not have the address given with --host.', status: 4 }
  return { sentence: `It could not start: ${(problem as Error).message}`, status: 1 }
}
