'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import type { KeptStill } from '#lib/balance/kept-still.ts';
import type { Placed } from '#lib/balance/landmarks.ts';
import { readStill, type Still } from '#lib/balance/read-still.ts';
import type { MassModel } from '#lib/balance/segment-tables.ts';
import type { Scale } from '#lib/balance/set-up.ts';
import { FIRST_SPREAD, sameSpread, spreadOfPlacings } from '#lib/balance/still-errors.ts';
import { firstPlacing, type Placing, turnedOver } from '#lib/views/still/placing.ts';
import forms from '../../../clients/_parts/forms.module.css';
import { postJson } from '../../../clients/_parts/post-json.ts';
import { Figures } from './figures.tsx';
import { type Frame, KeptFrames } from './kept-frames.tsx';
import { Measures } from './measures.tsx';
import { Picture } from './picture.tsx';
import styles from './still.module.css';

type Props = {
  stillId: string;
  size: { width: number; height: number };
  start: KeptStill | null;
  frames: Frame[];
  mayKeep: boolean;
};

/** The picture with its points, what gives the scale, and what the points say. */
export function PlaceJoints({ stillId, size, start, frames, mayKeep }: Props) {
  const router = useRouter();
  const [placing, setPlacing] = useState<Placing>(() =>
    start ? { placed: start.second ?? start.placed, plumb: start.plumb, chosen: 'heel' } : firstPlacing(size),
  );
  const [first, setFirst] = useState<Placed | null>(start?.second ? start.placed : null);
  const [scale, setScale] = useState<Scale>(start?.scale ?? { by: 'hand', metres: 0.185 });
  const [model, setModel] = useState<MassModel>(start?.model ?? 'de-leva-women');
  const [said, setSaid] = useState('');
  const still: Still = { placed: placing.placed, plumb: placing.plumb, scale, model };
  const spread = first ? spreadOfPlacings(first, placing.placed) : sameSpread(FIRST_SPREAD);

  async function keep() {
    const body = { ...still, placed: first ?? placing.placed, second: first ? placing.placed : null };
    const answer = await postJson(`/api/stills/${stillId}/frames`, body);
    setSaid(answer.ok ? 'Kept.' : answer.message);
    if (answer.ok) router.refresh();
  }
  return (
    <div className={styles.desk}>
      <Picture
        stillId={stillId}
        size={size}
        placing={placing}
        first={first}
        model={model}
        move={setPlacing}
      />
      <div>
        <Measures scale={scale} setScale={setScale} model={model} setModel={setModel} />
        <div className={`${forms.acts} ${styles.acts}`}>
          <button type="button" className={forms.other} onClick={() => setPlacing(turnedOver(placing, size))}>
            Turn the points over
          </button>
          {first ? (
            <button type="button" className={forms.other} onClick={() => setFirst(null)}>
              Drop the first placing
            </button>
          ) : (
            <button
              type="button"
              className={forms.other}
              onClick={() => {
                setFirst(placing.placed);
                setPlacing({ ...firstPlacing(size), plumb: placing.plumb });
              }}
            >
              Place all once more
            </button>
          )}
        </div>
        <p className={styles.note}>
          {first
            ? 'The first placing stands dotted. How far both lie apart is the error of the figures.'
            : `Placed once: the error is that of ${FIRST_SPREAD} pixels a point, which is a guess. Placing all once more gives your own.`}
        </p>
        <Figures still={still} spread={spread} reading={readStill(still)} />
        {mayKeep && (
          <div className={`${forms.acts} ${styles.acts}`}>
            <button type="button" className={forms.main} onClick={keep}>
              Keep this placing
            </button>
            <span role="status">{said}</span>
          </div>
        )}
        <KeptFrames frames={frames} />
      </div>
    </div>
  );
}
