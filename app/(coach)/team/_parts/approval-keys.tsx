'use client';
import { useEffect } from 'react';

/** The same switch as on the board: off there is off here. */
const KEPT = 'plumbline-keys';
const ACTS: Record<string, string> = { a: 'approve', c: 'change', b: 'send-back', u: 'undo' };

/** Approvals by keyboard: j and k move, Enter opens the client, single letters decide. Off while typing. */
export function ApprovalKeys() {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (localStorage.getItem(KEPT) === 'off' || isTyping(event)) return;
      if (press(event)) event.preventDefault();
    };
    document.addEventListener('keydown', onKey);
    return () => document.removeEventListener('keydown', onKey);
  }, []);
  return (
    <p>
      <small>
        Keys: j and k move, Enter opens the client, a approve, c change, b send back, u undo. They are
        switched off with those of the board.
      </small>
    </p>
  );
}

function isTyping(event: KeyboardEvent): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey) return true;
  return (event.target as HTMLElement).closest('input, select, textarea') !== null;
}

function items(): HTMLElement[] {
  return [...document.querySelectorAll<HTMLElement>('[data-approval]')];
}

function press(event: KeyboardEvent): boolean {
  const here = document.activeElement?.closest<HTMLElement>('[data-approval]') ?? null;
  if (event.key === 'j' || event.key === 'ArrowDown') return move(here, 1);
  if (event.key === 'k' || event.key === 'ArrowUp') return move(here, -1);
  const target = here ?? items()[0];
  if (event.key === 'Enter' && document.activeElement === here)
    return click(here?.querySelector('a[data-open]'));
  const act = ACTS[event.key];
  return act !== undefined && click(target?.querySelector(`[data-act="${act}"]`));
}

function move(from: HTMLElement | null, by: number): boolean {
  const all = items();
  const at = from ? all.indexOf(from) : -1;
  const next = all[Math.max(0, Math.min(all.length - 1, at + by))];
  next?.focus();
  return next !== undefined;
}

function click(element: Element | null | undefined): boolean {
  if (!(element instanceof HTMLElement)) return false;
  element.click();
  return true;
}
