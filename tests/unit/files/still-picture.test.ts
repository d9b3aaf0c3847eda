import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { STILL_BOUNDS, stillPicture } from '#lib/files/still-picture.ts';
import { aPhoto, movingWebp, noise, wideOpenPng } from '#tests/fixtures/pictures.ts';

describe('a picture as it is kept', () => {
  it('is upright and holds neither place nor camera nor any other data about it', async () => {
    const sent = await aPhoto(60, 40);
    const before = await sharp(sent).metadata();
    expect(before).toMatchObject({ orientation: 6, width: 60, height: 40 });
    expect(Buffer.from(sent).includes('Camera of a phone')).toBe(true);
    expect(Buffer.from(sent).includes('Lisbon')).toBe(true);

    const kept = await stillPicture(sent);
    expect(kept).toMatchObject({ width: 40, height: 60 });
    const after = await sharp(kept.jpeg).metadata();
    expect(after).toMatchObject({ format: 'jpeg', width: 40, height: 60 });
    for (const about of ['exif', 'xmp', 'iptc', 'icc', 'orientation'] as const) {
      expect(after[about], about).toBeUndefined();
    }
    expect(Buffer.from(kept.jpeg).includes('Exif')).toBe(false);
  });

  it('is at most 1,600 px on its longer side and never made larger', async () => {
    const wide = await sharp({ create: { width: 3000, height: 500, channels: 3, background: '#456' } })
      .png()
      .toBuffer();
    expect(await stillPicture(wide)).toMatchObject({ width: 1600, height: 267 });
    const small = await sharp(wide).resize(16, 16).webp().toBuffer();
    expect(await stillPicture(small)).toMatchObject({ width: 16, height: 16 });
  });

  it('is at most 1 MB even where it hardly compresses', async () => {
    const { jpeg } = await stillPicture(await noise(1700));
    expect(jpeg.byteLength).toBeLessThanOrEqual(STILL_BOUNDS.outBytes);
  });

  it('shows white where a PNG shows through', async () => {
    const clear = { r: 0, g: 0, b: 0, alpha: 0 };
    const sent = await sharp({ create: { width: 8, height: 8, channels: 4, background: clear } })
      .png()
      .toBuffer();
    const { dominant } = await sharp((await stillPicture(sent)).jpeg).stats();
    expect(dominant.r).toBeGreaterThan(240);
  });
});

const svg =
  '<svg xmlns="http://www.w3.org/2000/svg" width="9" height="9"><image href="file:///etc/passwd"/></svg>';
const heic = Buffer.concat([Buffer.from([0, 0, 0, 24]), Buffer.from('ftypheic'), Buffer.alloc(40)]);
const cut = async () => (await noise(300)).slice(0, 4_000);

it.each<[string, () => Uint8Array | Promise<Uint8Array>, RegExp]>([
  ['nothing', () => new Uint8Array(), /0 bytes/],
  ['text that is called a JPEG', () => Buffer.from('this is no picture'), /not a JPEG, PNG or WebP/],
  [
    'the first bytes of a JPEG and then text',
    () => Buffer.from('\xff\xd8\xff and so on', 'latin1'),
    /damaged/,
  ],
  ['a drawing that reads other files', () => Buffer.from(svg), /not a JPEG/],
  ['a GIF', () => Buffer.from('GIF89a0000'), /not a JPEG/],
  ['HEIC', () => heic, /HEIC.*as JPEG/],
  ['a JPEG that was cut short', cut, /damaged/],
  ['400 megapixels in a few KB', () => wideOpenPng(20_000), /20000 x 20000 px: at most 12000/],
  ['81 megapixels', () => wideOpenPng(9_000), /at most 12000 px on a side and 64 megapixels/],
  ['an animation', () => movingWebp(40), /moves/],
])('%s is refused and the field named', async (_, make, why) => {
  const sent = await make();
  await expect(stillPicture(sent)).rejects.toMatchObject({
    code: 'invalid',
    fields: { still: expect.stringMatching(why) },
  });
});

it('a large PNG that may be decoded is decoded', async () => {
  expect(await stillPicture(wideOpenPng(4_000))).toMatchObject({ width: 1600, height: 1600 });
});
