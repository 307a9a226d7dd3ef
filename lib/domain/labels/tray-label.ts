import { temperaturesInDegrees } from '../germination/bench/tray-method';
import { trayCode } from './code-text';
import { type LabelText, labelLines } from './label-text';

/** What is known of a dish that stands in the incubator. */
export interface LabelledDish {
  /** number of the test, 'T-0204' */
  trayNumber: string;
  /** from 1 */
  dish: number;
  /** in the tray, >= 1 */
  dishes: number;
  /** set in this dish, >= 1 */
  seeds: number;
  lotNumber: string;
  accessionName: string;
  cropName: string;
  /** 'YYYY-MM-DD' */
  setOn: string;
  firstCountOn: string;
  finalCountOn: string;
  /** degrees C as the method is printed, '20-30'; null when nobody said */
  temperatures: string | null;
  /** where the tray stands */
  place: string | null;
  /** seed treatment (fungicide and the like), null for untreated seed */
  treatment: string | null;
}

/**
 * The label of one dish of a germination test: which dish of which test it is, and when it is counted. Its code opens the
 * tray at the bench.
 *
 * @param bankAddress  where phones reach this bank, null when they do not
 * Checked in tests/domain/labels/tray-label.test.ts
 */
export function trayLabel(dish: LabelledDish, bankAddress: string | null): LabelText {
  const { trayNumber, temperatures, firstCountOn, finalCountOn } = dish;
  return {
    called: `dish ${dish.dish} of ${trayNumber}`,
    codeText: trayCode(trayNumber, dish.dish, bankAddress),
    ...labelLines([
      ['test number', trayNumber],
      ['dish', `dish ${dish.dish} of ${dish.dishes}`],
      ['name', dish.accessionName],
      ['lot number', dish.lotNumber],
      // The seed is not eaten from a dish, but it is touched.
      ['caution', dish.treatment === null ? null : 'TREATED SEED: WEAR GLOVES'],
      [
        'counts',
        firstCountOn === finalCountOn ? `count ${finalCountOn}` : `count ${firstCountOn}, last ${finalCountOn}`,
      ],
      ['set on', `set ${dish.setOn}`],
      ['temperature', temperatures && temperaturesInDegrees(temperatures)],
      ['seeds', `${dish.seeds} ${dish.seeds === 1 ? 'seed' : 'seeds'}`],
      ['crop', dish.cropName],
      ['place', dish.place],
      ['treatment', dish.treatment],
    ]),
  };
}
