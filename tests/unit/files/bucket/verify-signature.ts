import { createHash, createHmac } from 'node:crypto';

type Signed = { method: string; path: string; query: string; headers: Record<string, string | undefined> };

const sha256 = (text: string) => createHash('sha256').update(text).digest('hex');
const hmac = (key: string | Buffer, text: string) => createHmac('sha256', key).update(text).digest();

/** The signature that a request should carry, written after the description of AWS Signature Version 4 and nothing else. */
export function expectedSignature(request: Signed, secret: string): string {
  const authorization = request.headers.authorization ?? '';
  const [, day = '', region = '', service = ''] =
    /Credential=[^/]+\/(\d{8})\/([^/]+)\/([^/]+)\/aws4_request/.exec(authorization) ?? [];
  const signed = (/SignedHeaders=([^,]+)/.exec(authorization)?.[1] ?? '').split(';');
  const query = request.query
    .split('&')
    .filter((pair) => pair !== '')
    .map((pair) => (pair.includes('=') ? pair : `${pair}=`))
    .sort()
    .join('&');
  const canonical = [
    request.method,
    request.path,
    query,
    ...signed.map((name) => `${name}:${(request.headers[name] ?? '').trim()}`),
    '',
    signed.join(';'),
    request.headers['x-amz-content-sha256'] ?? '',
  ].join('\n');
  const scope = `${day}/${region}/${service}/aws4_request`;
  const toSign = ['AWS4-HMAC-SHA256', request.headers['x-amz-date'] ?? '', scope, sha256(canonical)].join(
    '\n',
  );
  const key = [region, service, 'aws4_request'].reduce(hmac, hmac(`AWS4${secret}`, day));
  return hmac(key, toSign).toString('hex');
}

export function givenSignature(authorization: string | undefined): string {
  return /Signature=([0-9a-f]{64})/.exec(authorization ?? '')?.[1] ?? '';
}
