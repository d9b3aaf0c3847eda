'use client';
import { useEffect } from 'react';
import { type KeptForm, saveForm } from './kept-form.ts';

type Props = { form: Omit<KeptForm, 'version' | 'keptAt'> };

/** Keeps the plan on this phone, so that the check-in opens without signal; shows nothing. */
export function KeepForm({ form }: Props) {
  useEffect(() => saveForm({ version: 1, ...form, keptAt: new Date().toISOString() }), [form]);
  return null;
}
