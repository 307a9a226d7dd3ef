import Link from 'next/link';
import { Caption } from '@/app/_components/caption';
import { RowLink } from '@/app/_components/list/row-link';
import { TableHead } from '@/app/_components/table-head';
import { climateCostWords } from '@/app/_format/climate-cost-words';
import { type ClimateAddress, climatePath } from '@/app/_format/climate-path';
import { formatDateRange } from '@/app/_format/date-range';
import { formatCount, formatPercent } from '@/app/_format/figures';
import { lotPath } from '@/app/_format/links';
import { costInWords, LEAST_NORMAL_DAYS } from '@/app/_format/normal-time';
import { fromEpochDay } from '@/lib/domain/calendar/calendar-date';
import { yearsInWords } from '@/lib/domain/longevity/years-in-words';
import type { LotHit } from '@/lib/server/queries/lots-hardest-hit';
import type { StoreClimatePage } from '@/lib/server/queries/store-climate';
import { getStoreClimateCost, type StoreClimateCost } from '@/lib/server/queries/store-climate-cost';

interface Props {
  storeId: string;
  page: StoreClimatePage;
  address: ClimateAddress;
}

/** What the stretch cost the seed that lay there. It comes after the rest of the page: thousands of lots take a moment. */
export async function CostPart({ storeId, page, address }: Props) {
  // Lets what stands above be sent first.
  await new Promise((resolve) => setImmediate(resolve));
  const cost = getStoreClimateCost(storeId, page);
  if (cost.packets === 0) return <p className="quiet">No packet with seed lay here on these days.</p>;
  return (
    <>
      {cost.crops.length > 0 && <Finding page={page} cost={cost} />}
      <p className="quiet max-w-prose">
        Normal is this store at its target: a normal month is what seed here would age in a month at the target. Where
        nothing was logged the target stands in, and costs nothing.
      </p>
      {cost.failures.length > 1 && <Failures storeId={storeId} address={address} cost={cost} />}
      {cost.crops.length > 0 && <Crops cost={cost} />}
      {cost.lots.length > 0 && <Lots lots={cost.lots} />}
      {cost.uncounted.length > 0 && <Uncounted cost={cost} />}
    </>
  );
}

function Finding({ page, cost }: { page: StoreClimatePage; cost: StoreClimateCost }) {
  const whole = cost.crops.reduce((most, crop) => (crop.normalDays > most.normalDays ? crop : most));
  const [worst] = cost.failures;
  const words = climateCostWords({
    from: page.from,
    to: page.to,
    whole,
    failure: worst
      ? {
          from: fromEpochDay(worst.excursion.fromDay),
          to: fromEpochDay(worst.excursion.toDay - 1),
          ...worst.costliest,
        }
      : null,
  });
  return <Caption text={words} />;
}

function Failures({ storeId, address, cost }: { storeId: string; address: ClimateAddress; cost: StoreClimateCost }) {
  return (
    <div>
      <h3>The times outside that cost most</h3>
      <ul className="grid gap-1">
        {cost.failures
          .filter(({ costliest }) => costliest.normalDays >= LEAST_NORMAL_DAYS)
          .slice(0, 5)
          .map(({ excursion, costliest }) => {
            const days = { from: fromEpochDay(excursion.fromDay), to: fromEpochDay(excursion.toDay - 1) };
            return (
              <li key={excursion.fromEpochSeconds}>
                <Link href={climatePath(storeId, { ...address, ...days })} scroll={false} prefetch={false}>
                  {formatDateRange(days.from, days.to)}
                </Link>
                : {costInWords(costliest.normalDays)} ({costliest.cropName.toLowerCase()})
              </li>
            );
          })}
      </ul>
    </div>
  );
}

