'use client';
import Link from 'next/link';
import { usePathname, useRouter } from 'next/navigation';
import { useEffect, useState } from 'react';
import { type InOrder, nextOnBoard } from '../_board/morning-order.ts';
import styles from './frame.module.css';
import { areKeysOn, isTyping } from './single-keys.ts';

/** On the page of a client: who follows on the board, one key away. */
export function NextOnBoard() {
  const path = usePathname();
  const router = useRouter();
  const [next, setNext] = useState<InOrder>();
  const clientId = /^\/clients\/([0-9a-f-]{36})$/.exec(path)?.[1];
  useEffect(() => setNext(clientId ? nextOnBoard(clientId) : undefined), [clientId]);
  useEffect(() => {
    if (!next) return;
    const onKey = (event: KeyboardEvent) => {
      if (event.key !== 'n' || isTyping(event) || !areKeysOn()) return;
      event.preventDefault();
      router.push(`/clients/${next.id}`);
    };
    document.addEventListener('keydown', onKey);
    return () => document.removeEventListener('keydown', onKey);
  }, [next, router]);
  if (!next) return null;
  return (
    <Link href={`/clients/${next.id}`} prefetch={false} className={styles.next}>
      <u>N</u>ext on the board: {next.name}
    </Link>
  );
}
