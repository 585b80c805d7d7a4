import type { SetupAnswer } from '../../../../server/contract/setup.ts'

/** The address that a node in the network uses; what stands in the address bar serves when it is one. Null: this machine only. */
export function boxAddress(box: SetupAnswer['box'], openedAt: string): string | null {
  const local = openedAt === 'localhost' || openedAt.startsWith('127.') || openedAt === '[::1]'
  return local ? (box.addresses[0] ?? null) : openedAt
}

/** The whole node of the firmware notes ("First reading in a few minutes"), with this box filled in. */
export function firstReading(box: SetupAnswer['box'], address: string): string {
  const port = box.mqttPort === null || box.mqttPort === 1883 ? '' : ` -p ${box.mqttPort}`
  return [
    `mosquitto_pub -h ${address}${port} -q 1 \\`,
    `  -t ${box.root}/1/${box.site}/try/readings \\`,
    `  -m '{"firebox":20,"wall":21,"outlet":22}'`,
  ].join('\n')
}
