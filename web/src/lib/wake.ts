/** Keeps the screen on where the browser allows it (secure pages only; on plain HTTP the tablet's own setting has to do it). */
export class Awake {
  #lock: WakeLockSentinel | null = null

  readonly hold = async (): Promise<void> => {
    if (!('wakeLock' in navigator) || document.visibilityState !== 'visible') return
    try {
      this.#lock = await navigator.wakeLock.request('screen')
    } catch {
      // refused, for instance on a low battery: the sleep watch will tell
      this.#lock = null
    }
  }

  start(): void {
    void this.hold()
    document.addEventListener('visibilitychange', this.hold)
  }

  stop(): void {
    document.removeEventListener('visibilitychange', this.hold)
    void this.#lock?.release()
  }
}
