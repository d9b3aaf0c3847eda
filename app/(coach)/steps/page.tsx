import { requireActor } from '#lib/auth/require-actor.ts';
import { now } from '#lib/clock.ts';
import { stepsFilter } from '#lib/schemas/steps-filter.ts';
import { loadSteps } from '#lib/usecases/load-steps.ts';
import { exactDate } from '#lib/views/say-date.ts';
import { NO_TRIAL, overviewInWords } from '#lib/views/steps/overview-words.ts';
import { periodInWords } from '#lib/views/steps/step-period.ts';
import { stepsChoices } from '#lib/views/steps/steps-choices.ts';
import { allOverOn } from '#lib/views/steps/steps-overview.ts';
import { OverviewTable } from './overview-table.tsx';
import styles from './steps.module.css';
import { StepsFilters } from './steps-filters.tsx';

export const metadata = { title: 'Steps' };

type Props = { searchParams: Promise<unknown> };

/** Did the changes help? Steps taken, what became of them, and the same figure where nothing was done. */
export default async function StepsPage({ searchParams }: Props) {
  const actor = await requireActor('see-steps');
  const filter = stepsFilter.parse(await searchParams);
  const { today, span, coaches, overview } = await loadSteps(actor, filter, now());
  const words = overviewInWords(overview);
  const last = allOverOn(span.to);
  return (
    <main id="main" tabIndex={-1} className={styles.page}>
      <h1>Did the changes help?</h1>
      <StepsFilters key={JSON.stringify(filter)} choices={stepsChoices(filter, coaches)} />
      <p className={styles.span}>
        Steps taken {periodInWords(span)}.{' '}
        {last > today ? `The last answers of these days come on ${exactDate(last)}.` : ''}
      </p>
      {words.length === 0 ? (
        <p className={styles.answer}>
          No step was taken in these days{filter.kind || filter.coach ? ' under this filter' : ''}, and no
          reason that was left alone has an answer. A step taken on the board is followed from that day on:
          its answers will stand here.
        </p>
      ) : (
        <>
          <div className={styles.answer}>
            {words.map((sentence) => (
              <p key={sentence}>{sentence}</p>
            ))}
          </div>
          <p className={styles.doubt}>{NO_TRIAL}</p>
          <OverviewTable
            title="By kind of reason"
            explain="Each window apart: what was so many days after the step, or after the reason was known. Percentages from ten known answers on."
            rows={overview.byReason}
          />
          <OverviewTable
            title="By kind of step"
            explain="Each step once, with its longest window that is over. Nothing done: reasons that proposed this step, and none was taken."
            rows={overview.byStep}
          />
        </>
      )}
      {overview.notFollowed ? (
        <p className={styles.rest}>
          Also taken, and not followed, because nothing of theirs is measured: {overview.notFollowed}.
        </p>
      ) : null}
    </main>
  );
}
