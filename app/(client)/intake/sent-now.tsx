'use client';
import Link from 'next/link';
import type { Caution } from '#lib/domain/caution.ts';
import type { IntakeDraft } from '#lib/domain/intake/draft.ts';
import { HEALTH_QUESTIONS } from '#lib/domain/intake/health-questions.ts';
import { clockWords } from '../_phone/clock-words.ts';
import { CautionBox } from '../check-in/caution-box.tsx';

type Props = { sentAt: string; cautions: Caution[]; draft: IntakeDraft; coach: string };

export function SentNow({ sentAt, cautions, draft, coach }: Props) {
  const held = HEALTH_QUESTIONS.some((question) => draft.health?.page.said[question] === 'yes');
  const signs = (draft.signs?.page.signs.length ?? 0) > 0;
  return (
    <div className="phone phone-plain">
      <main>
        <h1>Sent {clockWords(sentAt)}</h1>
        <p className="rights-line">{coach} reads it and writes your plan.</p>
        {signs ? (
          <p className="rights-line">
            Training waits until a clinician has seen you and {coach} has written it down.
          </p>
        ) : null}
        {held ? (
          <p className="rights-line">
            Upside-down drills wait for a doctor’s word. Ask yours, and tell {coach} who said what, and when.
          </p>
        ) : null}
        <CautionBox cautions={cautions} coach={coach} isSent />
        <p className="rights-act">
          <Link className="act act-filled" href="/today">
            Today
          </Link>
        </p>
      </main>
    </div>
  );
}
