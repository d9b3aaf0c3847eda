'use client';
import Link from 'next/link';
import { usePathname } from 'next/navigation';
import styles from './frame.module.css';

const PAGES = [
  { href: '/', word: 'Board' },
  { href: '/clients', word: 'Clients' },
  { href: '/replies', word: 'Replies and films' },
  { href: '/ladders', word: 'Ladders' },
  { href: '/checks', word: 'Checks' },
  { href: '/steps', word: 'Steps' },
  { href: '/nights', word: 'Nights' },
  { href: '/team', word: 'Team' },
] as const;

export function CoachNav() {
  const path = usePathname();
  return (
    <nav className={styles.nav} aria-label="Pages">
      <Link href="/" className={styles.brand}>
        Plumbline
      </Link>
      {PAGES.map(({ href, word }) => {
        const here = href === '/' ? path === '/' : path.startsWith(href);
        return (
          <Link key={href} href={href} className={styles.page} aria-current={here ? 'page' : undefined}>
            {word}
          </Link>
        );
      })}
    </nav>
  );
}
