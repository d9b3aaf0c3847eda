/** First and last byte, both counted. */
type ByteRange = { readonly first: number; readonly last: number };

type Served = {
  /** Names this content and no other, in quotation marks. */
  etag: string;
  bytes: number;
  type: string;
  name: string;
  open: (range?: ByteRange) => Promise<ReadableStream<Uint8Array>>;
};

/** A file or one range of it (RFC 9110, 14), streamed; for nobody's cache, and only as what it is. */
export async function answerRange(request: Request, file: Served): Promise<Response> {
  const headers = new Headers({
    'content-type': file.type,
    'content-disposition': `inline; filename="${file.name}"`,
    'cache-control': 'private, no-store',
    'x-content-type-options': 'nosniff',
    'cross-origin-resource-policy': 'same-origin',
    'accept-ranges': 'bytes',
    etag: file.etag,
  });
  const range = rangeOf(request, file);
  if (range === 'outside') {
    headers.set('content-range', `bytes */${file.bytes}`);
    headers.delete('content-type');
    return new Response(null, { status: 416, headers });
  }
  if (!range) {
    headers.set('content-length', String(file.bytes));
    return new Response(await file.open(), { headers });
  }
  headers.set('content-length', String(range.last - range.first + 1));
  headers.set('content-range', `bytes ${range.first}-${range.last}/${file.bytes}`);
  return new Response(await file.open(range), { status: 206, headers });
}

/** One range; several at once, another unit or nonsense are answered with the whole file, as the standard allows. */
function rangeOf(request: Request, { etag, bytes }: Served): ByteRange | 'outside' | undefined {
  const asked = /^bytes=(\d{0,15})-(\d{0,15})$/.exec(request.headers.get('range') ?? '');
  const stillThis = request.headers.get('if-range') ?? etag;
  if (!asked || stillThis !== etag) return undefined;
  const [, from = '', to = ''] = asked;
  if (from === '' && to === '') return undefined;
  if (from === '')
    return Number(to) === 0 ? 'outside' : { first: Math.max(0, bytes - Number(to)), last: bytes - 1 };
  const first = Number(from);
  const last = to === '' ? bytes - 1 : Math.min(Number(to), bytes - 1);
  if (first >= bytes) return 'outside';
  return last < first ? undefined : { first, last };
}
