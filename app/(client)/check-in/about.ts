/** What a day without training is told for: nothing special, "it hurts today", or how it is the morning after. */
export type About = 'day' | 'pain' | 'morning';

/** As the link on Today says it; read on the phone, so that it holds without signal too. */
export function aboutOf(search: string): About {
  const about = new URLSearchParams(search).get('about');
  return about === 'pain' || about === 'morning' ? about : 'day';
}
