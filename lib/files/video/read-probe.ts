import { z } from 'zod';

const stream = z.object({
  index: z.number(),
  codec_type: z.string().default(''),
  codec_name: z.string().default('unknown'),
  width: z.number().default(0),
  height: z.number().default(0),
  pix_fmt: z.string().default(''),
  avg_frame_rate: z.string().default('0/0'),
  disposition: z.record(z.string(), z.number()).default({}),
  side_data_list: z.array(z.looseObject({ rotation: z.number().optional() })).default([]),
});
const probed = z.object({
  streams: z.array(stream).default([]),
  format: z.object({ format_name: z.string(), duration: z.coerce.number().optional() }),
});

export type Probed = {
  format: string;
  /** What the file says of its length; undefined: nothing. */
  seconds: number | undefined;
  picture: PictureStream | undefined;
  hasSound: boolean;
};
export type PictureStream = {
  index: number;
  codec: string;
  pixels: string;
  /** As it is shown, the phone's turning counted in. */
  width: number;
  height: number;
  fps: number | null;
};

/** What ffprobe says of a file; undefined: it is nothing that it knows. */
export function readProbe(json: string): Probed | undefined {
  const parsed = probed.safeParse(parsedJson(json));
  if (!parsed.success) return undefined;
  const { format, streams } = parsed.data;
  const picture = streams.find((one) => one.codec_type === 'video' && one.disposition.attached_pic !== 1);
  return {
    format: format.format_name,
    seconds: format.duration,
    picture: picture && pictureOf(picture),
    hasSound: streams.some((one) => one.codec_type === 'audio'),
  };
}

function parsedJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

function pictureOf(one: z.infer<typeof stream>): PictureStream {
  const turned = one.side_data_list.some(({ rotation }) => Math.abs(rotation ?? 0) % 180 === 90);
  const [over = 0, under = 0] = one.avg_frame_rate.split('/').map(Number);
  return {
    index: one.index,
    codec: one.codec_name,
    pixels: one.pix_fmt,
    width: turned ? one.height : one.width,
    height: turned ? one.width : one.height,
    fps: under > 0 && over > 0 ? Math.round((over / under) * 100) / 100 : null,
  };
}
