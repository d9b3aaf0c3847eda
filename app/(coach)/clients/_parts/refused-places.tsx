'use client';

import { type ReactNode, useEffect, useRef } from 'react';
import forms from './forms.module.css';

type Place = { id: string | null; name: string; message: string };
type Props = {
  /** Said where no field is refused. */
  message: string;
  places: readonly Place[];
  children?: ReactNode;
};

/** What was refused, by the names of the fields, each a way to its field. It takes the focus when it appears or changes. */
export function RefusedPlaces({ message, places, children }: Props) {
  const box = useRef<HTMLDivElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each refusal brings new places
  useEffect(() => {
    box.current?.focus();
    box.current?.scrollIntoView({ block: 'nearest' });
  }, [places]);
  return (
    <div ref={box} role="alert" tabIndex={-1} className={forms.refusal}>
      {places.length === 0 ? (
        <p>{message}</p>
      ) : (
        <>
          <p>Not saved. What you typed is still here.</p>
          <ul className={forms.places}>
            {places.map(({ id, name, message: words }) => (
              <li key={`${id} ${name} ${words}`}>
                {id ? (
                  <>
                    <a href={`#${id}`} onClick={(event) => goTo(id, () => event.preventDefault())}>
                      {name}
                    </a>
                    : {words}
                  </>
                ) : (
                  words
                )}
              </li>
            ))}
          </ul>
        </>
      )}
      {children}
    </div>
  );
}

/** A field in a folded part is unfolded first: the browser alone would not give it the focus. */
function goTo(id: string, done: () => void): void {
  const field = document.getElementById(id);
  if (!field) return;
  for (let fold = field.closest('details'); fold; fold = fold.parentElement?.closest('details') ?? null)
    fold.open = true;
  field.focus();
  done();
}
