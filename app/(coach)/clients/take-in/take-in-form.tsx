'use client';

import Link from 'next/link';
import { type ChangeEvent, useEffect, useRef, useState } from 'react';
import type { PackSeen, TakenIn } from '#lib/usecases/handover/take-client-in.ts';
import { Field } from '../_parts/field.tsx';
import forms from '../_parts/forms.module.css';
import list from '../import/import.module.css';
import { PackPreview } from './pack-preview.tsx';
import { sendPack } from './send-pack.ts';

type Refused = { message: string; fields: Record<string, string> };

/** From the file to what it would do to the client. */
export function TakeInForm() {
  const [file, setFile] = useState<File | null>(null);
  const [busy, setBusy] = useState('');
  const [refused, setRefused] = useState<Refused | null>(null);
  const [seen, setSeen] = useState<PackSeen | null>(null);
  const [taken, setTaken] = useState<TakenIn | null>(null);

  async function send(pack: File, sum?: string) {
    setBusy(sum ? 'Taking the client in' : 'Looking through the pack');
    setRefused(null);
    const answer = await sendPack(pack, sum);
    setBusy('');
    if (answer.ok) return answer.value;
    setRefused(answer);
    return undefined;
  }
  async function choose(event: ChangeEvent<HTMLInputElement>) {
    const chosen = event.target.files?.[0] ?? null;
    setFile(chosen);
    setSeen(null);
    if (chosen) setSeen(((await send(chosen)) as PackSeen | undefined) ?? null);
  }
  async function take() {
    if (!file || !seen) return;
    const done = await send(file, seen.manifestSha256);
    if (done) setTaken(done as TakenIn);
  }
  if (taken) return <Taken taken={taken} />;
  return (
    <>
      <div className={forms.form}>
        <Field
          id="pack"
          label="The pack"
          hint="A zip of at most 40 MB and 100 files, 80 MB when it is unpacked. Ask for it without films."
        >
          {(control) => (
            <input
              {...control}
              type="file"
              className={list.file}
              accept=".zip,application/zip"
              onChange={choose}
            />
          )}
        </Field>
      </div>
      <p role="status">{busy ? `${busy} …` : ''}</p>
      {refused ? <Refusal {...refused} /> : null}
      {seen ? <PackPreview seen={seen} busy={busy !== ''} take={take} /> : null}
    </>
  );
}

function Refusal({ message, fields }: Refused) {
  const places = Object.entries(fields).filter(([path]) => path.startsWith('record.json'));
  return (
    <div role="alert" className={forms.refusal} style={{ maxWidth: 760 }}>
      <p style={{ margin: 0 }}>{message}</p>
      {places.length > 1 ? (
        <ul className={forms.places}>
          {places.map(([path, why]) => (
            <li key={path}>
              {path}: {why}
            </li>
          ))}
        </ul>
      ) : null}
      {fields.clientId ? (
        <Link href={`/clients/${fields.clientId}`}>Open the page of this client</Link>
      ) : null}
    </div>
  );
}

function Taken({ taken }: { taken: TakenIn }) {
  const head = useRef<HTMLHeadingElement>(null);
  useEffect(() => head.current?.focus(), []);
  const { name } = taken.seen.client;
  return (
    <section aria-labelledby="taken">
      <h2 id="taken" ref={head} tabIndex={-1}>
        {name} is in your team now
      </h2>
      <p className={forms.lead}>
        {name} cannot sign in here yet: make a sign-in link on the page of {name} and send it. The phone asks
        for consent before anything new is kept.
      </p>
      <div className={forms.acts}>
        <Link href={`/clients/${taken.clientId}`} className={forms.main}>
          Open the page of {name}
        </Link>
      </div>
    </section>
  );
}
