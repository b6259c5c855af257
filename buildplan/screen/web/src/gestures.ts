// Going on by arrow keys and by a finger drawn across the page.

const ACROSS = 60; // points of the screen

/** Tell every press of an arrow key that nothing else on the page wants: 1 on, -1 back. */
export function onArrows(then: (by: 1 | -1) => void): void {
  document.addEventListener("keydown", (event) => {
    const target = event.target as HTMLElement;
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    if (target.matches("input:not([type=checkbox]), textarea, select, .stage")) return;
    if (event.key === "ArrowRight") then(1);
    else if (event.key === "ArrowLeft") then(-1);
  });
}

/** Tell every swipe that begins outside what is turned or written in. */
export function onSwipes(within: HTMLElement, then: (by: 1 | -1) => void): void {
  let from: { x: number; y: number } | null = null;
  within.addEventListener("touchstart", (event) => {
    const touch = event.touches.length === 1 ? event.touches[0] : undefined;
    const free = !(event.target as HTMLElement).closest(".stage, input, textarea");
    from = touch && free ? { x: touch.clientX, y: touch.clientY } : null;
  });
  within.addEventListener("touchend", (event) => {
    const touch = event.changedTouches[0];
    if (!from || !touch) return;
    const [x, y] = [touch.clientX - from.x, touch.clientY - from.y];
    from = null;
    if (Math.abs(x) > ACROSS && Math.abs(x) > 2 * Math.abs(y)) then(x < 0 ? 1 : -1);
  });
}
