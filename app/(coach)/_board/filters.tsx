'use client';
import type { BoardFilter, BoardView } from '#lib/views/board-types.ts';
import { KIND_WORDS, TIER_TITLE } from '#lib/views/board-words.ts';
import styles from './board.module.css';

type Props = { options: BoardView['options']; filter: BoardFilter };

/** The column heads are the filters; the address holds what they say. Without script a button sends them. */
export function Filters({ options, filter }: Props) {
  return (
    <form
      className={styles.filters}
      action="/"
      method="get"
      onChange={(event) => event.currentTarget.requestSubmit()}
      onSubmit={leaveOutEmpty}
      aria-label="Filter the board"
    >
      <Choice name="coach" label="Whose clients" value={filter.coach} all="All clients">
        <option value="mine">My clients</option>
        {options.coaches.length > 1 &&
          options.coaches.map((coach) => (
            <option key={coach.id} value={coach.id}>
              {coach.name}
            </option>
          ))}
      </Choice>
      <Choice name="reason" label="Reason" value={filter.reason} all="Every reason">
        {withChosen(options.kinds, filter.reason).map((kind) => (
          <option key={kind} value={kind}>
            {KIND_WORDS[kind]}
          </option>
        ))}
      </Choice>
      <Choice name="skill" label="Skill" value={filter.skill} all="Every skill">
        {withChosen(options.skills, filter.skill).map((skill) => (
          <option key={skill}>{skill}</option>
        ))}
      </Choice>
      <Choice name="group" label="When to answer" value={filter.group} all="Any time">
        {Object.entries(TIER_TITLE).map(([tier, title]) => (
          <option key={tier} value={tier}>
            {title}
          </option>
        ))}
      </Choice>
      <input
        name="q"
        type="search"
        defaultValue={filter.q ?? ''}
        placeholder="Find a client  /"
        aria-label="Find a client"
        data-find
        onChange={(event) => event.stopPropagation()}
      />
      <noscript>
        <button type="submit">Show</button>
      </noscript>
    </form>
  );
}

function Choice(props: {
  name: string;
  label: string;
  value: string | undefined;
  all: string;
  children: React.ReactNode;
}) {
  return (
    <select
      name={props.name}
      aria-label={props.label}
      defaultValue={props.value ?? ''}
      data-chosen={props.value !== undefined}
    >
      <option value="">{props.all}</option>
      {props.children}
    </select>
  );
}

/** Leaves what is empty out of the address. */
function leaveOutEmpty(event: React.FormEvent<HTMLFormElement>) {
  const form = event.currentTarget;
  for (const field of form.querySelectorAll<HTMLSelectElement | HTMLInputElement>('select, input')) {
    field.disabled = field.value === '';
  }
  // Whoever comes back by the browser's own key finds the fields open again.
  setTimeout(() => {
    for (const field of form.querySelectorAll<HTMLSelectElement | HTMLInputElement>('select, input'))
      field.disabled = false;
  });
}

function withChosen<T extends string>(list: readonly T[], chosen: T | undefined): T[] {
  return chosen === undefined || list.includes(chosen) ? [...list] : [...list, chosen];
}
