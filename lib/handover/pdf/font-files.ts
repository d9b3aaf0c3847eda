import { join } from 'node:path';

/** Full TrueType fonts from npm, all OFL-1.1, Apache-2.0 or as free; only the letters used go into a PDF. */
const FOLDER = join(/*turbopackIgnore: true*/ process.cwd(), 'node_modules');
const google = (family: string, file: string) => join(FOLDER, '@expo-google-fonts', family, file);

export const FACES = {
  words: google('faustina', '400Regular/Faustina_400Regular.ttf'),
  'words-strong': google('faustina', '600SemiBold/Faustina_600SemiBold.ttf'),
  'words-slanted': google('faustina', '400Regular_Italic/Faustina_400Regular_Italic.ttf'),
  measures: google('sofia-sans-semi-condensed', '400Regular/SofiaSansSemiCondensed_400Regular.ttf'),
  'measures-strong': google(
    'sofia-sans-semi-condensed',
    '600SemiBold/SofiaSansSemiCondensed_600SemiBold.ttf',
  ),
} as const;
export type Face = keyof typeof FACES;

/** Tried in this order for letters that a face lacks: the first that has one is taken. */
export const FALLBACKS = {
  // Greek, Cyrillic, Armenian, Georgian, Hebrew, Arabic, signs.
  dejavu: join(FOLDER, 'dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf'),
  japanese: google('kosugi-maru', '400Regular/KosugiMaru_400Regular.ttf'),
  chinese: google('zcool-xiaowei', '400Regular/ZCOOLXiaoWei_400Regular.ttf'),
  korean: google('gowun-dodum', '400Regular/GowunDodum_400Regular.ttf'),
  devanagari: google('noto-sans-devanagari', '400Regular/NotoSansDevanagari_400Regular.ttf'),
  thai: google('noto-sans-thai', '400Regular/NotoSansThai_400Regular.ttf'),
} as const;
export type FontName = Face | keyof typeof FALLBACKS;
