'use client';
import { useEffect } from 'react';
import { postJson } from './post-json.ts';

/** Says once that these words were shown. Without signal they stay unread and are told the next time. */
export function WordsRead({ ids }: { ids: string[] }) {
  const told = ids.join(' ');
  useEffect(() => {
    if (told !== '') void postJson('/api/words/read', { ids: told.split(' ') });
  }, [told]);
  return null;
}
