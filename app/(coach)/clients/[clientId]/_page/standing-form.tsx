'use client';

import { useRouter } from 'next/navigation';
import { type FormEvent, useState } from 'react';
import { STANDINGS, type Standing } from '#lib/domain/vocabulary.ts';
import { STANDING_LABELS } from '#lib/views/standing-labels.ts';
import { postJson } from '../../_parts/post-json.ts';

export function StandingForm({ clientId, standing }: { clientId: string; standing: Standing }) {
  const router = useRouter();
  const [said, setSaid] = useState('');

  async function send(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const chosen = String(new FormData(event.currentTarget).get('standing'));
    const answer = await postJson(`/api/clients/${clientId}/standing`, { standing: chosen });
    setSaid(answer.ok ? 'Saved.' : answer.message);
    if (answer.ok) router.refresh();
  }

  return (
    <form onSubmit={send}>
      <label htmlFor="standing">Standing</label>
      <select id="standing" name="standing" defaultValue={standing}>
        {STANDINGS.map((one) => (
          <option key={one} value={one}>
            {STANDING_LABELS[one]}
          </option>
        ))}
      </select>
      <p>
        <button type="submit">Save the standing</button> <span role="status">{said}</span>
      </p>
    </form>
  );
}
