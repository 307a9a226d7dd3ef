import type { Metadata } from 'next';
import { parentsQuestion, rareFormQuestion, regrowingsQuestion } from '@/lib/schemas/calculators/keeping-variety';
import { requirePerson } from '@/lib/server/auth/require-person';
import { CalculatorPage } from '../_parts/calculator-page';
import { MethodFoldOut } from '../_parts/method-fold-out';
import { type Address, readQuestion } from '../_parts/read-question';
import { Parents } from './_parts/parents';
import { RareForm } from './_parts/rare-form';
import { Regrowings } from './_parts/regrowings';

const RARE_EXAMPLE = { plants: '40', frequency: '5', genes: '1', breeding: 'crossing', assurance: '95' };
const PARENTS_EXAMPLE = { seedByPlant: '60 20 10 5 5', parentBreeding: 'crossing', pollenPlants: '0' };
const REGROWINGS_EXAMPLE = { sizes: '40 40 12 40 40', regrowingFrequency: '5' };

export const metadata: Metadata = { title: 'Keeping variety' };

export default async function KeepingVarietyPage({ searchParams }: { searchParams: Promise<Address> }) {
  await requirePerson('visitor');
  const address = await searchParams;
  return (
    <CalculatorPage slug="keeping-variety">
      <RareForm question={readQuestion(rareFormQuestion, address, RARE_EXAMPLE)} />
      <Parents question={readQuestion(parentsQuestion, address, PARENTS_EXAMPLE)} />
      <Regrowings question={readQuestion(regrowingsQuestion, address, REGROWINGS_EXAMPLE)} />
      <MethodFoldOut
        page="keeping-variety.md"
        equation={
          <>
            <p>
              A form of frequency <i>p</i> is among <i>n</i> plants with chance 1 − (<i>q</i>(<i>q</i> + <i>Fp</i>))
              <sup>n</sup>, <i>q</i> = 1 − <i>p</i>; <i>F</i> is 0 for free crossing and 1 for selfing.
            </p>
            <p>
              Effective parents: 1/Σ<i>c</i>², with <i>c</i> a plant’s share of the lot’s gametes, half as seed parent
              and half as pollen parent. Each regrowing keeps 1 − 1/(2<i>N</i>) of the variety; that a form is still
              there comes from the exact chain of draws of 2<i>N</i> gametes.
            </p>
          </>
        }
        limits={
          <p>
            It counts chance alone. Selection in your bed, seed mixed in and pollen from outside change a variety faster
            than chance does. Plants are taken as a fair sample of the lot, and forms of different genes as independent.
          </p>
        }
        source={
          <p>
            Crossa 1989, Theor. Appl. Genet. 77:153–161, and Crossa et al. 1993, 86:673–678 (published); Wright 1931,
            Genetics 16:97–159, and the rest of standard population genetics (from memory).
          </p>
        }
        checked={
          <p>
            R: chances within 10⁻¹², plant numbers the same in 180 cases, the chain within 10⁻⁹; unequal parents by four
            million draws. Two of the published plant numbers come out to the plant (89 and 134), if read as one gamete
            a plant.
          </p>
        }
      />
    </CalculatorPage>
  );
}
