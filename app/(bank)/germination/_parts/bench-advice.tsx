import { Notice } from '@/app/_components/notice';
import { countingAdvice } from '@/lib/domain/germination/counting-advice';
import { cautionsFor } from '@/lib/domain/reference/cautions';
import type { CropForTesting } from '@/lib/server/queries/lots-for-testing';

/** What to mind at the count and on the bench: first the classes, then the cautions. */
export function BenchAdvice({ crop }: { crop: CropForTesting }) {
  const advice = countingAdvice({
    family: crop.family,
    scientificName: crop.scientificName,
    hardSeedOccurs: crop.methods.some((method) => method.hardSeedOccurs),
  });
  return (
    <section className="sheet grid gap-3" aria-labelledby="advice-title">
      <h2 id="advice-title">At the count</h2>
      <ul className="grid list-disc gap-2 pl-5">
        {advice.map(({ key, text, mark, source }) => (
          <li key={key}>
            {text} <span className="label">({mark === 'published' ? shortSource(source) : mark})</span>
          </li>
        ))}
      </ul>
      <details>
        <summary className="w-fit cursor-pointer py-2.5 font-semibold">Cautions</summary>
        <ul className="grid list-disc gap-2 pl-5">
          {cautionsFor('germination test').map((caution) => (
            <li key={caution.key}>
              {caution.text} <span className="label">({caution.mark})</span>
            </li>
          ))}
        </ul>
      </details>
    </section>
  );
}

export function TreatedSeed({ treatment }: { treatment: string }) {
  return (
    <Notice kind="caution">
      <b>Treated seed</b> ({treatment}): wear gloves; it is never food or feed, and what is left of the test is not
      compost.
    </Notice>
  );
}

/** '... (2015 edition, orientation only), 7 CFR 201.57' -> '7 CFR 201.57' */
const shortSource = (source: string) => source.slice(Math.max(0, source.indexOf('7 CFR')));
