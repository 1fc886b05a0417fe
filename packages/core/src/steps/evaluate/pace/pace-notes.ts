import { type Finding, finding } from '../../../ground/findings/index.ts';
import { numberText, percentText } from '../../../ground/units/index.ts';
import type { EqualPace } from './pace.ts';

/** Pace explains a material part of a saving from this share on. Ours. */
export const materialShare = 0.1;
/** A pace that is not shown is worth a warning when it could explain this share. Ours. */
const openShare = 0.25;
/** Shared motions that fill less than this share of the worked time are told to be few. Ours. */
const fewShare = 0.3;
/** From this share of motions that go against the others on, the reader is told. Ours. */
const disagreeing = 0.25;

/** What a reader must know before the saving is believed. */
export function paceNotes(pace: Omit<EqualPace, 'notes'>, before: string, after: string): Finding[] {
  const { ratio, equal } = pace;
  if (ratio === undefined || equal === undefined) return [finding('evaluate/no-shared-motion')];
  const few =
    pace.share < fewShare ? [finding('evaluate/few-shared', {}, { share: percentText(pace.share, 0) })] : [];
  return [...few, ...onSaving(pace, ratio, equal, { before, after })];
}

function onSaving(
  pace: Omit<EqualPace, 'notes'>,
  ratio: number,
  equal: NonNullable<EqualPace['equal']>,
  names: { readonly before: string; readonly after: string },
): Finding[] {
  const { interval, explained, raw } = pace;
  const words = {
    ...names,
    times: percentText(ratio, 0),
    explained: percentText(explained ?? 0, 0),
    equal: savedText(equal.saving.timeSaved),
  };
  const shown = interval !== undefined && (interval.high < 1 || interval.low > 1);
  if (!shown) return openPace(pace);
  const hides =
    ratio > 1 && equal.saving.timeSaved - raw.timeSaved >= materialShare * Math.abs(raw.timeSaved);
  const explains = explained !== undefined && explained >= materialShare;
  if (!hides && !explains) return [];
  return [
    finding(explains ? 'evaluate/pace-explains' : 'evaluate/pace-hides', {}, words),
    ...disagreement(pace),
  ];
}

/** The fastest pace that the cycles leave open, by the share of the saving that it would explain. */
function openPace(pace: Omit<EqualPace, 'notes'>): Finding[] {
  if (pace.raw.timeSaved <= 0) return [];
  if (pace.interval === undefined) return [finding('evaluate/pace-unknown')];
  const most = explainedAt(pace.interval.low, pace);
  if (most < openShare) return [];
  return [finding('evaluate/pace-unsure', {}, { most: percentText(Math.min(1, most), 0) })];
}

/** Share of the saving that a pace ratio would explain. */
function explainedAt(ratio: number, { paced, raw }: Omit<EqualPace, 'notes'>): number {
  const equal = (1 - raw.timeSaved) * (paced / ratio + 1 - paced);
  return (equal - (1 - raw.timeSaved)) / raw.timeSaved;
}

function disagreement({ motions }: Omit<EqualPace, 'notes'>): Finding[] {
  const faster = motions.filter(({ ratio }) => ratio < 1).length;
  const slower = motions.filter(({ ratio }) => ratio > 1).length;
  if (Math.min(faster, slower) < disagreeing * motions.length) return [];
  return [finding('evaluate/pace-disagrees', {}, { count: motions.length, faster, slower })];
}

/** "12.3 % of the time", or that nothing is left of it. */
function savedText(share: number): string {
  return share > 0
    ? `${percentText(share)} of the time`
    : `which is none: it would take ${numberText(-share * 100, 1)} % longer`;
}