function Crops({ cost }: { cost: StoreClimateCost }) {
  return (
    <div className="grid gap-2">
      <h3>Crop by crop</h3>
      <div className="sheet overflow-x-auto p-0!">
        <table className="ledger stacked">
          <TableHead
            columns={[
              'Crop',
              'Container',
              'Lots',
              'Days here',
              'It cost',
              'Probits',
              'A typical lot now',
              'Without the cost',
            ]}
            words={['Crop', 'Container', 'It cost']}
          />
          <tbody>
            {cost.crops.map((crop) => (
              <tr key={`${crop.cropId} ${crop.sealed}`}>
                <th scope="row" className="row-head">
                  {crop.cropName}
                </th>
                <td data-label="container">{crop.sealed ? 'sealed' : 'open'}</td>
                <td className="number" data-label="lots">
                  {formatCount(crop.lots)}
                </td>
                <td className="number" data-label="days here">
                  {formatCount(crop.days)}
                </td>
                <td data-label="it cost">{costInWords(crop.normalDays)}</td>
                <td className="number" data-label="probits">
                  {probits(crop.extraProbits)}
                </td>
                <td className="number" data-label="a typical lot now">
                  {crop.viability ? `${formatPercent(crop.viability.now)} alive` : '–'}
                </td>
                <td className="number" data-label="without the cost">
                  {crop.viability ? formatPercent(crop.viability.without) : '–'}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="label">
        Of each crop, the seed that lay here longest, at the published rate of ageing. A probit is the unit of ageing:
        from 98 to 86 % alive is about one, from 86 to 54 % another.
      </p>
    </div>
  );
}

function Lots({ lots }: { lots: LotHit[] }) {
  return (
    <div className="grid gap-2">
      <h3>The lots hit hardest</h3>
      <div className="sheet overflow-x-auto p-0!">
        <table className="ledger stacked">
          <TableHead
            columns={['Lot', 'Packet', 'Now', 'Without the cost', 'Lost', 'Below its line sooner']}
            words={['Lot', 'Packet', 'Below its line sooner']}
          />
          <tbody>
            {lots.map((lot) => (
              <tr key={lot.lotNumber}>
                <th scope="row" className="row-head">
                  <RowLink href={lotPath(lot.lotNumber)}>{lot.accessionName}</RowLink>{' '}
                  <span className="quiet font-normal">{lot.cropName}</span>{' '}
                  <span className="figures block font-normal">{lot.lotNumber}</span>
                </th>
                <td data-label="packet">
                  <span className="figures">{lot.packetNumber}</span>, {lot.sealed ? 'sealed' : 'open'}
                </td>
                <td className="number" data-label="now">
                  {formatPercent(lot.viability.now)}
                </td>
                <td className="number" data-label="without the cost">
                  {formatPercent(lot.viability.without)}
                </td>
                <td className="number" data-label="lost">
                  {points(lot.viability)}
                </td>
                <td data-label="below its line sooner">
                  {lot.fellBelow && <b>▼ below it because of this; </b>}
                  {lot.daysEarlier === null ? '–' : `${yearsInWords(lot.daysEarlier)} sooner`}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="label">
        By each lot's own tests and rate of ageing, as its forecast. 'Sooner' holds if the store where it lies now keeps
        to its target.
      </p>
    </div>
  );
}

function Uncounted({ cost }: { cost: StoreClimateCost }) {
  return (
    <details>
      <summary className="cursor-pointer py-2 font-semibold">
        Seed for which no cost can be told ({formatCount(cost.uncounted.reduce((sum, { packets }) => sum + packets, 0))}{' '}
        packets)
      </summary>
      <ul className="grid max-w-prose list-disc gap-1 pl-5">
        {cost.uncounted.map(({ cropName, packets, reason }) => (
          <li key={`${cropName} ${reason}`}>
            <b>{cropName}</b>, {formatCount(packets)} {packets === 1 ? 'packet' : 'packets'}: {reason}
          </li>
        ))}
      </ul>
    </details>
  );
}

function probits(value: number): string {
  if (Math.abs(value) < 0.0005) return '0';
  return (Math.abs(value) < 0.01 ? value.toPrecision(1) : value.toFixed(2)).replace('-', '−');
}

function points({ now, without }: LotHit['viability']): string {
  const lost = 100 * (without - now);
  return lost < 0.1 ? 'under 0.1 points' : `${lost < 10 ? lost.toFixed(1) : Math.round(lost)} points`;
}
