import Link from 'next/link';

/** Start tests that wait: one tap to do them. */
export function AskTests({ words }: { words: string | null }) {
  if (words === null) return null;
  return (
    <Link className="act ask-morning" href="/start-tests" prefetch={false}>
      <span>
        Start tests <small>{words}</small>
      </span>
    </Link>
  );
}
