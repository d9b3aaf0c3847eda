import type { StartPage } from '#lib/usecases/start/load-start.ts';
import forms from '../../_parts/forms.module.css';
import { RungOptions } from '../../_parts/rung-options.tsx';
import styles from './start.module.css';

/** Skills, what of each is wanted, and kit: a plain address, so that the tests can be looked at before they are sent. */
export function AimsForm({ page }: { page: StartPage }) {
  return (
    <form method="get" className={forms.wide}>
      <input type="hidden" name="asked" value="1" />
      <fieldset className={forms.fieldset}>
        <legend>Skills aimed at</legend>
        <div className={styles.skills}>
          {page.skills.map((skill) => (
            <div key={skill.id} className={styles.skill}>
              <label className={forms.tick}>
                <input type="checkbox" name="skill" value={skill.id} defaultChecked={skill.on} />
                {skill.name}
              </label>
              {skill.on ? (
                <select
                  name="aim"
                  aria-label={`${skill.name}: what the client wants to be able to do`}
                  defaultValue={skill.aimRungId}
                >
                  <RungOptions ladders={skill.ladders} />
                </select>
              ) : null}
            </div>
          ))}
        </div>
      </fieldset>
      <fieldset className={forms.fieldset}>
        <legend>Kit at hand, beside a floor and a wall</legend>
        <div className={forms.inline}>
          {page.kit.map(({ key, label, on }) => (
            <label key={key} className={forms.tick}>
              <input type="checkbox" name="kit" value={key} defaultChecked={on} />
              {label}
            </label>
          ))}
        </div>
      </fieldset>
      <div className={forms.acts}>
        <button type="submit" className={forms.other}>
          Show the tests
        </button>
      </div>
    </form>
  );
}
