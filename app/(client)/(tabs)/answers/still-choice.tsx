'use client';
import { type ChangeEvent, useRef } from 'react';

export type ChosenStill = { id: string; file: File };
export const MOST_STILLS = 3;

type Props = { stills: ChosenStill[]; change: (stills: ChosenStill[]) => void };

/** Up to three pictures for a question. A phone that keeps HEIC hands over JPEG when only these kinds are asked for. */
export function StillChoice({ stills, change }: Props) {
  const input = useRef<HTMLInputElement>(null);
  const choose = (event: ChangeEvent<HTMLInputElement>) => {
    const files = [...(event.target.files ?? [])].map((file) => ({ id: crypto.randomUUID(), file }));
    change([...stills, ...files].slice(0, MOST_STILLS));
    event.target.value = ''; // the same file can be chosen again after it was taken away
  };
  const takeAway = (id: string) => {
    change(stills.filter((still) => still.id !== id));
    input.current?.focus();
  };
  return (
    <>
      {stills.map(({ id, file }) => (
        <p key={id} className="between">
          <span className="chosen-still">{file.name}</span>
          <button type="button" className="word-act" onClick={() => takeAway(id)}>
            Take away<span className="hidden-words"> {file.name}</span>
          </button>
        </p>
      ))}
      {stills.length < MOST_STILLS ? (
        <label className="field still-field">
          Add a still <small>JPEG, PNG or WebP, up to 10 MB, at most {MOST_STILLS}</small>
          <input
            ref={input}
            type="file"
            accept="image/jpeg,image/png,image/webp"
            multiple
            onChange={choose}
          />
        </label>
      ) : null}
    </>
  );
}
