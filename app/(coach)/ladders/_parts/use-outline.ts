'use client';

import { useRouter } from 'next/navigation';
import { useState, useTransition } from 'react';
import { postJson } from '../../clients/_parts/post-json.ts';

/** Sends changes of skills, parts and orders; `refused` is what stopped the last one. */
export function useOutline(onSaved: () => void): {
  send: (change: object) => void;
  busy: boolean;
  refused: string;
} {
  const router = useRouter();
  const [busy, setBusy] = useState(false);
  const [loading, startLoading] = useTransition();
  const [refused, setRefused] = useState('');

  async function post(change: object) {
    setBusy(true);
    const answer = await postJson('/api/ladders/outline', change);
    setBusy(false);
    setRefused(answer.ok ? '' : Object.values(answer.fields).join('; ') || answer.message);
    if (!answer.ok) return;
    startLoading(() => {
      onSaved();
      router.refresh();
    });
  }

  return { send: (change) => void post(change), busy: busy || loading, refused };
}
