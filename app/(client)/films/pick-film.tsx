'use client';
import { useId, useState } from 'react';
import { whyNot } from './check-file.ts';
import type { KeptFilm } from './kept-film.ts';

type Choice = { rungId: string; name: string; eachSide: boolean };
type About = { requestId: string; rungId: string; side: string };
type Props = {
  clientId: string;
  add: (film: KeptFilm) => Promise<void>;
} & ({ about: About; title: string; choices?: undefined } | { choices: Choice[]; about?: undefined });

/** The phone's own camera or its films. What cannot be sent is said before a byte of it is. */
export function PickFilm(props: Props) {
  const id = useId();
  const [why, setWhy] = useState('');
  const [sound, setSound] = useState(false);
  const [rungId, setRungId] = useState(props.choices?.[0]?.rungId ?? '');
  const [side, setSide] = useState('both');
  const choice = props.choices?.find((one) => one.rungId === rungId);

  async function chosen(file: File | undefined) {
    if (!file) return;
    const refused = await whyNot(file);
    setWhy(refused ?? '');
    if (refused) return;
    const own: Record<string, string> = props.about
      ? { ...props.about }
      : { rungId, side: choice?.eachSide ? side : 'both' };
    const filmedOn = dateOf(file.lastModified);
    const upload = crypto.randomUUID();
    const type = file.type.startsWith('video/') ? { type: file.type.split(';')[0] ?? 'video/mp4' } : {};
    const about = { ...own, ...type, id: upload, filmedOn, sound: sound ? 'yes' : 'no' };
    const title = props.about ? props.title : (choice?.name ?? '');
    await props.add({ id: upload, clientId: props.clientId, title, about, file });
  }

  return (
    <div className="film-pick">
      {props.choices ? (
        <label className="field">
          Of which drill
          <select value={rungId} onChange={(event) => setRungId(event.target.value)}>
            {props.choices.map((one) => (
              <option key={one.rungId} value={one.rungId}>
                {one.name}
              </option>
            ))}
          </select>
        </label>
      ) : null}
      {choice?.eachSide ? (
        <label className="field">
          Side
          <select value={side} onChange={(event) => setSide(event.target.value)}>
            <option value="both">both</option>
            <option value="left">left</option>
            <option value="right">right</option>
          </select>
        </label>
      ) : null}
      <label className="film-sound">
        <input type="checkbox" checked={sound} onChange={(event) => setSound(event.target.checked)} /> Keep
        its sound. Without it only the picture is kept.
      </label>
      <div className="film-buttons">
        {(['record', 'choose'] as const).map((way) => (
          <label key={way} className="act" htmlFor={`${id}-${way}`}>
            {way === 'record' ? 'Record it' : 'Choose a film'}
            <input
              id={`${id}-${way}`}
              type="file"
              accept="video/*"
              {...(way === 'record' && { capture: 'environment' })}
              onChange={(event) => {
                void chosen(event.target.files?.[0]);
                event.target.value = '';
              }}
            />
          </label>
        ))}
      </div>
      {why ? (
        <p role="alert" className="film-why">
          {why}
        </p>
      ) : null}
    </div>
  );
}

/** The phone's own date of the file: the day of filming, or of copying it. */
function dateOf(at: number): string {
  const day = new Date(at);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${day.getFullYear()}-${two(day.getMonth() + 1)}-${two(day.getDate())}`;
}
