import Link from 'next/link';
import type { ReactNode } from 'react';
import { Back } from './icons.tsx';

type Props = { to: `/${string}`; page: string; children?: ReactNode };

/** The head of a page that goes back to another one, with a word beside it. */
export function BackHead({ to, page, children }: Props) {
  return (
    <header className="phone-head">
      <Link className="back" href={to} aria-label={`Back to ${page}`}>
        <Back />
      </Link>
      {children ? <span className="state">{children}</span> : null}
    </header>
  );
}
