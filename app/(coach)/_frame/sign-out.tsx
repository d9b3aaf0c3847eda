'use client';
import { useState } from 'react';

export function SignOut() {
  const [failed, setFailed] = useState(false);
  async function leave() {
    const answer = await fetch('/api/sign-out', { method: 'POST' }).catch(() => undefined);
    if (answer?.ok) window.location.assign('/sign-in');
    else setFailed(true);
  }
  return (
    <button type="button" onClick={leave}>
      {failed ? 'No connection, still signed in. Sign out' : 'Sign out'}
    </button>
  );
}
