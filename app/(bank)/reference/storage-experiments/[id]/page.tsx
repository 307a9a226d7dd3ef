import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Caption } from '@/app/_components/caption';
import { History } from '@/app/_components/history';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import { experimentPath } from '@/app/_format/experiment-path';
import { fitConditions } from '@/lib/domain/longevity/storage-experiment/condition-fits';
import {
  describeGoodness,
  describeSigma,
  fitCautions,
  PROBIT_IN_WORDS,
} from '@/lib/domain/longevity/storage-experiment/describe-fit';
import { moisturePicture, survivalPanels } from '@/lib/domain/longevity/storage-experiment/experiment-pictures';
import { fitStorageExperiment } from '@/lib/domain/longevity/storage-experiment/fit-storage-experiment';
import { usualCondition } from '@/lib/domain/longevity/storage-experiment/sigma-estimate';
import { fitQuestionSchema } from '@/lib/schemas/storage-experiment/fit-question';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { findHistory } from '@/lib/server/queries/history';
import { findConstantsNaming, getStorageExperiment } from '@/lib/server/queries/storage-experiments';
import { type Address, readQuestion } from '../../_parts/read-question';
import { ExperimentMethod } from '../_parts/experiment-method';
import { AllCounts } from './_parts/all-counts';
import { ConditionTable } from './_parts/condition-table';
import { ConstantsTable } from './_parts/constants-table';
import { FitQuestion } from './_parts/fit-question';
import { MoisturePlot } from './_parts/moisture-plot';
import { SaveConstants } from './_parts/save-constants';
import { SurvivalPlots } from './_parts/survival-plots';

interface Props {
  params: Promise<{ id: string }>;
  searchParams: Promise<Address>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: (await getStorageExperiment((await params).id))?.name ?? 'Storage experiment' };
}

export default async function ExperimentPage({ params, searchParams }: Props) {
  const person = await requirePerson('visitor');
  const experiment = await getStorageExperiment((await params).id);
  if (!experiment) notFound();
  const [question, saved, history] = [
    readQuestion(fitQuestionSchema, await searchParams, {}),
    await findConstantsNaming(experiment.name),
    await findHistory([{ entity: 'storage experiment', ids: [experiment.id] }]),
  ];
  const { rows } = experiment;
  // Another field may be wrong while this one is not.
  const coefficients = question.typed.coefficients === 'fitted' ? 'fitted' : 'fixed';
  const conditions = fitConditions(rows);
  const outcome = fitStorageExperiment(rows, { temperatureCoefficients: coefficients });
  const fit = outcome.ok ? outcome : null;
  const usual = fit && usualCondition(fit);
  const condition = usual && {
    moisturePercent: question.input?.moisture ?? usual.moisturePercent,
    temperatureC: question.input?.temperature ?? usual.temperatureC,
  };
  const isSteward = mayActAs(person, 'steward');
  return (
    <>
      <PageHead
        above={<Link href="/reference/storage-experiments">Storage experiments</Link>}
        title={experiment.name}
        below={
          <>
            {experiment.crop && `${experiment.crop.name}, `}
            <i>{experiment.species}</i>
          </>
        }
      >
        {isSteward && (
          <Link href={`${experimentPath(experiment.id)}/edit`} className="button">
            Change or remove
          </Link>
        )}
      </PageHead>
      {experiment.notes && <p className="max-w-prose whitespace-pre-line">{experiment.notes}</p>}
      <section className="grid gap-4" aria-labelledby="finding">
        <h2 id="finding">What it shows</h2>
        {fit && condition ? (
          <>
            <Caption text={describeSigma(fit, condition)} />
            <p className="max-w-prose">
              {PROBIT_IN_WORDS} {describeGoodness(fit.goodness)}
            </p>
          </>
        ) : (
          !outcome.ok && (
            <p className="say">
              <b>No constants come from these counts.</b> {outcome.message}
            </p>
          )
        )}
        {fit &&
          fitCautions(fit).map((caution) => (
            <Notice key={caution} kind="caution">
              {caution}
            </Notice>
          ))}
        {fit && <ConstantsTable fit={fit} />}
        <FitQuestion
          action={experimentPath(experiment.id)}
          question={{
            ...question,
            isExample: false,
            typed: {
              coefficients,
              moisture: usual ? String(usual.moisturePercent) : '',
              temperature: usual ? String(usual.temperatureC) : '',
              ...filled(question.typed),
            },
          }}
        />
      </section>
      <SurvivalPlots panels={survivalPanels(rows, conditions, fit)} />
      <MoisturePlot picture={moisturePicture(conditions, fit)} />
      <ConditionTable conditions={conditions} fit={fit} />
      <AllCounts rows={rows} fit={fit} />
      {fit && isSteward && (
        <SaveConstants
          experiment={experiment}
          coefficients={coefficients}
          suggestion={`${experiment.crop?.name ?? experiment.species}, ${experiment.name}`}
        />
      )}
      {saved.length > 0 && (
        <p>
          Saved from it:{' '}
          {saved.map(({ id, name }, index) => (
            <span key={id}>
              {index > 0 && ', '}
              <Link href={`/reference#${id}`}>{name}</Link>
            </span>
          ))}
          . A crop uses them once they are chosen on the crop’s page.
        </p>
      )}
      <ExperimentMethod />
      <History lines={history} />
    </>
  );
}

const filled = (typed: Record<string, string>) =>
  Object.fromEntries(Object.entries(typed).filter(([, value]) => value.trim() !== ''));
