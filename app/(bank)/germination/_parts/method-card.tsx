import type { ReactNode } from 'react';
import { substratesOf } from '@/lib/domain/germination/plan/method-choices';
import type { CropForTesting, TestingMethod } from '@/lib/server/queries/lots-for-testing';
import { countDaysInWords, temperaturesInWords } from './method-words';

/** How the crop is tested, with where that is known from. */
export function MethodCard({ crop }: { crop: CropForTesting }) {
  return (
    <section className="sheet grid gap-4" aria-labelledby="method-title">
      <h2 id="method-title">How {crop.name.toLowerCase()} is tested</h2>
      {crop.methods.length === 0 && (
        <p className="quiet">No method is known for this crop: note below how you tested it.</p>
      )}
      {crop.methods.map((method) => (
        <Method key={method.id} method={method} />
      ))}
    </section>
  );
}

function Method({ method }: { method: TestingMethod }) {
  return (
    <div className="grid gap-2">
      <dl className="grid grid-cols-[auto_1fr] gap-x-4 gap-y-1.5">
        <Line term="On">{substratesOf(method.substrata).join('; ')}</Line>
        <Line term="At">{temperaturesInWords(method.temperatures)}</Line>
        <Line term="Count">{countDaysInWords(method)}</Line>
        <Line term="Light">{method.light ? 'needed' : null}</Line>
        <Line term="Before">{method.preTreatment}</Line>
        <Line term="Hard seed">{method.hardSeedOccurs ? 'may occur' : null}</Line>
      </dl>
      <Source mark={method.mark} source={method.source} />
    </div>
  );
}

function Line({ term, children }: { term: string; children: ReactNode }) {
  if (!children) return null;
  return (
    <>
      <dt className="label pt-0.5">{term}</dt>
      <dd>{children}</dd>
    </>
  );
}

/** Where a figure or advice comes from, folded away behind its mark. */
export function Source({ mark, source }: { mark: string; source: string }) {
  return (
    <details className="label">
      <summary className="w-fit cursor-pointer py-1">{mark}: where this comes from</summary>
      <p className="wrap-anywhere">{source}</p>
    </details>
  );
}
