'use client';
import styles from './steps.module.css';

type Option = { value: string; words: string };
export type StepsChoice = { name: string; label: string; value: string; options: Option[] };

/** What is chosen stands in the address. Without script a button sends it. */
export function StepsFilters({ choices }: { choices: StepsChoice[] }) {
  return (
    <form className={styles.filters} action="/steps" method="get" onChange={send} aria-label="Which steps">
      {choices.map(({ name, label, value, options }) => (
        <label key={name}>
          <span>{label}</span>
          <select name={name} defaultValue={value}>
            {options.map((option) => (
              <option key={option.value} value={option.value}>
                {option.words}
              </option>
            ))}
          </select>
        </label>
      ))}
      <noscript>
        <button type="submit">Show</button>
      </noscript>
    </form>
  );
}

/** Leaves what is empty out of the address. */
function send(event: React.ChangeEvent<HTMLFormElement>) {
  for (const field of event.currentTarget.querySelectorAll('select')) field.disabled = field.value === '';
  event.currentTarget.requestSubmit();
}
