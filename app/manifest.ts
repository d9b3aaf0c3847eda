import type { MetadataRoute } from 'next';

/** What makes the phone offer to install it. */
export default function manifest(): MetadataRoute.Manifest {
  return {
    id: '/today',
    name: 'Plumbline',
    short_name: 'Plumbline',
    description: 'Your plan, your check-ins and the words of your coach.',
    start_url: '/today',
    scope: '/',
    display: 'standalone',
    background_color: '#f1f3ed',
    theme_color: '#f1f3ed',
    icons: [
      { src: '/icon1.png', sizes: '192x192', type: 'image/png' },
      { src: '/icon2.png', sizes: '512x512', type: 'image/png' },
      { src: '/icon2.png', sizes: '512x512', type: 'image/png', purpose: 'maskable' },
      { src: '/icon.svg', sizes: 'any', type: 'image/svg+xml' },
    ],
  };
}
