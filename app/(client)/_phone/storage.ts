/** Begins the name of everything kept on this phone, so that signing out takes it all along. */
export const PREFIX = 'plumbline:';

/** What is kept under a name; null when nothing is, or the browser keeps nothing. */
export function read<Value>(name: string): Value | null {
  try {
    const text = localStorage.getItem(PREFIX + name);
    return text === null ? null : (JSON.parse(text) as Value);
  } catch {
    return null; // unreadable or not allowed: as if nothing was kept, and the screen says "not saved"
  }
}

/** Written before the call returns, so a killed tab loses nothing. False: this browser keeps nothing. */
export function write(name: string, value: unknown): boolean {
  try {
    localStorage.setItem(PREFIX + name, JSON.stringify(value));
    return true;
  } catch {
    return false;
  }
}

export function remove(name: string): void {
  try {
    localStorage.removeItem(PREFIX + name);
  } catch {
    // Nothing can be kept, so nothing can stay.
  }
}

/** Signing out leaves nothing of anybody on the phone. */
export function clearEverythingKept(): void {
  try {
    for (const key of Object.keys(localStorage)) if (key.startsWith(PREFIX)) localStorage.removeItem(key);
    indexedDB.deleteDatabase('plumbline-films');
  } catch {
    // A browser that keeps nothing has nothing to clear.
  }
}
