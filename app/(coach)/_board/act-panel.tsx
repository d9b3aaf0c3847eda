'use client';
import { type FormEvent, type KeyboardEvent, type ReactNode, useEffect, useRef, useState } from 'react';
import { Stills } from '#app/_ui/stills.tsx';
import { KnownForm } from './known-form.tsx';
import { usePrepares } from './prepares.tsx';
import styles from './row.module.css';
import type { RowFacts } from './row-facts.ts';
import { DraftDoes, type ShownDraft, StepDraftForm } from './step-draft-form.tsx';

export type Panel = 'take' | 'put-aside' | 'done' | 'answer' | 'known';
type Props = {
  panel: Panel;
  row: RowFacts;
  busy: boolean;
  /** Of the proposed step, where it was opened. */
  draft: ShownDraft | null;
  act: (body: Record<string, unknown>) => void;
  close: () => void;
};

/** Opens under the row: left of the line what will happen, right of it the form. */
export function ActPanel(props: Props) {
  const { panel, row, busy, act, close } = props;
  if (panel === 'known') return <KnownForm name={row.name} busy={busy} act={act} close={close} />;
  return panel === 'take' ? <TakePanel {...props} /> : <OtherPanel {...props} panel={panel} />;
}

function TakePanel({ row, draft, busy, act, close }: Props) {
  const prepares = usePrepares();
  if (!draft) return null;
  return (
    <>
      <div className={styles.explained}>
        <b>Take.</b>{' '}
        {prepares
          ? 'A coach approves it before any of it happens.'
          : 'This happens at once; Undo takes all of it back.'}
        <DraftDoes draft={draft} />
      </div>
      <div className={styles.panel}>
        <StepDraftForm
          clientId={row.clientId}
          name={row.name}
          draft={draft}
          busy={busy}
          act={act}
          close={close}
        />
      </div>
    </>
  );
}

type OtherProps = Props & { panel: Exclude<Panel, 'take' | 'known'> };

function OtherPanel(props: OtherProps) {
  const form = useRef<HTMLFormElement>(null);
  const { panel } = props;
  const [chosen, setChosen] = useState(props.row.questions[0]?.id);
  const asked = props.row.questions.find(({ id }) => id === chosen) ?? props.row.questions[0];
  useEffect(() => {
    if (panel) form.current?.querySelector<HTMLElement>('input, textarea')?.focus();
  }, [panel]);
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Escape') props.close();
  };
  const onSubmit = (event: FormEvent<HTMLFormElement>) => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    if (panel === 'answer') props.act({ act: 'answer', questionId: asked?.id, text: form.get('text') });
    else props.act(bodyOf(panel, form));
  };
  return (
    <>
      {panel === 'answer' ? (
        <WhichQuestion row={props.row} asked={asked} choose={setChosen} />
      ) : (
        <p className={styles.explained}>{explained(panel, props.row)}</p>
      )}
      <form ref={form} className={styles.panel} onSubmit={onSubmit} onKeyDown={onKeyDown}>
        {panel === 'put-aside' && <PutAside row={props.row} />}
        {panel === 'done' && <Verdict row={props.row} />}
        {panel === 'answer' && (
          <textarea
            name="text"
            required
            rows={5}
            aria-label={`Answer to ${props.row.name}`}
            placeholder="Your answer"
          />
        )}
        <div className={styles.send}>
          <button type="submit" data-filled disabled={props.busy}>
            {SENDS[panel]}
          </button>
          <button type="button" onClick={props.close}>
            Cancel (Esc)
          </button>
        </div>
      </form>
    </>
  );
}

const SENDS: Record<OtherProps['panel'], string> = {
  'put-aside': 'Put aside',
  done: 'Done',
  answer: 'Send answer',
};

function explained(panel: 'put-aside' | 'done', row: RowFacts): ReactNode {
  const words = row.needsWords && ' A danger sign or pain of 6 or more asks for words first.';
  if (panel === 'put-aside') {
    return (
      <>
        <b>Put aside.</b> It comes back by itself at that time, or sooner when it gets worse or something new
        comes up. The checks go on every night.{words}
      </>
    );
  }
  return (
    <>
      <b>Done.</b> What is open for {row.name} closes. The verdict counts for the check in the sentence above
      only, and can be left out.{words}
    </>
  );
}

type Question = RowFacts['questions'][number];
type WhichProps = { row: RowFacts; asked: Question | undefined; choose: (id: string) => void };

/** The question that is answered; where several wait, oldest first, any of them can be chosen. */
function WhichQuestion({ row, asked, choose }: WhichProps) {
  const others = row.questions.length - 1;
  return (
    <div className={styles.explained}>
      <b>{row.name} asks:</b> <q>{asked?.text}</q>
      <Stills ids={asked?.stills ?? []} place />
      {others > 0 && (
        <fieldset>
          <legend>
            {others === 1 ? 'One more question waits.' : `${others} more questions wait.`} Answer which?
          </legend>
          {row.questions.map(({ id, text }) => (
            <label key={id} className={styles.option}>
              <input type="radio" name="asked" checked={id === asked?.id} onChange={() => choose(id)} />
              <span>{text}</span>
            </label>
          ))}
        </fieldset>
      )}
    </div>
  );
}

function PutAside({ row }: { row: RowFacts }) {
  const [dated, setDated] = useState(false);
  const undated = () => setDated(false);
  return (
    <fieldset>
      <legend className="heard-only">Until when</legend>
      <label className={styles.option} title={row.nextCheckIn.exact}>
        <input type="radio" name="until" value="next-check-in" defaultChecked onChange={undated} />
        Until {row.nextCheckIn.said}, the next check-in
      </label>
      <label className={styles.option}>
        <input type="radio" name="until" value="change" onChange={undated} />
        Until it changes
      </label>
      <label className={styles.option}>
        <input type="radio" name="until" value="date" onChange={() => setDated(true)} />
        Until a date
      </label>
      {dated && <input type="date" name="date" required aria-label="Until this date" />}
      <Words row={row} />
    </fieldset>
  );
}

function Verdict({ row }: { row: RowFacts }) {
  return (
    <fieldset>
      <legend className="heard-only">Verdict, can be left out</legend>
      <div className={styles.verdict}>
        <label>
          <input type="radio" name="verdict" value="right" /> Right to tell me
        </label>
        <label>
          <input type="radio" name="verdict" value="not-needed" /> Not needed
        </label>
      </div>
      <Words row={row} />
    </fieldset>
  );
}

function Words({ row }: { row: RowFacts }) {
  return (
    <input
      name="words"
      autoComplete="off"
      required={row.needsWords}
      aria-label={row.needsWords ? 'Why, for the record (needed)' : 'Why, for the record (can be left out)'}
      placeholder={row.needsWords ? 'Why, for the record: needed here' : 'Why, for the record'}
    />
  );
}

function bodyOf(panel: 'put-aside' | 'done', form: FormData): Record<string, unknown> {
  const words = form.get('words') ?? '';
  if (panel === 'done') {
    const verdict = form.get('verdict');
    return { act: 'done', words, ...(verdict && { rightToTell: verdict === 'right' }) };
  }
  const until = form.get('until');
  return { act: 'put-aside', until, words, ...(until === 'date' && { date: form.get('date') }) };
}
