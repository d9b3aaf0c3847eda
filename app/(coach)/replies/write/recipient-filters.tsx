'use client';
import type { ReactNode } from 'react';
import type { CheckKind, Standing } from '#lib/domain/vocabulary.ts';
import { KIND_WORDS } from '#lib/views/board-words.ts';
import { STANDING_LABELS } from '#lib/views/standing-labels.ts';
import styles from '../_parts/replies.module.css';

type Filter = {
  coach?: string | undefined;
  standing?: Standing | undefined;
  skill?: string | undefined;
  ladder?: string | undefined;
  rung?: string | undefined;
  reason?: CheckKind | undefined;
  unseen?: number | undefined;
  q?: string | undefined;
};
type Named = { id: string; name: string };
type Props = {
  filter: Filter;
  coaches: Named[];
  skills: string[];
  kinds: CheckKind[];
  ladders: (Named & { rungs: Named[] })[];
};
const STANDINGS: Standing[] = ['invited', 'starting', 'in-training', 'paused', 'ending', 'back'];
const UNSEEN_DAYS = [3, 7, 14, 28];

/** Whom to write to; the address holds what is chosen. Without script the button sends it. */
export function RecipientFilters({ filter, coaches, skills, kinds, ladders }: Props) {
  const rungs = ladders.find((ladder) => ladder.id === filter.ladder)?.rungs ?? [];
  return (
    <form className={styles.filters} action="/replies/write" method="get" aria-label="Whom to write to">
      <Choice name="coach" label="Clients of" value={filter.coach} all="every coach">
        <option value="mine">me</option>
        {coaches.length > 1 && coaches.map((coach) => <Option key={coach.id} {...coach} />)}
      </Choice>
      <Choice name="standing" label="Standing" value={filter.standing} all="any">
        {STANDINGS.map((standing) => (
          <Option key={standing} id={standing} name={STANDING_LABELS[standing]} />
        ))}
      </Choice>
      <Choice name="skill" label="Skill" value={filter.skill} all="any">
        {skills.map((skill) => (
          <option key={skill}>{skill}</option>
        ))}
      </Choice>
      <Choice name="ladder" label="Stands on ladder" value={filter.ladder} all="any">
        {ladders.map((ladder) => (
          <Option key={ladder.id} id={ladder.id} name={ladder.name} />
        ))}
      </Choice>
      {rungs.length > 0 && (
        <Choice name="rung" label="Rung" value={filter.rung} all="any">
          {rungs.map((rung) => (
            <Option key={rung.id} {...rung} />
          ))}
        </Choice>
      )}
      <Choice name="reason" label="Open reason" value={filter.reason} all="any or none">
        {kinds.map((kind) => (
          <Option key={kind} id={kind} name={KIND_WORDS[kind]} />
        ))}
      </Choice>
      <Choice name="unseen" label="Nobody looked for" value={filter.unseen?.toString()} all="any time">
        {UNSEEN_DAYS.map((days) => (
          <Option key={days} id={String(days)} name={`${days} days or more`} />
        ))}
      </Choice>
      <div>
        <label htmlFor="write-q">Name</label>
        <input id="write-q" name="q" type="search" defaultValue={filter.q ?? ''} autoComplete="off" />
      </div>
      <button type="submit" data-outlined>
        Show
      </button>
      {Object.values(filter).some((value) => value !== undefined) && <a href="/replies/write">Show all</a>}
    </form>
  );
}

function Option({ id, name }: Named) {
  return <option value={id}>{name}</option>;
}

type ChoiceProps = {
  name: string;
  label: string;
  value: string | undefined;
  all: string;
  children: ReactNode;
};

function Choice({ name, label, value, all, children }: ChoiceProps) {
  return (
    <div>
      <label htmlFor={`write-${name}`}>{label}</label>
      <select
        id={`write-${name}`}
        name={name}
        defaultValue={value ?? ''}
        onChange={(event) => event.currentTarget.form?.requestSubmit()}
      >
        <option value="">{all}</option>
        {children}
      </select>
    </div>
  );
}
