import type { Metadata } from 'next';
import type { ReactNode } from 'react';
import { Notice } from '@/app/_components/notice';
import { cautionsFor } from '@/lib/domain/reference/cautions';
import {
  cutSchema,
  sideSamplesSchema,
  tetrazoliumSchema,
  treatedSampleSchema,
} from '@/lib/schemas/calculators/hard-and-dormant-seed';
import { requirePerson } from '@/lib/server/auth/require-person';
import { CalculatorPage } from '../_parts/calculator-page';
import { MethodFoldOut } from '../_parts/method-fold-out';
import { AskNumber } from '../_parts/question-fields';
import { QuestionForm } from '../_parts/question-form';
import { type Address, readQuestion } from '../_parts/read-question';
import { CutAnswer, SideSamplesAnswer, TetrazoliumAnswer, TreatedSampleAnswer } from './answers';

const SLUG = 'hard-and-dormant-seed';
const PATH = `/reference/${SLUG}`;
const SIDE_SAMPLES = { seeds: '100', normal: '60', hard: '30', hardLooked: '10', hardAlive: '8' };
const TETRAZOLIUM = { stained: '46', partly: '2', unstained: '2', grew: '150', set: '200' };
const CUT = { firm: '38', empty: '6', insect: '2', rotten: '4' };
const TREATED = { treatedGrew: '44', treatedSet: '50', plainGrew: '29', plainSet: '50' };

export const metadata: Metadata = { title: 'Hard and dormant seed' };

export default async function HardAndDormantSeedPage({ searchParams }: { searchParams: Promise<Address> }) {
  await requirePerson('visitor');
  const address = await searchParams;
  const side = readQuestion(sideSamplesSchema, address, SIDE_SAMPLES);
  const stained = readQuestion(tetrazoliumSchema, address, TETRAZOLIUM);
  const cut = readQuestion(cutSchema, address, CUT);
  const treated = readQuestion(treatedSampleSchema, address, TREATED);
  return (
    <CalculatorPage slug={SLUG}>
      <Part
        id="side-samples"
        title="Hard or fresh seed, some of it looked at"
        says="At the end of a test some seeds are hard or fresh. Scarify, chill, stain or cut some of them, and count how many are alive."
      >
        <QuestionForm action={`${PATH}#side-samples`} question={side} fields={Object.keys(sideSamplesSchema.shape)}>
          <AskNumber question={side} name="seeds" label="Seeds set in the test" whole />
          <AskNumber question={side} name="normal" label="Normal seedlings" whole className="lg:col-span-2" />
          <AskNumber question={side} name="hard" label="Hard seeds" whole optional />
          <AskNumber question={side} name="hardLooked" label="Hard seeds looked at" whole optional />
          <AskNumber question={side} name="hardAlive" label="Of these alive" whole optional />
          <AskNumber question={side} name="fresh" label="Fresh seeds" whole optional />
          <AskNumber question={side} name="freshLooked" label="Fresh seeds looked at" whole optional />
          <AskNumber question={side} name="freshAlive" label="Of these fresh ones alive" whole optional />
        </QuestionForm>
        {side.input && <SideSamplesAnswer asked={side.input} />}
      </Part>
      <Part
        id="treated"
        title="A side sample scarified or chilled before it is set"
        says="Set part of the lot as it is, and part after breaking its dormancy: what grows only after treatment was alive and held back."
      >
        <QuestionForm action={`${PATH}#treated`} question={treated} fields={Object.keys(treatedSampleSchema.shape)}>
          <AskNumber question={treated} name="treatedGrew" label="Treated seeds that grew" whole />
          <AskNumber question={treated} name="treatedSet" label="Treated seeds set" whole className="lg:col-span-2" />
          <AskNumber question={treated} name="plainGrew" label="Untreated seeds that grew" whole />
          <AskNumber question={treated} name="plainSet" label="Untreated seeds set" whole />
        </QuestionForm>
        {treated.input && <TreatedSampleAnswer asked={treated.input} />}
      </Part>
      <Part
        id="tetrazolium"
        title="Seed stained in tetrazolium"
        says="Living tissue stains red. With a germination test of other seed of the lot it shows how much is dormant."
      >
        <Cautions />
        <QuestionForm action={`${PATH}#tetrazolium`} question={stained} fields={Object.keys(tetrazoliumSchema.shape)}>
          <AskNumber question={stained} name="stained" label="Stained as it should be" whole />
          <AskNumber question={stained} name="partly" label="Stained in part, or wrongly" whole optional />
          <AskNumber question={stained} name="unstained" label="Unstained" whole optional />
          <AskNumber question={stained} name="grew" label="Germination test: seeds that grew" whole optional />
          <AskNumber question={stained} name="set" label="Germination test: seeds set" whole optional />
        </QuestionForm>
        {stained.input && <TetrazoliumAnswer asked={stained.input} />}
      </Part>
      <Part
        id="cut"
        title="Seed cut open"
        says="A cut shows at once what is empty, eaten or rotten; not what is alive."
      >
        <QuestionForm action={`${PATH}#cut`} question={cut} fields={Object.keys(cutSchema.shape)}>
          <AskNumber question={cut} name="firm" label="Full and firm" whole />
          <AskNumber question={cut} name="empty" label="Empty" whole optional />
          <AskNumber question={cut} name="insect" label="Eaten by insects" whole optional />
          <AskNumber question={cut} name="rotten" label="Soft, discoloured or rotten" whole optional />
        </QuestionForm>
        {cut.input && <CutAnswer asked={cut.input} />}
      </Part>
      <Method />
    </CalculatorPage>
  );
}

