import Link from 'next/link';
import type { ReactNode } from 'react';
import { requireActor } from '#lib/auth/require-actor.ts';
import { CoachNav } from './_frame/coach-nav.tsx';
import styles from './_frame/frame.module.css';
import { NextOnBoard } from './_frame/next-on-board.tsx';
import { SignOut } from './_frame/sign-out.tsx';

export default async function CoachLayout({ children }: { children: ReactNode }) {
  const actor = await requireActor('see-board');
  return (
    <div className={styles.frame}>
      <a href="#main" className={styles.skip}>
        To the page
      </a>
      <header className={styles.head}>
        <CoachNav />
        <p className={styles.who}>
          <span>
            <Link href="/morning-mail" prefetch={false}>
              {actor.name}
              <span className="heard-only">: your morning mail</span>
            </Link>
            , {actor.teamName}
          </span>
          <SignOut />
        </p>
        <NextOnBoard />
      </header>
      {children}
    </div>
  );
}
