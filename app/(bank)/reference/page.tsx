import type { Metadata } from 'next';
import Link from 'next/link';
import { PageHead } from '@/app/_components/page-head';
import { cropPath } from '@/app/_format/links';
import { CAUTIONS } from '@/lib/domain/reference/cautions';
import { FACT_MARKS } from '@/lib/domain/reference/crop-facts';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { findLongevityConstants, type LongevityConstantsRow } from '@/lib/server/queries/reference';

import { CALCULATORS } from './_parts/calculators';

export const metadata: Metadata = { title: 'Reference' };

const MARKS_IN_WORDS: Record<(typeof FACT_MARKS)[number], string> = {
  published: 'read in the text named as its source',
  'common practice': 'what growers and seed keepers usually do',
  'from memory': 'recalled and not checked on the printed page: check before you rely on it',
  "bank's own": 'entered by this bank',
};

export default async function ReferencePage() {
  const person = await requirePerson('visitor');
  const constants = await findLongevityConstants();
  return (
    <>
      <PageHead title="Reference" below="What the forecasts and lists rest on, and where each figure comes from.">
        <Link href="/collection/crops" className="button">
          Facts by crop
        </Link>
      </PageHead>
      <section className="grid gap-3" aria-labelledby="calculators">
        <h2 id="calculators">Calculators</h2>
        <ul className="sheet grid gap-x-6 sm:grid-cols-2">
          {CALCULATORS.map(({ slug, title, asks }) => (
            <li key={slug} className="border-b border-rule last:border-0">
              <Link href={`/reference/${slug}`} className="block min-h-11 py-2 text-ink no-underline">
                <span className="font-semibold text-leaf underline underline-offset-3">{title}</span>
                <span className="label block">{asks}</span>
              </Link>
            </li>
          ))}
        </ul>
      </section>
      <section className="sheet grid gap-2" aria-labelledby="marks">
        <h2 id="marks">How a figure is known</h2>
        <dl className="grid gap-1">
          {FACT_MARKS.map((mark) => (
            <div key={mark} className="sm:grid sm:grid-cols-[10rem_1fr]">
              <dt className="font-semibold">{mark}</dt>
              <dd>{MARKS_IN_WORDS[mark]}</dd>
            </div>
          ))}
        </dl>
      </section>
      <section className="grid gap-3" aria-labelledby="constants">
        <div className="flex flex-wrap items-center justify-between gap-3">
          <h2 id="constants">Longevity constants</h2>
          {mayActAs(person, 'steward') && (
            <Link href="/reference/constants/new" className="button">
              Add the bank’s own
            </Link>
          )}
        </div>
        <p className="max-w-prose">
          A lot of viability <i>v</i> (in probits) falls as <i>v = K − p/σ</i> over <i>p</i> days, with{' '}
          <i>log₁₀ σ = KE − CW log₁₀ m − CH t − CQ t²</i> at <i>m</i> percent moisture (fresh weight) and <i>t</i> °C
          (Ellis & Roberts 1980). It holds for seed that bears drying, between a low-moisture limit and about 15 %
          moisture.
        </p>
        <div className="sheet overflow-x-auto p-0!">
          <table className="ledger stacked tight">
            <thead>
              <tr>
                <th scope="col">species</th>
                {['KE', 'CW', 'CH', 'CQ'].map((name) => (
                  <th key={name} scope="col" className="number">
                    {name}
                  </th>
                ))}
                <th scope="col">used by</th>
                <th scope="col">source</th>
              </tr>
            </thead>
            <tbody>
              {constants.map((row) => (
                <ConstantsRow key={row.id} row={row} />
              ))}
            </tbody>
          </table>
        </div>
      </section>
      <section className="grid gap-3" aria-labelledby="cautions">
        <h2 id="cautions">Cautions</h2>
        <ul className="sheet grid gap-3">
          {CAUTIONS.map((caution) => (
            <li key={caution.key} className="max-w-prose">
              {caution.text}
              <span className="label block wrap-anywhere">
                {caution.mark}: {caution.source}
              </span>
            </li>
          ))}
        </ul>
      </section>
    </>
  );
}

function ConstantsRow({ row }: { row: LongevityConstantsRow }) {
  return (
    <tr id={row.id}>
      <th scope="row" className="row-head">
        {row.name}
        <i className="quiet block text-sm font-normal">{row.species}</i>
        <span className="label block font-normal">fitted in: {rangeInWords(row)}</span>
      </th>
      <td className="number" data-label="KE">
        {row.KE}
        {row.standardErrorKE !== null && <span className="quiet"> ± {row.standardErrorKE}</span>}
      </td>
      <td className="number" data-label="CW">
        {row.CW}
        {row.standardErrorCW !== null && <span className="quiet"> ± {row.standardErrorCW}</span>}
      </td>
      <td className="number" data-label="CH">
        {row.CH}
      </td>
      <td className="number" data-label="CQ">
        {row.CQ}
      </td>
      <td className="text-sm md:min-w-44" data-label="used by">
        {row.crops.length === 0 && <span className="quiet">none</span>}
        {row.crops.map((crop, index) => (
          <span key={crop.id}>
            {index > 0 && ', '}
            <Link href={cropPath(crop.id)} className="text-ink underline underline-offset-3">
              {crop.name}
            </Link>
          </span>
        ))}
      </td>
      <td className="text-sm wrap-anywhere md:w-72 md:min-w-56">
        <b>{row.mark}</b>: {row.source}
      </td>
    </tr>
  );
}

function rangeInWords(row: LongevityConstantsRow): string {
  const moisture = span(row.moistureFromPercent, row.moistureToPercent, '% moisture');
  const temperature = span(row.temperatureFromC, row.temperatureToC, '°C');
  return [moisture, temperature].filter(Boolean).join(', ') || 'not known';
}

const span = (from: number | null, to: number | null, unit: string) =>
  from === null || to === null ? '' : `${from}–${to} ${unit}`.replace('-', '−');
