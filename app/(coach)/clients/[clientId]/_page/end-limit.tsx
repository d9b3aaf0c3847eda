'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { postJson } from '../../_parts/post-json.ts';

/** Ends a limit from today on. */
export function EndLimit({ clientId, limitId, what }: { clientId: string; limitId: string; what: string }) {
  const router = useRouter();
  const [said, setSaid] = useState('');
  async function end() {
    const answer = await postJson(`/api/clients/${clientId}/limits/${limitId}/end`, {});
    setSaid(answer.ok ? 'Ended.' : answer.message);
    if (answer.ok) router.refresh();
  }
  return (
    <span>
      {' '}
      <button type="button" onClick={end} aria-label={`End it from today: ${what}`}>
        End it from today
      </button>{' '}
      <span role="status">{said}</span>
    </span>
  );
}
