import type { ReactNode } from 'react';
import styles from './_parts/ladders.module.css';

/** Gives every page of the ladders the sizes that a thumb needs on a phone. */
export default function LaddersLayout({ children }: { children: ReactNode }) {
  return <div className={styles.pages}>{children}</div>;
}
