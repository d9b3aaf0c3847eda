'use client';
import Link from 'next/link';
import { type FormEvent, useState } from 'react';
import { postJson } from '../clients/_parts/post-json.ts';
import styles from './views.module.css';

type View = { id: string; name: string; query: string };
type Props = { kept: View[]; query: string };
type Gone = { name: string; query: string };

/** Filters kept under a name, by this member for this member: opened with a press, renamed, deleted. */
export function Views({ kept, query }: Props) {
  const [views, setViews] = useState(kept);
  const [naming, setNaming] = useState<'keep' | 'rename' | null>(null);
  const [gone, setGone] = useState<Gone | null>(null);
  const [problem, setProblem] = useState('');
  const here = views.find((view) => view.query === query);
  async function send(body: Record<string, unknown>): Promise<boolean> {
    const answer = await postJson('/api/board/views', body);
    setProblem(answer.ok ? '' : answer.message);
    if (answer.ok) setViews((answer.value as { views: View[] }).views);
    return answer.ok;
  }
  async function name(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    const text = new FormData(event.currentTarget).get('view-name');
    const body =
      naming === 'rename' ? { act: 'rename', id: here?.id, name: text } : { act: 'keep', name: text, query };
    if (await send(body)) setNaming(null);
  }
  async function remove() {
    if (here && (await send({ act: 'delete', id: here.id }))) setGone(here);
  }
  async function bringBack() {
    if (gone && (await send({ act: 'keep', name: gone.name, query: gone.query }))) setGone(null);
  }
  if (views.length === 0 && query === '' && !gone) return null;
  return (
    <div className={styles.views}>
      <nav aria-label="Kept views">
        <Link href="/" prefetch={false} aria-current={query === '' ? 'page' : undefined}>
          Everybody
        </Link>
        {views.map((view) => (
          <Link
            key={view.id}
            href={`/?${view.query}`}
            prefetch={false}
            aria-current={view.query === query ? 'page' : undefined}
          >
            {view.name}
          </Link>
        ))}
      </nav>
      {naming ? (
        <form onSubmit={name} onKeyDown={(event) => event.key === 'Escape' && setNaming(null)}>
          <input
            name="view-name"
            required
            maxLength={60}
            autoComplete="off"
            aria-label="Name of this view"
            placeholder="Name of this view"
            defaultValue={naming === 'rename' ? here?.name : ''}
            // biome-ignore lint/a11y/noAutofocus: the press that opened it asked to type here
            autoFocus
          />
          <button type="submit">{naming === 'rename' ? 'Rename' : 'Keep'}</button>
          <button type="button" onClick={() => setNaming(null)}>
            Cancel (Esc)
          </button>
        </form>
      ) : here ? (
        <p>
          <button type="button" onClick={() => setNaming('rename')}>
            Rename
          </button>{' '}
          <button type="button" onClick={remove}>
            Delete
          </button>
        </p>
      ) : (
        query !== '' && (
          <button type="button" onClick={() => setNaming('keep')}>
            Keep this view
          </button>
        )
      )}
      {gone && (
        <p>
          {gone.name} deleted.{' '}
          <button type="button" onClick={bringBack}>
            Undo
          </button>
        </p>
      )}
      <p role="status">{problem}</p>
    </div>
  );
}
