'use client';

import Link from 'next/link';
import { type ReactNode, useState } from 'react';
import type { LadderList, ListedLadder, ListedPart, ListedSkill } from '#lib/views/ladders/ladder-list.ts';
import forms from '../../clients/_parts/forms.module.css';
import styles from './list.module.css';
import { RetiredShelf } from './retired-shelf.tsx';
import { ShelfActs } from './shelf-acts.tsx';

type Props = { list: LadderList; mayEdit: boolean; newLadder: ReactNode };

/** Skills with their parts and ladders; in change, each with its acts. */
export function Shelves({ list, mayEdit, newLadder }: Props) {
  const [changing, setChanging] = useState(list.skills.length === 0 && mayEdit);
  return (
    <>
      {mayEdit ? (
        <div className={forms.acts}>
          {newLadder}
          <button
            type="button"
            className={forms.other}
            aria-pressed={changing}
            onClick={() => setChanging((one) => !one)}
          >
            {changing ? 'Done with skills and parts' : 'Change skills, parts and order'}
          </button>
        </div>
      ) : null}
      {changing ? (
        <ShelfActs shelf="team" row={null} below={list.skills} belowIs="skill" canRetire={false} />
      ) : null}
      {list.skills.map((skill) => (
        <Skill key={skill.id} skill={skill} changing={changing} />
      ))}
      {changing ? <RetiredShelf shelf="skill" rows={list.retiredSkills} /> : null}
    </>
  );
}

function Skill({ skill, changing }: { skill: ListedSkill; changing: boolean }) {
  return (
    <section aria-labelledby={`skill-${skill.id}`} className={styles.skill}>
      <h2 id={`skill-${skill.id}`}>{skill.name}</h2>
      <div>
        {changing ? (
          <ShelfActs
            shelf="skill"
            row={skill}
            below={skill.parts}
            belowIs="part"
            canRetire={skill.parts.every((part) => part.ladders.length === 0)}
          />
        ) : null}
        {skill.parts.length === 0 ? <p className={forms.hint}>No part yet.</p> : null}
        {skill.parts.map((part) => (
          <Part key={part.id} part={part} changing={changing} />
        ))}
        {changing ? <RetiredShelf shelf="part" rows={skill.retiredParts} /> : null}
      </div>
    </section>
  );
}

function Part({ part, changing }: { part: ListedPart; changing: boolean }) {
  return (
    <section aria-labelledby={`part-${part.id}`} className={styles.part}>
      <h3 id={`part-${part.id}`}>{part.name}</h3>
      <div>
        {changing ? (
          <ShelfActs
            shelf="part"
            row={part}
            below={part.ladders}
            belowIs="ladder"
            canRetire={part.ladders.length === 0}
          />
        ) : null}
        {part.ladders.length === 0 ? <p className={forms.hint}>No ladder in use.</p> : null}
        <ul className={styles.ladders}>
          {part.ladders.map((ladder) => (
            <LadderRow key={ladder.id} ladder={ladder} />
          ))}
          {part.retiredLadders.map((ladder) => (
            <LadderRow key={ladder.id} ladder={ladder} retired />
          ))}
        </ul>
      </div>
    </section>
  );
}

function LadderRow({ ladder, retired = false }: { ladder: ListedLadder; retired?: boolean }) {
  return (
    <li data-retired={retired || undefined}>
      <Link href={`/ladders/${ladder.id}`}>{ladder.name}</Link>
      <span>{retired ? 'retired' : ladder.rungs}</span>
      <span>{ladder.people}</span>
    </li>
  );
}
