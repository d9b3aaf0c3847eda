type Serving = { readonly https: boolean; readonly development: boolean };

/** Two years, as browsers' preload lists ask for. */
const HSTS = 'max-age=63072000; includeSubDomains';

/** Headers of every answer. The referrer stays within the product: with none at all, forms would post `Origin: null`. */
function common({ https }: Serving): Record<string, string> {
  return {
    'x-content-type-options': 'nosniff',
    'referrer-policy': 'same-origin',
    'permissions-policy':
      'camera=(self), microphone=(), geolocation=(), payment=(), usb=(), browsing-topics=()',
    'cross-origin-opener-policy': 'same-origin',
    'cross-origin-resource-policy': 'same-origin',
    'x-frame-options': 'DENY',
    ...(https ? { 'strict-transport-security': HSTS } : {}),
  };
}

/** Routes send data, never a page: nothing in it may run. */
export function routeHeaders(serving: Serving, path: string): Record<string, string> {
  const shown = PATHS_THAT_SHOW[path] ?? "form-action 'none'";
  return {
    ...common(serving),
    ...(path.startsWith('/api/handover/') ? { 'x-robots-tag': 'noindex, nofollow, noarchive' } : {}),
    'content-security-policy': `default-src 'none'; base-uri 'none'; ${shown}; frame-ancestors 'none'`,
  };
}

/** Answers to forms that are pages: the form again, and the report behind a link, which carries its own styles. */
const PATHS_THAT_SHOW: Readonly<Record<string, string>> = {
  '/api/check-ins/plain': "form-action 'self'; style-src-attr 'unsafe-inline'",
  '/api/handover/open': "form-action 'self'; style-src 'unsafe-inline'",
  '/api/handover/pack': "form-action 'self'; style-src 'unsafe-inline'",
};

/** Pages: only scripts that carry this answer's nonce run. Development needs eval, inline styles and a socket. */
export function pageHeaders(nonce: string, serving: Serving): Record<string, string> {
  const { development } = serving;
  const rules = [
    "default-src 'self'",
    `script-src 'self' 'nonce-${nonce}' 'strict-dynamic'${development ? " 'unsafe-eval'" : ''}`,
    development ? "style-src 'self' 'unsafe-inline'" : `style-src 'self' 'nonce-${nonce}'`,
    // Positions and lengths of drawings stand in style attributes; style elements stay forbidden.
    "style-src-attr 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "media-src 'self' blob:",
    "font-src 'self'",
    `connect-src 'self'${development ? ' ws: wss:' : ''}`,
    "worker-src 'self'",
    "manifest-src 'self'",
    "frame-src 'none'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ];
  return { ...common(serving), 'content-security-policy': rules.join('; ') };
}
