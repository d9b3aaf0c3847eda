import { createServer, type IncomingMessage } from 'node:http';
import type { AddressInfo } from 'node:net';
import { buffer } from 'node:stream/consumers';
import { expectedSignature, givenSignature } from './verify-signature.ts';

/** The only one that is there. */
export const BUCKET = 'films';
export type FakeBucket = {
  address: string;
  files: Map<string, Buffer>;
  /** Method and path of each request, the newest last. */
  asked: string[];
  /** Uploads in parts that were begun and neither joined nor given up. */
  open: Map<string, Buffer[]>;
  failOn: (method: string, address: string) => boolean;
  close: () => Promise<void>;
};

type Reply = { status: number; body?: string | Buffer; headers?: Record<string, string> };

/** What of S3 the store uses, over HTTP; a request that is not signed as it should be is refused. */
export async function openBucket(secret: string): Promise<FakeBucket> {
  const server = createServer((request, response) => {
    void answer(bucket, request, secret).then(
      ({ status, body, headers }) => response.writeHead(status, headers).end(body),
      () => response.destroy(),
    );
  });
  await new Promise<void>((done) => {
    server.listen(0, '127.0.0.1', done);
  });
  const bucket: FakeBucket = {
    address: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    files: new Map(),
    asked: [],
    open: new Map(),
    failOn: () => false,
    close: () =>
      new Promise((done) => {
        server.close(() => done());
      }),
  };
  return bucket;
}

async function answer(bucket: FakeBucket, request: IncomingMessage, secret: string): Promise<Reply> {
  const { method = '', url = '' } = request;
  const [path = '', query = ''] = url.split('?');
  const body = await buffer(request);
  bucket.asked.push(`${method} ${url}`);
  const headers = request.headers as Record<string, string>;
  const isSigned =
    givenSignature(headers.authorization) === expectedSignature({ method, path, query, headers }, secret);
  if (!isSigned) return { status: 403, body: '<Error><Code>SignatureDoesNotMatch</Code></Error>' };
  if (bucket.failOn(method, url)) return { status: 409, body: 'no' };
  const [, name, ...rest] = path.split('/');
  if (name !== BUCKET) return { status: 404, body: '<Error><Code>NoSuchBucket</Code></Error>' };
  const key = rest.join('/');
  const one = { method, key, asked: new URLSearchParams(query), body, range: headers.range };
  return inParts(bucket, one) ?? ofFile(bucket, one);
}

type Asked = { method: string; key: string; asked: URLSearchParams; body: Buffer; range: string | undefined };

function inParts({ open, files }: FakeBucket, { method, key, asked, body }: Asked): Reply | undefined {
  if (method === 'POST' && asked.has('uploads')) {
    open.set('up/1', []);
    const id = '<UploadId>up/1</UploadId>';
    return { status: 200, body: `<InitiateMultipartUploadResult>${id}</InitiateMultipartUploadResult>` };
  }
  const upload = asked.get('uploadId');
  if (upload === null) return undefined;
  const parts = open.get(upload) ?? [];
  if (method === 'PUT') {
    parts.push(body);
    return { status: 200, headers: { etag: `"${body.length}"` } };
  }
  open.delete(upload);
  if (method === 'DELETE') return { status: 204 };
  files.set(key, Buffer.concat(parts));
  return { status: 200, body: '<CompleteMultipartUploadResult/>' };
}

function ofFile({ files }: FakeBucket, { method, key, asked, body, range }: Asked): Reply {
  if (method === 'PUT') {
    files.set(key, body);
    return { status: 200 };
  }
  if (method === 'DELETE') {
    files.delete(key);
    return { status: 204 };
  }
  const prefix = asked.get('prefix');
  if (prefix !== null) {
    const keys = [...files.keys()].filter((name) => name.startsWith(prefix));
    const listed = keys.map((name) => `<Contents><Key>${name}</Key></Contents>`).join('');
    return { status: 200, body: `<ListBucketResult>${listed}</ListBucketResult>` };
  }
  const found = files.get(key);
  if (!found) return { status: 404 };
  const [, first, last] = /^bytes=(\d+)-(\d+)$/.exec(range ?? '') ?? [];
  if (first === undefined) return { status: 200, body: found };
  return { status: 206, body: found.subarray(Number(first), Number(last) + 1) };
}
