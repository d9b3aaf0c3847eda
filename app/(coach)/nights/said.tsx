'use client';

import { createContext, type ReactNode, useContext, useEffect, useRef, useState } from 'react';
import styles from './nights.module.css';

const Leave = createContext<(words: string) => void>(() => {});

/** What was said beside a button that is gone meanwhile, since nothing is left to do there, stays in sight here. */
export function SaidLast({ children }: { children: ReactNode }) {
  const [said, leave] = useState('');
  return (
    <Leave value={leave}>
      <p role="status" className={styles.said}>
        {said}
      </p>
      {children}
    </Leave>
  );
}

/** Words beside a button on what became of it, and how they are set. `about`: what they speak of, for when the button goes. */
export function useSaid(about: string): [string, (words: string) => void] {
  const leave = useContext(Leave);
  const [said, setSaid] = useState('');
  const last = useRef('');
  useEffect(
    () => () => {
      if (last.current) leave(`${about}: ${last.current}`);
    },
    [leave, about],
  );
  const say = (words: string) => {
    leave('');
    last.current = words;
    setSaid(words);
  };
  return [said, say];
}
