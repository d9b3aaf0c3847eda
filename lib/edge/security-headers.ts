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
  // The answer to a form without scripts may be the form again.
  const isForm = path === PLAIN_FORM;
  return {
    ...common(serving),
    'content-security-policy': `default-src 'none'; base-uri 'none'; form-action ${isForm ? "'self'; style-src-attr 'unsafe-inline'" : "'none'"}; frame-ancestors 'none'`,
  };
}

const PLAIN_FORM = '/api/check-ins/plain';

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
