import type { Metadata, Viewport } from 'next';
import { connection } from 'next/server';
import type { ReactNode } from 'react';
import './_ui/tokens.css';
import './_ui/base.css';

export const metadata: Metadata = {
  title: { default: 'Plumbline', template: '%s · Plumbline' },
  description: 'Training diaries of a team, checked every night.',
  referrer: 'same-origin',
  formatDetection: { telephone: false, date: false, address: false, email: false },
};

export const viewport: Viewport = {
  width: 'device-width',
  initialScale: 1,
  themeColor: [
    { media: '(prefers-color-scheme: light)', color: '#f1f3ed' },
    { media: '(prefers-color-scheme: dark)', color: '#141917' },
  ],
};

/** Every page is rendered for its request: a page made at build time would carry no nonce and never come to life. */
export default async function RootLayout({ children }: { children: ReactNode }) {
  await connection();
  return (
    <html lang="en">
      <body>{children}</body>
    </html>
  );
}
