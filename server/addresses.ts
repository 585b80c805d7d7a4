import { networkInterfaces } from 'node:os'

/** Addresses in the local network at which a tablet finds this machine. */
function lanAddresses(): string[] {
  return Object.values(networkInterfaces()).flatMap((list) =>
    (list ?? []).filter((one) => one.family === 'IPv4' && !one.internal).map((one) => one.address),
  )
}

/** Where others find a service that listens on `host`; none where it listens for this machine only. */
export function addressesFor(host: string): string[] {
  if (host === '0.0.0.0' || host === '::') return lanAddresses()
  return host === '127.0.0.1' || host === 'localhost' || host === '::1' ? [] : [host]
}
