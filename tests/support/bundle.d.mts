export const storageWorker: { 'storage-worker': string }
export function bundle(programs: Readonly<Record<string, string>>, out?: string): Promise<string>
export function runBundled(
  programs: Readonly<Record<string, string>>,
  argsIn?: (folder: string) => string[],
  flags?: string[],
): Promise<number>
