const store = globalThis as typeof globalThis & { plumblineStopping?: boolean };

/** This process was told to end: it finishes what it has in hand and takes nothing new. */
export function markStopping(): void {
  store.plumblineStopping = true;
}

/** For the pages, whose server is closed by Next itself: who still asks is told. */
export function markAtSignals(): void {
  for (const signal of ['SIGTERM', 'SIGINT'] as const) process.once(signal, markStopping);
}

export function isStopping(): boolean {
  return store.plumblineStopping === true;
}
