/** Keeps the screen on while a birth is open; gives back what ends it. Devices without a wake lock are left alone. */
export function keepAwake(): () => void {
  let lock: WakeLockSentinel | undefined;
  let ended = false;

  async function take(): Promise<void> {
    if (document.hidden || ended || !('wakeLock' in navigator)) return;
    try {
      lock = await navigator.wakeLock.request('screen');
      if (ended) void lock.release();
    } catch {
      // Low battery or a policy: the screen then goes dark as usual, and the clock counts on.
    }
  }

  const again = (): void => void take();
  document.addEventListener('visibilitychange', again);
  void take();
  return () => {
    ended = true;
    document.removeEventListener('visibilitychange', again);
    void lock?.release();
  };
}
