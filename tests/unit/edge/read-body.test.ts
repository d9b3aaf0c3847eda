import { describe, expect, it } from 'vitest';
import { readBody } from '#lib/edge/read-body.ts';

const ask = (body: BodyInit, type: string, headers: Record<string, string> = {}) =>
  new Request('http://localhost/x', {
    method: 'POST',
    body,
    headers: { 'content-type': type, ...headers },
    ...{ duplex: 'half' },
  });

describe('readBody', () => {
  it('reads JSON and forms; a name that comes twice is a list', async () => {
    expect(await readBody(ask('{"a":1}', 'application/json; charset=utf-8'), 100)).toEqual({ a: 1 });
    expect(await readBody(ask('a=1&b=x&b=y', 'application/x-www-form-urlencoded'), 100)).toEqual({
      a: '1',
      b: ['x', 'y'],
    });
  });

  it('accepts a body of exactly the limit and refuses one byte more', async () => {
    const text = (length: number) => JSON.stringify('x'.repeat(length - 2));
    expect(await readBody(ask(text(64), 'application/json'), 64)).toHaveLength(62);
    await expect(readBody(ask(text(65), 'application/json'), 64)).rejects.toMatchObject({
      code: 'too-large',
    });
  });

  it('stops reading an endless body at the limit', async () => {
    let pulled = 0;
    const endless = new ReadableStream<Uint8Array>({
      pull(controller) {
        pulled += 1;
        controller.enqueue(new Uint8Array(1024).fill(32));
      },
    });
    await expect(readBody(ask(endless, 'application/json'), 10_000)).rejects.toMatchObject({
      code: 'too-large',
    });
    expect(pulled).toBeLessThan(20);
  });

  it('does not believe a short length that is announced', async () => {
    const request = ask(JSON.stringify('x'.repeat(500)), 'application/json', { 'content-length': '3' });
    await expect(readBody(request, 100)).rejects.toMatchObject({ code: 'too-large' });
  });

  it.each([
    ['text/plain', '{"a":1}'],
    ['multipart/form-data; boundary=x', '--x--'],
    ['', '{}'],
  ])('refuses the type "%s"', async (type, body) => {
    await expect(readBody(ask(body, type), 100)).rejects.toMatchObject({ code: 'invalid' });
  });

  it('refuses what is not UTF-8, a null byte in a form and a bare field that reaches into objects', async () => {
    const bytes = new Uint8Array([0x22, 0xff, 0x22]);
    await expect(readBody(ask(bytes, 'application/json'), 100)).rejects.toMatchObject({ code: 'invalid' });
    await expect(readBody(ask('a=%00', 'application/x-www-form-urlencoded'), 100)).rejects.toMatchObject({
      code: 'invalid',
    });
    const fields = await readBody(ask('__proto__=1', 'application/x-www-form-urlencoded'), 100);
    expect(Object.getPrototypeOf(fields)).toBe(Object.prototype);
  });
});
