import type { Progress } from '#lib/usecases/load-progress.ts';
import { dayAsSaid } from '#lib/views/phone-dates.ts';
import type { StandingOnLadder } from '#lib/views/phone-progress.ts';
import { DrawnLadder } from './drawn-ladder.tsx';

/** One ladder: the rung on each side, its pass mark, how much of it the last training showed. */
export function LadderBlock({ ladder, today }: { ladder: Progress['ladders'][number]; today: string }) {
  return (
    <section className="ladder-block">
      <h2>{ladder.ladder}</h2>
      <p className="quiet">{ladder.skill}</p>
      {ladder.standing.map((standing) => (
        <div key={standing.side} className="ladder-now">
          <DrawnLadder number={standing.number} of={standing.of} />
          <Standing standing={standing} today={today} />
        </div>
      ))}
      {ladder.said ? (
        <div className="coach-word">
          <blockquote>“{ladder.said.text}”</blockquote>
          <p className="quiet">
            {ladder.said.by}, on {ladder.said.on}
          </p>
        </div>
      ) : null}
    </section>
  );
}

function Standing({ standing, today }: { standing: StandingOnLadder; today: string }) {
  const { side, rung, number, of, since, passMark, next, share, last } = standing;
  const percent = share === null ? null : Math.round(share * 100);
  return (
    <div>
      <div>{side === 'both' ? rung : `${side}: ${rung}`}</div>
      <div className="quiet">
        rung {number} of {of}, since {dayAsSaid(since, today)}
      </div>
      {percent === null ? null : (
        <div
          className={`share ${side === 'left' ? 'side-left' : ''}`}
          role="img"
          aria-label={`${percent} % of the pass mark`}
        >
          <span style={{ width: `${percent}%` }} />
        </div>
      )}
      <div>{passMark}</div>
      <div className="quiet">
        {last
          ? `${dayAsSaid(last.date, today)}: ${last.text}${percent === null ? '' : `, ${percent} % of it`}`
          : 'not trained on this rung yet'}
      </div>
      {next ? <div className="quiet">then: {next}</div> : null}
    </div>
  );
}
