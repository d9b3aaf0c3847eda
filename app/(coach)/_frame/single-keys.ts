const KEPT = 'plumbline-keys';

/** Whether single letters act on this device. */
export function areKeysOn(): boolean {
  return localStorage.getItem(KEPT) !== 'off';
}

export function turnKeys(on: boolean): void {
  localStorage.setItem(KEPT, on ? 'on' : 'off');
}

/** A key that belongs to a field, to the browser or to the system. */
export function isTyping(event: KeyboardEvent): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey) return true;
  const field = (event.target as HTMLElement).closest('input, select, textarea, [contenteditable]');
  return field !== null && !(field instanceof HTMLInputElement && field.type === 'checkbox');
}
