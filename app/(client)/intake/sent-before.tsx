import Link from 'next/link';

/** Told already: what was sent stays, a coach changes it. */
export function SentBefore({ when, coach }: { when: string; coach: string }) {
  return (
    <div className="phone">
      <main>
        <h1>Sent</h1>
        <p className="rights-line">
          You sent this {when}. {coach} has it.
        </p>
        <p className="rights-line">
          Has something changed, above all about your health? Tell {coach}: they change it, and what you said
          before stays beside it.
        </p>
        <Link className="act act-filled" href="/today">
          Today
        </Link>
      </main>
    </div>
  );
}
