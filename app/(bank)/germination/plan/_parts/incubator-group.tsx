import Link from 'next/link';
import { formatCount } from '@/app/_format/figures';
import { groupName, type LotsOfIncubator, type LotToPlan } from '@/lib/server/queries/lots-to-plan';
import { countDaysInWords, temperaturesInWords } from '../../_parts/method-words';
import { ChooseAll } from './choose-all';
import { LotToChoose } from './lot-to-choose';

interface Props {
  group: LotsOfIncubator;
  today: string;
  chosen: readonly string[];
  /** the page of all its lots; null when they are shown */
  allOfIt: string | null;
}

/** Lots that can stand in one incubator, by crop. */
export function IncubatorGroup({ group, today, chosen, allOfIt }: Props) {
  const title = `incubator-${groupName(group.key).replaceAll(' ', '-')}`;
  const toChoose = group.lots.filter(({ underTest }) => underTest === null).length;
  return (
    <fieldset className="sheet p-0!" aria-labelledby={title}>
      <div className="flex flex-wrap items-center justify-between gap-x-6 px-4 pt-3 sm:px-5">
        <h2 id={title}>{incubatorInWords(group)}</h2>
        <p className="text-ink-2">
          {formatCount(group.dueNow)} due
          {group.total > group.dueNow && `, ${formatCount(group.total - group.dueNow)} coming`}
        </p>
      </div>
      {toChoose > 1 && (
        <div className="px-4 sm:px-5">
          <ChooseAll label={allOfIt ? `These ${toChoose}` : `All ${toChoose} on this page`} />
        </div>
      )}
      {byCrop(group.lots).map(([crop, lots]) => (
        <section key={crop} aria-label={crop}>
          <h3 className="border-t border-rule bg-sunk px-4 py-1.5 sm:px-5">
            {crop} <span className="quiet text-sm font-normal">{cropMethod(lots[0])}</span>
          </h3>
          <ul>
            {lots.map((lot) => (
              <LotToChoose key={lot.lotNumber} lot={lot} today={today} checked={chosen.includes(lot.lotNumber)} />
            ))}
          </ul>
        </section>
      ))}
      {allOfIt && group.total > group.lots.length && (
        <p className="border-t border-rule px-4 py-1 sm:px-5">
          <Link href={allOfIt} className="inline-flex min-h-11 items-center underline underline-offset-3">
            All {formatCount(group.total)} lots at {incubatorInWords(group)}
          </Link>
        </p>
      )}
    </fieldset>
  );
}

/** '20 °C for 16 hours and 30 °C for 8 a day, in light'. */
export function incubatorInWords({ temperatures, light }: Pick<LotsOfIncubator, 'temperatures' | 'light'>): string {
  if (temperatures === null) return 'No method known';
  return `${temperaturesInWords(temperatures)}${light ? ', in light' : ''}`;
}

function byCrop(lots: readonly LotToPlan[]): [string, LotToPlan[]][] {
  const crops = new Map<string, LotToPlan[]>();
  for (const lot of lots) crops.set(lot.cropName, [...(crops.get(lot.cropName) ?? []), lot]);
  return [...crops];
}

function cropMethod(lot: LotToPlan | undefined): string {
  if (!lot?.method) return '';
  return [lot.method.substrate, countDaysInWords(lot.method.method)].filter(Boolean).join(' · counted ');
}
