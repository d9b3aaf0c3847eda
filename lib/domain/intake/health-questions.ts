/**
 * Health questions at the start, yes or no each. A yes holds upside-down work until a clinician's word is recorded. The
 * list is the trade's; a clinician should confirm it for a team.
 */
export const HEALTH_QUESTIONS = [
  'eyes',
  'blood-pressure',
  'heart-vessels',
  'surgery',
  'concussion',
  'stroke-aneurysm',
  'neck',
  'seizures',
  'blood-thinners',
  'brittle-bones',
  'hiatal-hernia',
  'pregnancy',
] as const;
export type HealthQuestion = (typeof HEALTH_QUESTIONS)[number];

/** As the phone asks it. */
export const HEALTH_ASKED: Record<HealthQuestion, string> = {
  eyes: 'High pressure in an eye (glaucoma), or trouble with the retina?',
  'blood-pressure': 'High blood pressure that is not under control?',
  'heart-vessels': 'A heart problem, or a problem with blood vessels?',
  surgery: 'Surgery in the last half year?',
  concussion: 'A concussion in the last half year, or one that is not over?',
  'stroke-aneurysm': 'A stroke, or a bulge in a blood vessel (aneurysm), ever?',
  neck: 'A neck injury, or a neck that is unstable?',
  seizures: 'Seizures (fits)?',
  'blood-thinners': 'Do you take blood thinners?',
  'brittle-bones': 'Brittle bones (osteoporosis), or bones that break easily?',
  'hiatal-hernia': 'A hiatal hernia, or strong reflux when you bend over?',
  pregnancy: 'Are you pregnant?',
};

/** As a coach reads it, inside a sentence. */
export const HEALTH_LABELS: Record<HealthQuestion, string> = {
  eyes: 'eye pressure or retina',
  'blood-pressure': 'high blood pressure not under control',
  'heart-vessels': 'heart or vessel condition',
  surgery: 'recent surgery',
  concussion: 'concussion',
  'stroke-aneurysm': 'stroke or aneurysm',
  neck: 'neck injury',
  seizures: 'seizures',
  'blood-thinners': 'blood thinners',
  'brittle-bones': 'brittle bones',
  'hiatal-hernia': 'hiatal hernia',
  pregnancy: 'pregnancy',
};
