// Keeping the screen on while hands are at work, where the browser lets it (W3C Screen Wake Lock).

let held: WakeLockSentinel | null = null;

export async function stayAwake(wanted: boolean): Promise<void> {
  try {
    if (held?.released) held = null; // the browser takes it back when the page is hidden
    if (wanted) held ??= (await navigator.wakeLock?.request("screen")) ?? null;
    else {
      await held?.release();
      held = null;
    }
  } catch {
    held = null; // the browser does not let it: the screen goes dark as it always does
  }
}
