import { setTimeout } from 'node:timers/promises';

/** A reading takes tens of milliseconds; a connection that died without a word can hang for minutes. */
const PATIENCE_MS = 2_000;
/** Such a wait keeps no process alive. */
const UNHELD = { ref: false };

/**
 * One reading for all who ask for the same before it begins: twenty coaches who open their mornings at once cost one or
 * two readings, not twenty. Nobody is given what began to be read before they asked, so that what was written before is
 * always in it. `begin` of whoever asked first is called; a reading that fails fails for those who wait for it only, and
 * one that hangs is waited for `patienceMs` at the most.
 */
export function sharedRead<Value>(
  patienceMs = PATIENCE_MS,
): (key: string, begin: () => Promise<Value>) => Promise<Value> {
  const running = new Map<string, Promise<unknown>>();
  const waiting = new Map<string, Promise<Value>>();
  return (key, begin) => {
    const there = waiting.get(key);
    if (there) return there;
    const before = running.get(key);
    const ready = before
      ? Promise.race([before.then(ignore, ignore), setTimeout(patienceMs, undefined, UNHELD)])
      : Promise.resolve();
    const next = ready.then(() => {
      waiting.delete(key);
      const reading = begin();
      running.set(key, reading);
      const over = () => {
        if (running.get(key) === reading) running.delete(key);
      };
      reading.then(over, over);
      return reading;
    });
    waiting.set(key, next);
    return next;
  };
}

function ignore(): void {
  // What became of the reading before is for those who asked for it.
}
