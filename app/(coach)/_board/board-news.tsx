'use client';
import { useRouter } from 'next/navigation';
import { useEffect, useRef, useState } from 'react';
import { type Changed, newsWords, urgentWords } from '#lib/views/board-news-words.ts';
import { changesSince } from '#lib/views/board-print.ts';
import { actedOn, settleActs } from './acts-store.ts';
import styles from './foot.module.css';

const EVERY_MS = 45_000;

type News = { words: string; urgent: string };
type Props = { prints: string; query: string };

/**
 * Asks now and then whether the board is different from what stands here, and offers to read it. Nothing moves until the
 * coach says so. Without a connection it says from when the page is.
 */
export function BoardNews({ prints, query }: Props) {
  const router = useRouter();
  const [news, setNews] = useState<News | null>(null);
  const [lost, setLost] = useState(false);
  const [asOf, setAsOf] = useState('');
  const stamp = useRef('');
  const shown = useRef('');
  useEffect(() => {
    const ask = async () => {
      try {
        const answer = await fetch(`/api/board/changes?${query}${query && '&'}stamp=${stamp.current}`);
        if (!answer.ok) throw new Error(`${answer.status}`);
        const said: { stamp: string; rows?: Changed[] } = await answer.json();
        if (said.rows) setNews(toNews(prints, said.rows));
        stamp.current = said.stamp;
        setLost(false);
        setAsOf(clock());
      } catch {
        setLost(true);
      }
    };
    const soon = () => document.visibilityState === 'visible' && void ask();
    const gone = () => setLost(true);
    if (shown.current !== prints) {
      shown.current = prints;
      stamp.current = '';
      settleActs(prints);
      setNews(null);
      setAsOf(clock());
      if (!navigator.onLine) setLost(true);
    }
    const timer = setInterval(soon, EVERY_MS);
    window.addEventListener('focus', soon);
    window.addEventListener('online', soon);
    window.addEventListener('offline', gone);
    return () => {
      clearInterval(timer);
      window.removeEventListener('focus', soon);
      window.removeEventListener('online', soon);
      window.removeEventListener('offline', gone);
    };
  }, [prints, query]);
  return (
    <div className={styles.news}>
      <p role="status">
        {lost && (
          <>
            <b>As of {asOf}, no connection.</b> What stands here stays; acts are refused until it is back.
          </>
        )}
      </p>
      {news?.words && !lost && (
        <button type="button" data-read onClick={() => router.refresh()}>
          {news.words}: <u>r</u>ead them
        </button>
      )}
      <p role="status" className="heard-only">
        {news ? [news.urgent, news.words].filter((words) => words !== '').join(' ') : ''}
      </p>
    </div>
  );
}

function toNews(prints: string, rows: Changed[]): News | null {
  const changes = changesSince(prints, rows, actedOn());
  const words = newsWords(changes);
  return words === '' ? null : { words, urgent: urgentWords(changes) };
}

function clock(): string {
  return new Date().toTimeString().slice(0, 5);
}
