const store = globalThis as typeof globalThis & { plumblineStopping?: boolean };

/** This process was told to end: it finishes what it has in hand and takes nothing new. */
export function markStopping(): void {
  store.plumblineStopping = true;
}

export function isStopping(): boolean {
  return store.plumblineStopping === true;
}
