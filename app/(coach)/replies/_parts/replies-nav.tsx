import Link from 'next/link';
import styles from './replies.module.css';

const PARTS = [
  { href: '/replies', word: 'Waiting' },
  { href: '/replies/write', word: 'Write first' },
  { href: '/replies/kept', word: 'Kept replies' },
  { href: '/morning-mail', word: 'Your morning mail' },
] as const;
export type RepliesPart = (typeof PARTS)[number]['href'];

export function RepliesNav({ here }: { here: RepliesPart }) {
  return (
    <nav className={styles.parts} aria-label="Replies">
      {PARTS.map(({ href, word }) => (
        <Link key={href} href={href} aria-current={href === here ? 'page' : undefined}>
          {word}
        </Link>
      ))}
    </nav>
  );
}
