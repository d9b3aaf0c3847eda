'use client';
import { useEffect, useState } from 'react';
import { type LastSent, loadLastSent, loadUnsent, onKeptChange, type Unsent } from './kept.ts';
import { sendUnsent } from './send-unsent.ts';

export type Kept = { unsent: Unsent[]; lastSent: LastSent | null; ready: boolean };

/** What is kept on this phone, always as it is now; sends it on load, when signal returns and when the page is shown. */
export function useKept(clientId: string): Kept {
  const [kept, setKept] = useState<Kept>({ unsent: [], lastSent: null, ready: false });
  useEffect(() => {
    const look = () =>
      setKept({ unsent: loadUnsent(clientId), lastSent: loadLastSent(clientId), ready: true });
    const send = () => {
      if (document.visibilityState === 'visible' && loadUnsent(clientId).length > 0)
        void sendUnsent(clientId);
    };
    look();
    send();
    const stopLooking = onKeptChange(look);
    window.addEventListener('online', send);
    document.addEventListener('visibilitychange', send);
    const again = window.setInterval(send, 30_000);
    return () => {
      stopLooking();
      window.removeEventListener('online', send);
      document.removeEventListener('visibilitychange', send);
      window.clearInterval(again);
    };
  }, [clientId]);
  return kept;
}
