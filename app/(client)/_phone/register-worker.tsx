'use client';
import { useEffect } from 'react';

/** Installs what opens the check-in without signal; shows nothing. Where it is not allowed the rest works as before. */
export function RegisterWorker() {
  useEffect(() => {
    if (process.env.NODE_ENV !== 'production' || !('serviceWorker' in navigator)) return;
    navigator.serviceWorker.register('/sw.js', { updateViaCache: 'none' }).catch(() => undefined);
  }, []);
  return null;
}
