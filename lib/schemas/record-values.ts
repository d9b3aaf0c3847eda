import { z } from 'zod';
import { localDate as date } from './history-values.ts';

// The kinds of values that rows of a record are made of.

export const uuid = z.uuid();
export const words = z.string().max(100_000);
export const localDate = date;
/** An instant with its offset, as the database writes it in JSON. */
export const moment = z.iso.datetime({ offset: true });
export const whole = z.int();
export const amount = z.number();
export const json = z.json();
