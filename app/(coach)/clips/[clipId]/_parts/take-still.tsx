'use client';

import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { refusalOf, textIn } from '../../../clients/_parts/post-json.ts';
import styles from './looking.module.css';
import type { Film } from './use-film.ts';

const QUALITY = 0.92;
type Props = { clipId: string; film: Film };

/** The frame that is shown, as a still on which joints can be placed. */
export function TakeStill({ clipId, film }: Props) {
  const router = useRouter();
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState('');
  async function take() {
    setBusy(true);
    setProblem('');
    film.pause();
    const taken = await send(clipId, film);
    if (taken.id) {
      router.push(`/stills/${taken.id}`);
      return;
    }
    setBusy(false);
    setProblem(taken.problem);
  }
  return (
    <div className={styles.row}>
      <button type="button" disabled={busy} onClick={() => void take()}>
        Take this frame as a still
      </button>
      <span className={styles.hint}>to place joints on it</span>
      {problem && (
        <span role="alert" className={styles.failed}>
          {problem}
        </span>
      )}
    </div>
  );
}

async function send(clipId: string, film: Film): Promise<{ id: string; problem: string }> {
  const at = await film.settled();
  const jpeg = await pictureOf(film.video.current);
  if (!jpeg) return { id: '', problem: 'This frame could not be read. Step to another and try again.' };
  try {
    const response = await fetch(`/api/clips/${clipId}/stills?at=${at}`, {
      method: 'POST',
      headers: { 'content-type': 'image/jpeg' },
      body: jpeg,
    });
    const value: unknown = await response.json();
    if (response.ok) return { id: textIn(value, 'id'), problem: '' };
    const refused = refusalOf(value);
    return { id: '', problem: refused.ok ? '' : refused.message };
  } catch {
    return { id: '', problem: 'No connection. The still was not taken; try again.' };
  }
}

function pictureOf(video: HTMLVideoElement | null): Promise<Blob | null> {
  if (!video || video.videoWidth === 0) return Promise.resolve(null);
  const canvas = document.createElement('canvas');
  canvas.width = video.videoWidth;
  canvas.height = video.videoHeight;
  canvas.getContext('2d')?.drawImage(video, 0, 0);
  return new Promise((resolve) => canvas.toBlob(resolve, 'image/jpeg', QUALITY));
}
