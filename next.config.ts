import type { NextConfig } from 'next';

const config: NextConfig = {
  reactStrictMode: true,
  poweredByHeader: false,
  typedRoutes: false,
  // Pictures are drawn by ourselves: the optimizer is a door we do not need.
  images: { unoptimized: true },
  devIndicators: false,
  experimental: { turbopackFileSystemCacheForBuild: true },
  headers: async () => [
    {
      source: '/_next/static/:path*',
      headers: [
        { key: 'x-content-type-options', value: 'nosniff' },
        { key: 'cross-origin-resource-policy', value: 'same-origin' },
      ],
    },
  ],
};
export default config;
