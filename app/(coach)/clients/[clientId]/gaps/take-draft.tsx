'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import forms from '../../_parts/forms.module.css';
import { postJson, textIn } from '../../_parts/post-json.ts';

/** Opens the plan with the chosen drills as draft lines; the plan itself changes only when it is saved there. */
export function TakeDraft({ clientId, assessmentId }: { clientId: string; assessmentId: string }) {
  const router = useRouter();
  const [said, setSaid] = useState('');
  const [busy, setBusy] = useState(false);

  async function take() {
    setBusy(true);
    const answer = await postJson(`/api/clients/${clientId}/assessments/draft`, { assessmentId });
    setBusy(false);
    if (answer.ok) router.push(textIn(answer.value, 'address'));
    else setSaid(answer.message);
  }

  return (
    <div className={forms.acts}>
      <button type="button" className={forms.main} onClick={take} disabled={busy}>
        Take into the plan as a draft
      </button>
      <span role="status">{said}</span>
    </div>
  );
}
