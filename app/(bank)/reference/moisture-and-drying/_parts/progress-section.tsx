import { Caption } from '@/app/_components/caption';
import { TableHead } from '@/app/_components/table-head';
import { formatMoisture, formatMoment } from '@/app/_format/moisture';
import { approachAt } from '@/lib/domain/moisture/approach-fit';
import { dryingCurve } from '@/lib/domain/moisture/drying-curve';
import { type DryingProgress, dryingProgress, type Weighing } from '@/lib/domain/moisture/drying-progress';
import { progressSchema } from '@/lib/schemas/calculators/moisture-and-drying';
import { MethodFoldOut } from '../../_parts/method-fold-out';
import { formatOnBalance } from '../../_parts/on-balance';
import { AskLines, AskNumber } from '../../_parts/question-fields';
import { QuestionForm } from '../../_parts/question-form';
import { readQuestion } from '../../_parts/read-question';
import type { SectionProps } from '../../_parts/section-props';
import { DryingPicture } from './drying-picture';
import { progressWords } from './progress-words';

const EXAMPLE = {
  weighings:
    '2026-11-18 09:00 500\n2026-11-18 18:00 493.9\n2026-11-19 09:00 485.9\n2026-11-20 09:00 477.4\n2026-11-20 18:00 474.9',
  progressFrom: '12',
  progressTo: '7',
  progressStep: '0.1',
};

/** From repeated weighings: moisture now, and when or whether the target will be reached. */
export function ProgressSection({ action, address }: SectionProps) {
  const question = readQuestion(progressSchema, address, EXAMPLE);
  const { input } = question;
  return (
    <>
      <QuestionForm action={action} question={question}>
        <AskLines
          question={question}
          name="weighings"
          label="Weighings of the seed alone"
          hint="A line each: hours or a date (with the time of day), and grams."
          rows={6}
          className="sm:col-span-2 lg:row-span-2"
        />
        <AskNumber question={question} name="progressFrom" label="Moisture at the first weighing" unit="%" />
        <AskNumber question={question} name="progressTo" label="Moisture wanted" unit="%" />
        <AskNumber question={question} name="progressStep" label="Balance reads to" unit="g" />
        <AskNumber
          question={question}
          name="progressSettles"
          label="The air brings it to"
          hint="Where you know it; otherwise it is found from the weighings."
          unit="%"
          optional
        />
      </QuestionForm>
      {input && (
        <Answer
          weighings={input.weighings.weighings}
          hourZero={input.weighings.hourZero}
          targetPercent={input.progressTo}
          stepG={input.progressStep}
          progress={dryingProgress({
            weighings: input.weighings.weighings,
            startMoisturePercent: input.progressFrom,
            targetMoisturePercent: input.progressTo,
            stepG: input.progressStep,
            settlesAtPercent: input.progressSettles ?? null,
          })}
        />
      )}
      <Method />
    </>
  );
}

interface AnswerProps {
  weighings: readonly Weighing[];
  hourZero: string | null;
  targetPercent: number;
  stepG: number;
  progress: DryingProgress;
}

function Answer({ weighings, hourZero, targetPercent, stepG, progress }: AnswerProps) {
  const lastHours = weighings.at(-1)?.hours ?? 0;
  return (
    <section className="sheet grid gap-4" aria-label="What the weighings say">
      <Caption text={progressWords(progress, { targetPercent, hourZero, lastHours })} />
      {progress.ok && (
        <>
          <p>
            The target weight is <b>{formatOnBalance(progress.targetWeightG, stepG)}</b>; the balance leaves{' '}
            {progress.moistureNowErrorPoints.toFixed(2)} points open.
          </p>
          <DryingPicture picture={dryingCurve(progress, weighings, targetPercent)} hourZero={hourZero} />
          <WeighingsTable weighings={weighings} hourZero={hourZero} progress={progress} stepG={stepG} />
        </>
      )}
    </section>
  );
}

interface TableProps {
  weighings: readonly Weighing[];
  hourZero: string | null;
  progress: Extract<DryingProgress, { ok: true }>;
  stepG: number;
}

function WeighingsTable({ weighings, hourZero, progress, stepG }: TableProps) {
  const { dryMatterG, verdict } = progress;
  const fit = 'fit' in verdict ? verdict.fit : null;
  const startHours = weighings[0]?.hours ?? 0;
  return (
    <table className="ledger stacked">
      <TableHead columns={['weighed at', 'weight', 'moisture', ...(fit ? ['curve'] : [])]} words={['weighed at']} />
      <tbody>
        {weighings.map(({ hours, weightG }) => (
          <tr key={hours}>
            <th scope="row" className="row-head">
              {formatMoment(hours, hourZero).replace('about ', '')}
            </th>
            <td className="number" data-label="weight">
              {formatOnBalance(weightG, stepG)}
            </td>
            <td className="number" data-label="moisture">
              {formatMoisture((100 * (weightG - dryMatterG)) / weightG)}
            </td>
            {fit && (
              <td className="number" data-label="curve">
                {formatOnBalance(approachAt(fit, hours - startHours), stepG)}
              </td>
            )}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Method() {
  return (
    <MethodFoldOut
      page="moisture.md"
      equation={
        <p>
          <i>W</i>(<i>t</i>) = <i>P</i> + <i>A</i> exp(−<i>k t</i>), fitted by least squares to the weighings: <i>P</i>{' '}
          the weight at which seed and air are in balance, <i>A</i> what is still to lose, <i>k</i> the rate. Moisture
          is (<i>W</i> − dry matter) / <i>W</i>. “Likely” is a 90 % interval by profile: every time, or level, that
          costs no more than <i>t</i>² <i>s</i>² extra squares.
        </p>
      }
      limits={
        <p>
          It holds for seed in thin layers in air that stays the same. Deep layers, a room that changes between day and
          night and silica gel that fills up dry otherwise. A few spilled seeds read as dryness. With three weighings
          only the balance’s own step is allowed for.
        </p>
      }
      source={<p>First-order drying: a general method and our own choice; no seed-drying text was at hand.</p>}
      checked={
        <p>
          R’s nls on six simulated jars: squares to 8 figures; intervals against lm inside optimize and uniroot, within
          10⁻⁴ of the time and 0.001 points of moisture.
        </p>
      }
    />
  );
}
