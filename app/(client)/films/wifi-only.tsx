'use client';
import { useSyncExternalStore } from 'react';
import { setWifiOnly, wantsWifiOnly } from './wifi.ts';

const listeners = new Set<() => void>();
function subscribe(listener: () => void) {
  listeners.add(listener);
  return () => void listeners.delete(listener);
}

/** The client's own choice, kept on this phone. */
export function WifiOnly() {
  const only = useSyncExternalStore(subscribe, wantsWifiOnly, () => false);
  return (
    <label className="film-sound">
      <input
        type="checkbox"
        checked={only}
        onChange={(event) => {
          setWifiOnly(event.target.checked);
          for (const listener of listeners) listener();
        }}
      />{' '}
      Send films on wi-fi only. Where the phone does not tell, each waits for “Send now”.
    </label>
  );
}
