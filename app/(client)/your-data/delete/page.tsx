import type { Metadata } from 'next';
import { requireActor } from '#lib/auth/require-actor.ts';
import { GRACE_DAYS } from '#lib/usecases/rights/ask-erasure.ts';
import { loadOwnData } from '#lib/usecases/rights/load-own-data.ts';
import { BackHead } from '../../_phone/back-head.tsx';
import { Asked } from '../asked.tsx';

export const metadata: Metadata = { title: 'Delete everything' };

type Props = { searchParams: Promise<{ sure?: string | string[] }> };

/** Said twice: this page says what goes, its second form asks for it. Works without scripts. */
export default async function DeletePage({ searchParams }: Props) {
  const actor = await requireActor('own-record');
  const { asked, coachName, kept } = await loadOwnData(actor);
  const { sure } = await searchParams;
  return (
    <div className="phone">
      <BackHead to="/your-data" page="Your data" />
      <main>
        <h1>Delete everything</h1>
        {asked ? (
          <>
            <Asked asked={asked} coach={coachName} />
            <p className="rights-line">
              Keep the number of the receipt: with it anybody can see that it was done, and no name stands
              there. You will have no sign-in any more to look it up.
            </p>
            <a className="act" href={`/api/receipts/${asked.receipt}`} download>
              Keep the receipt
            </a>
          </>
        ) : (
          <>
            <ul className="rights-text">
              <li>
                What goes: {kept.checkIns} check-ins and all that is in them, questions, answers, pictures,
                plans, what was found, notes of coaches about you, and your sign-in.
              </li>
              <li>
                It is done {GRACE_DAYS} days after you ask. Until then you can take it back, here, and train
                as before.
              </li>
              <li>After that nobody can bring it back, {coachName} neither. Take your record first.</li>
              <li>
                What stays: that a record was deleted, when, and how much it was, under a number without your
                name.
              </li>
            </ul>
            <p className="rights-act">
              <a className="act" href="/api/your-data/record" download>
                Take my record first
              </a>
            </p>
            {sure === 'ask' ? (
              <form action="/api/your-data/erasure" method="post" className="rights-act">
                <input type="hidden" name="sure" value="yes" />
                <p className="rights-line" role="status">
                  Once more: everything of yours is deleted in {GRACE_DAYS} days.
                </p>
                <button type="submit" className="act act-filled">
                  Yes, delete it in {GRACE_DAYS} days
                </button>
              </form>
            ) : (
              <form action="/your-data/delete" method="get" className="rights-act">
                <input type="hidden" name="sure" value="ask" />
                <button type="submit" className="act">
                  Delete everything of mine
                </button>
              </form>
            )}
          </>
        )}
      </main>
    </div>
  );
}
