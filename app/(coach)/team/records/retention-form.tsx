import { CLIP_DAYS, RETENTION_YEARS } from '#lib/schemas/rights.ts';
import forms from '../../clients/_parts/forms.module.css';
import styles from './records.module.css';

/** A plain form. The default of six years covers the usual time in which a contract can be argued about. */
export function RetentionForm({
  retention,
}: {
  retention: { years: number; erases: boolean; clipDays: number };
}) {
  return (
    <form action="/api/team/retention" method="post" className={forms.form}>
      <div className={forms.field}>
        <label htmlFor="years">Years after a client leaves</label>
        <input
          id="years"
          name="years"
          type="number"
          min={RETENTION_YEARS.least}
          max={RETENTION_YEARS.most}
          step={1}
          required
          defaultValue={retention.years}
          className={styles.years}
        />
        <p className={styles.hint}>
          6 unless you change it: long enough for the time in which a contract is commonly argued about. Local
          rules decide; a clinician in the team may have to keep records for longer. For somebody under 18 the
          years begin at the end of the year they turn 18, and without a year of birth nothing is deleted by
          itself.
        </p>
      </div>
      <label className={forms.tick}>
        <input type="checkbox" name="erases" defaultChecked={retention.erases} />
        Delete by itself when the years are over
      </label>
      <p className={styles.hint}>
        Off: they are only listed below. On: each is announced 30 days before, to the leads and to who
        trained, and can be kept on for a year.
      </p>
      <div className={forms.field}>
        <label htmlFor="clipDays">Days for which a film is kept after a coach looked at it</label>
        <input
          id="clipDays"
          name="clipDays"
          type="number"
          min={CLIP_DAYS.least}
          max={CLIP_DAYS.most}
          step={1}
          required
          defaultValue={retention.clipDays}
          className={styles.years}
        />
        <p className={styles.hint}>
          The last day stands beside each film, on the phone too, for at least 30 days before the file is
          removed. What was seen and said stays. A film that a coach keeps with the record is not removed.
        </p>
      </div>
      <div className={forms.acts}>
        <button type="submit" className={forms.main}>
          Keep this
        </button>
      </div>
    </form>
  );
}
