import Link from 'next/link';
import styles from './team-lines.module.css';

/** Who has whose clients today, and what waits for approval. Nothing when there is nothing to say. */
export function TeamLines({ lines }: { lines: { words: string; href: string | null }[] }) {
  if (lines.length === 0) return null;
  return (
    <ul className={styles.lines} aria-label="Team">
      {lines.map(({ words, href }) => (
        <li key={words}>{href ? <Link href={href}>{words}</Link> : words}</li>
      ))}
    </ul>
  );
}
