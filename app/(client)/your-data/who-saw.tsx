import { momentAsSaid } from '#lib/views/phone-dates.ts';

type Line = { id: string; at: Date; by: string; words: string };

/** Newest first; each person counts once an hour, however often they look. */
export function WhoSaw({ lines, zone, now }: { lines: Line[]; zone: string; now: Date }) {
  return (
    <>
      {lines.length === 0 ? <p className="quiet">Nobody has looked at your pages yet.</p> : null}
      <ul className="rights-lines">
        {lines.map(({ id, at, by, words }) => (
          <li key={id}>
            <span className="quiet">{momentAsSaid(at, zone, now)}</span> {by} {words}
          </li>
        ))}
      </ul>
      <p className="quiet small">
        Whoever looks several times within an hour stands here once. The list of the morning, which shows
        coaches a sentence about each client, and the list of questions are not counted.
      </p>
    </>
  );
}
