import type { ReactNode } from 'react';
import { Notice } from '@/app/_components/notice';
import { formatTemperature } from '@/app/_format/figures';
import type { CropDetail } from '@/lib/server/queries/crops';
import { Source } from './source';

/** The longevity constants used for the crop, and whether they are its own or borrowed. */
export function LongevityPart({ crop }: { crop: CropDetail }) {
  const constants = crop.longevityConstants;
  return (
    <section className="grid gap-3" aria-labelledby="longevity">
      <h2 id="longevity">How its seed ages</h2>
      {constants === null ? (
        <Notice kind="note">
          No longevity constants are chosen for this crop, so its lots get no forecast beyond their tests.
        </Notice>
      ) : (
        <div className="sheet grid gap-4">
          <p className="max-w-prose">
            {crop.constantsBorrowed ? (
              <>
                <span className="mark mark-test">Borrowed</span> Constants of <b>{constants.name}</b> (
                <i>{constants.species}</i>) stand in, because {crop.borrowedBecause ?? 'none are known for this crop'}.
                Forecasts are wider for it.
              </>
            ) : (
              <>
                <span className="mark mark-leave">Own</span> Constants fitted to this species: <b>{constants.name}</b> (
                <i>{constants.species}</i>).
              </>
            )}
          </p>
          <dl className="grid grid-cols-2 gap-x-6 gap-y-3 sm:grid-cols-4">
            <Figure
              name={
                <>
                  K<sub>E</sub>
                </>
              }
              value={String(constants.KE)}
            />
            <Figure
              name={
                <>
                  C<sub>W</sub>
                </>
              }
              value={String(constants.CW)}
            />
            <Figure
              name={
                <>
                  C<sub>H</sub>
                </>
              }
              value={String(constants.CH)}
            />
            <Figure
              name={
                <>
                  C<sub>Q</sub>
                </>
              }
              value={String(constants.CQ)}
            />
            <Figure
              name="Fitted at moistures"
              value={span(constants.moistureFromPercent, constants.moistureToPercent, (value) => `${value} %`)}
            />
            <Figure
              name="Fitted at temperatures"
              value={span(constants.temperatureFromC, constants.temperatureToC, formatTemperature)}
            />
            <Figure
              name="Drying helps down to"
              value={
                constants.lowMoistureLimitPercent === null ? 'not known' : `${constants.lowMoistureLimitPercent} %`
              }
            />
          </dl>
          <Source mark={constants.mark} source={constants.source} />
        </div>
      )}
    </section>
  );
}

function span(from: number | null, to: number | null, write: (value: number) => string): string {
  return from === null || to === null ? 'not known' : `${write(from)} to ${write(to)}`;
}

function Figure({ name, value }: { name: ReactNode; value: string }) {
  return (
    <div>
      <dt className="label">{name}</dt>
      <dd className="figures">{value}</dd>
    </div>
  );
}
