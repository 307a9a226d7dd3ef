import { formatDate } from '@/app/_format/figures';
import { formatMoisture, formatMoment, formatStretch } from '@/app/_format/moisture';
import { addDays } from '@/lib/domain/calendar/calendar-date';
import type { DryingProgress, DryingVerdict } from '@/lib/domain/moisture/drying-progress';

export interface StopHint {
  /** stop: take it off; wait: go on; stuck: something has to change; look: weigh it again */
  kind: 'stop' | 'wait' | 'stuck' | 'look';
  /** for a list: 'Stop', '2 days to go' */
  short: string;
  /** one or two sentences, the finding in ** ** */
  text: string;
}

interface Run {
  progress: DryingProgress;
  targetMoisturePercent: number;
  /** hours are counted from this day's midnight */
  hourZero: string;
  nowHours: number;
  dryingWith: string | null;
}

/**
 * What to do with seed that is drying.
 *
 * @param run  its progress, and this moment on the same clock
 * @returns words for the list and for its page
 * Checked in tests/app/stop-hint.test.ts
 */
export function stopHint(run: Run): StopHint {
  const { progress, hourZero } = run;
  const target = formatMoisture(run.targetMoisturePercent);
  if (!progress.ok) {
    return {
      kind: 'stuck',
      short: 'Check the weights',
      text:
        progress.reason === 'air-too-moist'
          ? `**This air is too moist**: it brings the seed to ${formatMoisture(progress.settlesAtPercent)}, and ${target} is wanted.`
          : `**The weighing at ${formatMoment(progress.hours, hourZero)} is less than the dry matter of the seed**: some was spilled, another tray was weighed, or the moisture at the start is wrong. Correct the weighing, or end this run and start another.`,
    };
  }
  const now = formatMoisture(progress.moistureNowPercent);
  const { verdict } = progress;
  switch (verdict.kind) {
    case 'reached':
      return {
        kind: 'stop',
        short: `Stop: ${now}`,
        text: `**Stop: at target since ${sinceWhen(verdict.hours, run)}.** ${now} at the last weighing, ${target} wanted. Pack and seal it now: in open air it takes up water again.`,
      };
    case 'on-the-way':
      return onTheWay(verdict, run, now, target);
    case 'levels-off-above':
      return settled(verdict, run, now, target);
    case 'cannot-say':
      return cannotSay(verdict, run, now, target);
  }
}

type Verdict<Kind extends DryingVerdict['kind']> = Extract<DryingVerdict, { kind: Kind }>;

function onTheWay(
  { hours, lowerHours, upperHours }: Verdict<'on-the-way'>,
  run: Run,
  now: string,
  target: string,
): StopHint {
  const left = hours - run.nowHours;
  if (left <= 0) {
    return {
      kind: 'look',
      short: 'Weigh it: should be dry',
      text: `**It should be at ${target} by now: weigh it.** ${now} at the last weighing.`,
    };
  }
  const earliest = lowerHours - run.nowHours;
  const from = earliest < 1 ? 'now' : formatStretch(earliest);
  const until =
    upperHours === null
      ? `Not sooner than ${from === 'now' ? 'now' : `in ${from}`}; it may also level off before that, so weigh it again.`
      : `Likely between ${from} and ${formatStretch(Math.max(upperHours - run.nowHours, 1))} from now.`;
  return {
    kind: 'wait',
    short: `${formatStretch(left)} to go`,
    text: `**About ${formatStretch(left)} to go**: at ${target} on ${formatMoment(hours, run.hourZero)}. ${until} ${now} at the last weighing.`,
  };
}

function settled(
  { settlesAtPercent, sure }: Verdict<'levels-off-above'>,
  run: Run,
  now: string,
  target: string,
): StopHint {
  const level = formatMoisture(settlesAtPercent);
  return sure
    ? {
        kind: 'stuck',
        short: `Settled at ${level}`,
        text: `**It settles at ${level}: ${run.dryingWith ?? 'this air'} cannot dry it to ${target}.** ${whatToDo(run.dryingWith)} ${now} at the last weighing.`,
      }
    : {
        kind: 'look',
        short: `May settle at ${level}`,
        text: `**It may settle at ${level}, above the ${target} wanted.** Weigh it again before you decide. ${now} at the last weighing.`,
      };
}

/** A desiccant that is full is renewed; air is changed for drier air. */
function whatToDo(dryingWith: string | null): string {
  if (/gel|silica/i.test(dryingWith ?? '')) return 'Regenerate the gel, or take more of it.';
  if (/bead|zeolite|rice|desiccant/i.test(dryingWith ?? '')) return 'Renew the desiccant, or take more of it.';
  return 'Dry in drier air, or over a desiccant.';
}

function cannotSay({ reason, soonestHours }: Verdict<'cannot-say'>, run: Run, now: string, target: string): StopHint {
  const reached = `${now} at the last weighing, ${target} wanted.`;
  switch (reason) {
    case 'fewer-than-3-weighings':
      return {
        kind: 'look',
        short: 'Weigh it again',
        text: `**Weigh it again**: three weighings at the least tell when drying ends. ${reached}`,
      };
    case 'no-change':
      return {
        kind: 'stuck',
        short: 'No change',
        text: `**The weight stands still.** It has settled in this air, or the balance is too coarse. ${whatToDo(run.dryingWith)} ${reached}`,
      };
    case 'taking-up-water':
      return {
        kind: 'stuck',
        short: 'Takes up water',
        text: `**It takes up water.** Close it off from moist air. ${whatToDo(run.dryingWith)} ${reached}`,
      };
    case 'no-levelling-off-seen':
      return {
        kind: 'wait',
        short: 'Still falling',
        text: `**It dries as fast as at the start, so its end cannot be seen yet.**${soonestHours === null ? '' : ` Not before ${formatMoment(soonestHours, run.hourZero)}.`} ${reached}`,
      };
  }
}

/** 'this morning', 'yesterday', or the day. */
function sinceWhen(hours: number, { nowHours, hourZero }: Run): string {
  const day = Math.floor(hours / 24);
  const ago = Math.floor(nowHours / 24) - day;
  if (ago === 1) return 'yesterday';
  if (ago !== 0) return formatDate(addDays(hourZero, day));
  const hour = hours - 24 * day;
  return hour < 12 ? 'this morning' : hour < 18 ? 'this afternoon' : 'this evening';
}
