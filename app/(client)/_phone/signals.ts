'use client';
import { useEffect, useState } from 'react';
import { read, remove, write } from './storage.ts';

const SILENT = 'silent';
const PITCH_HZ = 880;
const LOUDNESS = 0.25;
const FADE_S = 0.02;

let audio: AudioContext | null = null;

export function isSilent(): boolean {
  return read(SILENT) !== null;
}

/** Where it cannot be kept it counts until the page is left. */
export function setSilent(silent: boolean): void {
  if (silent) write(SILENT, true);
  else remove(SILENT);
}

/** Called within a tap: browsers let sound begin only there. */
export function readySound(): void {
  if (isSilent() || !('AudioContext' in window)) return;
  audio ??= new AudioContext();
  void audio.resume().catch(() => undefined); // a phone that gives no sound still shows the time
}

/** A beep and a buzz, where the phone gives them and nobody silenced them. */
export function signal(seconds: number): void {
  if (isSilent()) return;
  navigator.vibrate?.(seconds * 1_000);
  if (audio?.state !== 'running') return;
  const tone = audio.createOscillator();
  const volume = audio.createGain();
  const end = audio.currentTime + seconds;
  tone.frequency.value = PITCH_HZ;
  volume.gain.setValueAtTime(LOUDNESS, audio.currentTime);
  volume.gain.setValueAtTime(LOUDNESS, end - FADE_S);
  volume.gain.linearRampToValueAtTime(0, end);
  tone.connect(volume).connect(audio.destination);
  tone.start();
  tone.stop(end);
}

/** Keeps the screen on while something runs, where the phone allows it; taken up again when the page is shown again. */
export function useAwake(isOn: boolean): void {
  useEffect(() => {
    if (!isOn || !('wakeLock' in navigator)) return;
    let lock: WakeLockSentinel | null = null;
    let isOver = false;
    const hold = async () => {
      if (document.visibilityState !== 'visible') return;
      const taken = await navigator.wakeLock.request('screen').catch(() => null); // a low battery refuses
      if (isOver) void taken?.release();
      else lock = taken;
    };
    void hold();
    document.addEventListener('visibilitychange', hold);
    return () => {
      isOver = true;
      document.removeEventListener('visibilitychange', hold);
      void lock?.release();
    };
  }, [isOn]);
}

const LOOK_EVERY_MS = 200;

/** The clock of this phone in ms, looked at five times a second while something runs. */
export function useRunningClock(isOn: boolean): number {
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    if (!isOn) return;
    setNow(Date.now());
    const tick = window.setInterval(() => setNow(Date.now()), LOOK_EVERY_MS);
    return () => window.clearInterval(tick);
  }, [isOn]);
  return now;
}
