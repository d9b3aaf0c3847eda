import { z } from 'zod';
import type { OpenedPage } from '#lib/usecases/handover/open-link.ts';
import { longDate } from '#lib/views/say-date.ts';

const refusal = z.object({ error: z.object({ message: z.string() }) });
const STYLE = `:root{color-scheme:light dark;--paper:#fbfcf8;--ink:#161d1a;--ink2:#434d47;--edge:#6b756f}
@media (prefers-color-scheme:dark){:root{--paper:#141917;--ink:#e9ece3;--ink2:#bac3ba;--edge:#8a958d}}
body{margin:0;background:var(--paper);color:var(--ink);font:17px/1.4 "Sofia Sans Semi Condensed","Arial Narrow",Arial,sans-serif}
main{max-width:560px;margin:0 auto;padding:56px 16px 40px}h1{margin:0 0 16px;font:400 25px/32px Faustina,Georgia,serif}`;
const BAR = `.link-bar{max-width:760px;margin:0 auto;padding:12px 16px;border-bottom:2px solid;font:16px/1.4 "Sofia Sans Semi Condensed","Arial Narrow",Arial,sans-serif}
.link-bar p{margin:0 0 8px}@media print{.link-bar form{display:none}}`;
const FORM = `label{display:block;margin:0 0 4px;font-weight:600}
input[name=code]{box-sizing:border-box;width:100%;max-width:220px;min-height:44px;margin:0 0 16px;padding:8px 10px;border:1px solid;background:none;color:inherit;font:400 19px/24px inherit;letter-spacing:.08em}
button{min-height:44px;padding:8px 18px;border:1px solid;background:none;color:inherit;font:600 16px/20px inherit;cursor:pointer}
:is(input,button):focus-visible{outline:2px solid #7a5a0a;outline-offset:2px}`;

/** The report with a line above it that says for whom it is, until when, and holds the pack where it was ticked. */
export function linkedReport(opened: OpenedPage, asked: { token: string; code: string }): Response {
  const ends = longDate(opened.expiresAt.toISOString().slice(0, 10));
  const pack = opened.withPack
    ? `<form action="/api/handover/pack" method="post">${hidden('token', asked.token)}${hidden('code', asked.code)}<button>Download the pack</button></form>`
    : '';
  const bar = `<aside class="link-bar" aria-label="About this page"><p>For ${escaped(opened.forWhom)}, from ${escaped(opened.by)} of ${escaped(opened.team)}. Read only. The link ends on ${escaped(ends)}, or earlier if it is ended; each opening is written down.</p>${pack}</aside>`;
  const html = opened.html
    .replace('</head>', () => `<meta name="robots" content="noindex"><style>${BAR}${FORM}</style></head>`)
    .replace('<body>', () => `<body>${bar}`);
  return page(html, new Headers(), 200);
}

/** A refusal as a page; with the form again where another code can be tried. */
export async function linkRefused(answer: Response, posted: Request): Promise<Response> {
  if (answer.status < 400) return answer;
  const { error } = refusal.parse(await answer.json());
  const again = answer.status === 400 ? formAgain(await tokenOf(posted)) : '';
  const html = `<!DOCTYPE html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><meta name="robots" content="noindex"><title>Not opened · Plumbline</title><style>${STYLE}${FORM}</style></head><body><main><h1>Not opened</h1><p role="alert">${escaped(error.message)}</p>${again}</main></body></html>`;
  return page(html, answer.headers, answer.status);
}

function formAgain(token: string): string {
  return `<form action="/api/handover/open" method="post">${hidden('token', token)}<label for="code">Code, six digits</label><input id="code" name="code" inputmode="numeric" autocomplete="off" maxlength="9" required><br><button>Open it</button></form>`;
}

async function tokenOf(posted: Request): Promise<string> {
  return new URLSearchParams(await posted.text().catch(() => '')).get('token') ?? '';
}

function page(html: string, given: Headers, status: number): Response {
  const headers = new Headers(given);
  headers.set('content-type', 'text/html; charset=utf-8');
  headers.set('cache-control', 'no-store');
  return new Response(html, { status, headers });
}

const hidden = (name: string, value: string) =>
  `<input type="hidden" name="${name}" value="${escaped(value)}">`;

function escaped(text: string): string {
  return text
    .replaceAll('&', '&amp;')
    .replaceAll('<', '&lt;')
    .replaceAll('>', '&gt;')
    .replaceAll('"', '&quot;');
}
