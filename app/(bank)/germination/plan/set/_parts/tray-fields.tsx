import Link from 'next/link';
import { AnywayField } from '@/app/_components/form/anyway-field';
import { FieldMessage } from '@/app/_components/form/field-message';
import {
  CheckField,
  HiddenField,
  NumberField,
  SelectField,
  TextAreaField,
  TextField,
} from '@/app/_components/form/fields';
import { Notice } from '@/app/_components/notice';
import { Viability } from '@/app/_components/viability';
import { formatCount, formatDate } from '@/app/_format/figures';
import { lotPath, testPath } from '@/app/_format/links';
import { countStep } from '@/lib/domain/germination/plan/count-step';
import { prechillAdvice } from '@/lib/domain/germination/plan/fresh-seed-advice';
import { methodChoices } from '@/lib/domain/germination/plan/method-choices';
import { packetRoleLabel } from '@/lib/domain/stock/packet-roles';
import { IN_GROUPS } from '@/lib/schemas/set-trays';
import type { TrayToPlan } from '@/lib/server/queries/trays-to-set';
import { TreatedSeed } from '../../../_parts/bench-advice';
import { choiceInWords, countDaysInWords } from '../../../_parts/method-words';
import { optionWithChance, whyThisTest } from '../../_parts/proposal-words';
import { SeedAdvice } from './seed-advice';

/** One lot to be set: how many seeds of which packet, by which method. What is seldom changed is folded away. */
export function TrayFields({ lot, index }: { lot: TrayToPlan; index: number }) {
  const name = (field: string) => `trays.${index}.${field}`;
  const { proposal } = lot;
  const groups = proposal.options.find((option) => option.kind === 'groups');
  return (
    <section className="sheet grid gap-4" aria-labelledby={`tray-${index}`}>
      <HiddenField name={name('lot')} value={lot.lotNumber} />
      <div className="flex flex-wrap items-start justify-between gap-x-6 gap-y-1">
        <div className="min-w-0">
          <h3 id={`tray-${index}`} className="wrap-anywhere">
            {lot.accessionName} <span className="quiet font-normal">{lot.cropName}</span>{' '}
            <Link href={lotPath(lot.lotNumber)} className="figures font-normal whitespace-nowrap text-ink">
              {lot.lotNumber}
            </Link>
          </h3>
          <p className="text-sm text-ink-2">
            harvested {formatDate(lot.harvestedOn)} ·{' '}
            {lot.lastTestedOn ? `last tested ${formatDate(lot.lastTestedOn)}` : 'never tested'} · alive now{' '}
            <Viability median={lot.viabilityMedian} lower={lot.viabilityLower} upper={lot.viabilityUpper} />
          </p>
          <FieldMessage name={name('lot')} />
        </div>
        <CheckField name={name('leaveOut')} label="Leave out" />
      </div>
      <p>
        {whyThisTest(proposal)} <KeptSeed lot={lot} />{' '}
        <Link
          href={`/reference/seeds-to-test?lot=${encodeURIComponent(lot.lotNumber)}`}
          className="text-sm whitespace-nowrap text-ink-2"
        >
          How many seeds to test<span className="sr-only"> of {lot.lotNumber}</span>
        </Link>
      </p>
      {lot.treatment && <TreatedSeed treatment={lot.treatment} />}
      <SeedAdvice lot={lot} />
      {lot.underTest && (
        <Notice kind="caution">
          <p>
            Test{' '}
            <Link href={testPath(lot.underTest.number)} className="figures text-ink">
              {lot.underTest.number}
            </Link>{' '}
            of this lot is under way since {formatDate(lot.underTest.setOn)}.
          </p>
        </Notice>
      )}
      {lot.underTest ? (
        <CheckField name={name('anyway')} label="Set another all the same" />
      ) : (
        // Somebody may have set a tray of this lot while the form was open.
        <AnywayField name={name('anyway')} label="Set another all the same" />
      )}
      <div className="grid items-start gap-4 md:grid-cols-2 lg:grid-cols-3">
        <SelectField
          name={name('size')}
          label="Seeds"
          options={sizeOptions(lot)}
          empty="choose"
          defaultValue={proposal.chosen?.key ?? ''}
        />
        <SelectField
          name={name('seedFrom')}
          label="Seed from"
          options={seedOptions(lot)}
          empty="choose"
          defaultValue={seedOptions(lot)[0]?.value}
        />
        <MethodField lot={lot} name={name('method')} />
      </div>
      {groups?.kind === 'groups' && (
        <>
          <HiddenField name={name('line')} value={groups.plan.line} />
          <HiddenField name={name('mostSeeds')} value={groups.plan.mostSeeds} />
        </>
      )}
      <MoreFields lot={lot} name={name} />
    </section>
  );
}