function Part({ id, title, says, children }: { id: string; title: string; says: string; children: ReactNode }) {
  return (
    <section id={id} className="grid gap-4" aria-labelledby={`${id}-title`}>
      <div>
        <h2 id={`${id}-title`}>{title}</h2>
        <p className="max-w-prose">{says}</p>
      </div>
      {children}
    </section>
  );
}

function Cautions() {
  return (
    <Notice kind="caution">
      <ul className="grid gap-1">
        {cautionsFor('viability test').map(({ key, text }) => (
          <li key={key}>{text}</li>
        ))}
      </ul>
    </Notice>
  );
}

function Method() {
  return (
    <MethodFoldOut
      page="hard-and-dormant-seed.md"
      equation={
        <p>
          Side samples: found = (normal + Σ <i>H g/m</i>)/<i>N</i>; of <i>N</i> seeds set <i>H</i> stayed hard (or
          fresh), <i>m</i> were looked at, <i>g</i> alive. The interval holds all <i>A</i> with (found − <i>A</i>)² ≤{' '}
          <i>z</i>² [<i>A</i>(1 − <i>A</i>) + Σ <i>h θ</i>(1 − <i>θ</i>)(<i>H/m</i> − 1)]/<i>N</i>, where <i>h</i>{' '}
          (share hard) and <i>θ</i> (alive of them) are most likely given <i>A</i>. Dormant share: alive less
          germinated, with Newcombe’s interval.
        </p>
      }
      limits={
        <p>
          The seeds looked at must be picked blindly from those left. Seed that a treatment kills counts as dead.
          Stained seed that would give an abnormal seedling is alive but does not germinate. Firm seed may be dead.
        </p>
      }
      source={
        <p>
          Classes: 7 CFR 201.56, 201.57 and 201.57a (2015). Wilson 1927; Newcombe 1998, Statistics in Medicine
          17:873–890 (cited from memory). The interval of side samples extends Wilson’s: our own.
        </p>
      }
      checked={
        <p>
          R: 36 combinations of side samples, 72 of differences. In simulations the interval of side samples held the
          truth 95 to 97 times in 100.
        </p>
      }
    />
  );
}
