'use client';
import Link from 'next/link';
import { usePathname } from 'next/navigation';

const TABS = [
  { href: '/today', label: 'Today' },
  { href: '/progress', label: 'Progress' },
  { href: '/answers', label: 'Answers' },
];

export function Tabs() {
  const path = usePathname();
  return (
    <nav className="phone-tabs" aria-label="Pages">
      {TABS.map(({ href, label }) => (
        <Link key={href} href={href} aria-current={path === href ? 'page' : undefined}>
          {label}
        </Link>
      ))}
    </nav>
  );
}