function KeptSeed({ lot: { seedsLeft, seedsNeeded } }: { lot: TrayToPlan }) {
  const needed = seedsNeeded !== null && Number.isFinite(seedsNeeded) ? seedsNeeded : null;
  return (
    <span className="text-ink-2">
      {formatCount(seedsLeft)} seeds left
      {needed !== null && `, of which regrowing takes ${formatCount(needed)}`}.
    </span>
  );
}

function sizeOptions({ proposal }: TrayToPlan) {
  return proposal.options.map((option) => ({
    value: option.kind === 'groups' ? IN_GROUPS : option.key,
    label: `${optionWithChance(option)}${option === proposal.chosen ? ' – proposed' : ''}`,
  }));
}

function seedOptions({ packets, takenOut }: TrayToPlan) {
  return [
    ...takenOut.map(({ id, on, seeds, packetNumber }) => ({
      value: `taken:${id}`,
      label: `taken out on ${formatDate(on)}: ${formatCount(seeds)} seeds of ${packetNumber}`,
    })),
    ...packets.map(({ id, number, role, seeds }) => ({
      value: `packet:${id}`,
      label: `${number}: ${formatCount(seeds)} seeds${role === 'active' ? '' : `, ${packetRoleLabel(role)}`}`,
    })),
  ];
}

function MethodField({ lot, name }: { lot: TrayToPlan; name: string }) {
  const choices = methodChoices(lot.crop.methods);
  if (choices.length === 0) {
    return <p className="label">No method is known for {lot.cropName}: write below when it is counted.</p>;
  }
  return (
    <SelectField
      name={name}
      label="Method"
      options={choices.map((choice) => ({
        value: choice.key,
        label: `${choiceInWords(choice)}${choice.light ? ', light' : ''}`,
      }))}
      defaultValue={choices[0]?.key}
    />
  );
}

function MoreFields({ lot, name }: { lot: TrayToPlan; name: (field: string) => string }) {
  const [method] = lot.crop.methods;
  const days = method ? countDaysInWords(method) : null;
  const advice = prechillAdvice(method?.preTreatment ?? null);
  const prechill = advice && (advice.when === 'always' || lot.freshSeedExpected) ? advice.days : '';
  const final = method?.finalCountDays ?? null;
  const step = final === null ? null : countStep(Math.min(method?.firstCountDays ?? final, final), final);
  return (
    <details open={!method}>
      <summary className="w-fit cursor-pointer py-2.5 font-semibold">
        Days, pre-chill, treatment, other numbers
        {prechill !== '' && <span className="font-normal"> (pre-chill {prechill} days)</span>}
      </summary>
      <div className="grid items-start gap-4 pt-2 sm:grid-cols-2 lg:grid-cols-4">
        <NumberField
          name={name('firstCountDays')}
          label="First count after"
          unit="days"
          hint={days ? 'Empty: as the method.' : 'Empty: with the last.'}
          whole
          optional
        />
        <NumberField
          name={name('finalCountDays')}
          label="Last count after"
          unit="days"
          hint={days ? `Method: ${days}.` : 'Needed: no method says.'}
          whole
          optional={days !== null}
        />
        <NumberField
          name={name('countEveryDays')}
          label="Between them every"
          unit="days"
          hint="Empty: not at all."
          whole
          optional
          defaultValue={step}
        />
        <NumberField
          name={name('prechillDays')}
          label="First moist and cold for"
          unit="days"
          hint="Counts come so much later."
          whole
          optional
          defaultValue={prechill}
        />
        <NumberField name={name('dishes')} label="Other number of dishes" whole optional />
        <NumberField name={name('seedsEach')} label="Seeds in each of them" whole optional />
        <TextField
          name={name('preTreatment')}
          label="Treatment done"
          hint="Scratched, soaked, nitrate …"
          optional
          className="sm:col-span-2"
        />
        <TextAreaField name={name('notes')} label="Notes" rows={2} optional className="sm:col-span-2 lg:col-span-4" />
      </div>
    </details>
  );
}
