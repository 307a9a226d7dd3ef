import type { ProblemKind } from '@/lib/domain/logger/logger-problems';

/** What each kind of trouble in a logger's file is called, and what was done about it. */
export const PROBLEM_WORDS: Record<ProblemKind, { title: string; done: string }> = {
  'no-time': { title: 'No date and time', done: 'Left out: totals, comments and broken rows.' },
  'no-value': { title: 'No temperature', done: "Left out: events such as 'battery low', and readings that failed." },
  'cut-short': { title: 'Last row cut off', done: 'Left out. The next file from this logger brings it whole.' },
  future: { title: 'In the future', done: 'The file is not imported.' },
  'too-old': { title: 'Before 1985', done: 'Left out: the clock had lost its time.' },
  'skipped-hour': { title: 'In an hour that never was', done: 'The file is not imported.' },
  'repeated-hour': { title: 'In the hour that the clock showed twice', done: 'Put in the order of the file.' },
  'impossible-temperature': { title: 'Impossible temperature', done: 'Left out: below −90 °C or above 100 °C.' },
  'power-on-value': { title: 'Value at power-on', done: 'Left out: 85 °C between readings far from it.' },
  'impossible-humidity': { title: 'Impossible humidity', done: 'The humidity was left out, the temperature kept.' },
  'humidity-over-full': { title: 'Humidity a little over 100 % or under 0 %', done: 'Taken as 100 % or 0 %.' },
  'out-of-order': { title: 'Out of order', done: 'Put in the order of time.' },
  'same-again': { title: 'The same reading again', done: 'Taken once.' },
  'same-time-other-value': { title: 'Same time, another value', done: 'The first was kept.' },
  jump: { title: 'A jump of more than 15 degrees', done: 'Kept. Look whether the logger was in the store then.' },
};
