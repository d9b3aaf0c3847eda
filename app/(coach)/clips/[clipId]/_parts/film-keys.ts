import type { KeyboardEvent } from 'react';

type Acts = { toggle: () => void; step: (by: 1 | -1, times: number) => void };

/** Keys of a film that has the focus. */
export function keysOf({ toggle, step }: Acts): (event: KeyboardEvent) => void {
  return (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey || event.target !== event.currentTarget) return;
    const times = event.shiftKey ? 10 : 1;
    if (event.key === ' ') toggle();
    else if (event.key === 'ArrowRight') step(1, times);
    else if (event.key === 'ArrowLeft') step(-1, times);
    else return;
    event.preventDefault();
  };
}
