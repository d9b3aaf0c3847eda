'use client';
import { useEffect } from 'react';
import { forget } from './kept-intake.ts';

/** What was sent stays nowhere on this phone, also when the answer to it was lost on the way. */
export function ForgetKept({ clientId }: { clientId: string }) {
  useEffect(() => forget(clientId), [clientId]);
  return null;
}
