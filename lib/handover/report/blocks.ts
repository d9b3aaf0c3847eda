/** A report as blocks, before it is set as PDF or HTML: both say the same because both are made from these. */
export type Block =
  | { kind: 'heading'; level: 1 | 2 | 3; text: string }
  | { kind: 'text'; text: string; tone?: 'lead' | 'small' | 'own-words' }
  | { kind: 'list'; items: string[] }
  | { kind: 'facts'; facts: { name: string; text: string }[] }
  | TableBlock
  | BarsBlock
  | PainBlock
  | { kind: 'caution'; lines: string[] }
  | { kind: 'new-page' };

export type ReportColumn = { name: string; numeric?: boolean };
/** `source`: the CSV that carries the same numbers. Empty cells are unknown. */
export type TableBlock = {
  kind: 'table';
  caption: string;
  source: string;
  columns: ReportColumn[];
  rows: string[][];
  note?: string;
};
/** Blocks of 7 days; `null`: nothing known. Values stand printed at the bars. */
export type BarsBlock = {
  kind: 'bars';
  caption: string;
  alt: string;
  unit: string;
  bars: { label: string; value: number | null; partly: boolean }[];
  usual: { low: number; week: number; high: number } | null;
};
/** Scores 0-10 by day from `from` to `to`; each line has its own dash and mark, and its name beside it. */
export type PainBlock = {
  kind: 'pain';
  caption: string;
  alt: string;
  from: string;
  to: string;
  lines: { name: string; points: { date: string; value: number }[] }[];
};

export type Report = {
  title: string;
  subject: string;
  author: string;
  made: Date;
  foot: string;
  blocks: Block[];
};

export const PAPERS = ['A4', 'Letter'] as const;
export type Paper = (typeof PAPERS)[number];
