import { momentAsSaid } from '#lib/views/phone-dates.ts';
import type { PhoneWord } from '#lib/views/phone-words.ts';

type Props = {
  said: PhoneWord[];
  seen: { by: string; at: string } | null;
  zone: string;
  now: Date;
};

/** Under a check-in: what coaches wrote on the day and on its sets, and who looked at it first. */
export function CoachWords({ said, seen, zone, now }: Props) {
  return (
    <>
      {said.map((word) => (
        <div key={word.id} className="coach-word">
          {word.about ? <p>{word.about}</p> : null}
          <blockquote>“{word.text}”</blockquote>
          <p className="quiet">
            {word.by}, {momentAsSaid(word.at, zone, now)}
          </p>
        </div>
      ))}
      {seen ? (
        <p className="quiet">
          seen by {seen.by}, {momentAsSaid(new Date(seen.at), zone, now)}
        </p>
      ) : null}
    </>
  );
}
