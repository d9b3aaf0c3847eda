'use client';

import { useState } from 'react';
import { emptySession, type FormSession, type PlanFormModel, type PlanTyped } from '#lib/views/plan-form.ts';
import { emptyRow, type FormRow, moveRow, nextKey, sidesApart, tidyPairs } from '#lib/views/plan-rows.ts';

/** All that is typed into the plan form, and the acts that change it. */
export function usePlan(model: PlanFormModel, start: Partial<PlanTyped>) {
  const [typed, setTyped] = useState<PlanTyped>(() => ({ ...typedOf(model), ...start }));
  const change = (make: (all: PlanTyped) => Partial<PlanTyped>) =>
    setTyped((all) => ({ ...all, ...make(all) }));
  return {
    typed,
    set: (patch: Partial<PlanTyped>) => change(() => patch),
    setRow: (key: number, patch: Partial<FormRow>) =>
      change(({ rows }) => ({
        rows: tidyPairs(rows.map((row) => (row.key === key ? { ...row, ...patch } : row))),
      })),
    addRow: (session: string) =>
      change(({ rows }) => ({ rows: [...rows, emptyRow(nextKey(rows), session)] })),
    removeRow: (key: number) =>
      change(({ rows }) => ({ rows: tidyPairs(rows.filter((row) => row.key !== key)) })),
    moveRow: (key: number, to: number) => change(({ rows }) => ({ rows: moveRow(rows, key, to) })),
    partSides: (key: number) => change(({ rows }) => ({ rows: sidesApart(rows, key) })),
    setSession: (label: string, patch: Partial<FormSession>) =>
      change(({ sessions }) => ({
        sessions: sessions.map((one) => (one.label === label ? { ...one, ...patch } : one)),
      })),
    addSession: (label: string) =>
      change(({ sessions, rows }) => ({
        sessions: [...sessions, emptySession(label)],
        rows: rows.some((row) => row.session === label) ? rows : [...rows, emptyRow(nextKey(rows), label)],
      })),
    removeSession: (label: string) =>
      change(({ sessions, rows }) => ({
        sessions: sessions.filter((one) => one.label !== label),
        rows: rows.filter((row) => row.session !== label),
      })),
    moveSession: (label: string) =>
      change(({ sessions }) => {
        const at = sessions.findIndex((one) => one.label === label);
        const [moved, before] = [sessions[at], sessions[at - 1]];
        if (!moved || !before) return {};
        return { sessions: [...sessions.slice(0, at - 1), moved, before, ...sessions.slice(at + 1)] };
      }),
  };
}
export type Plan = ReturnType<typeof usePlan>;

function typedOf(model: PlanFormModel): PlanTyped {
  const { from, until, sessionsPerWeek, why, notes, easyWeeks, testWeeks, noKitWeeks } = model;
  const { sessions, rows, goals, acceptedWeekAu } = model;
  const dates = { from, until, easyWeeks, testWeeks, noKitWeeks };
  return { ...dates, sessionsPerWeek, why, notes, sessions, rows, goals, acceptedWeekAu };
}
