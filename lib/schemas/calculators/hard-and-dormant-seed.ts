/** Hard and dormant seed: what the four forms of its calculator are asked. Field names differ, for they share an address. */
import { z } from 'zod';
import { countBetween, optionalField } from '../field-schemas';
import { SEED_COUNT } from '../limits';

const some = countBetween({ min: 1, max: SEED_COUNT.max }, 'seeds');
const any = countBetween({ min: 0, max: SEED_COUNT.max }, 'seeds');
/** Left empty, none was seen. */
const noneUnlessSaid = optionalField(any).transform((count) => count ?? 0);

interface Refusing {
  addIssue(issue: { code: 'custom'; path: string[]; message: string }): void;
}
const refuse = (context: Refusing, field: string, message: string) =>
  context.addIssue({ code: 'custom', path: [field], message });

/** A test that left hard or fresh seed, of which some was looked at. */
export const sideSamplesSchema = z
  .object({
    seeds: some,
    normal: any,
    hard: noneUnlessSaid,
    hardLooked: noneUnlessSaid,
    hardAlive: noneUnlessSaid,
    fresh: noneUnlessSaid,
    freshLooked: noneUnlessSaid,
    freshAlive: noneUnlessSaid,
  })
  .superRefine((asked, context) => {
    const { seeds, normal, hard, fresh } = asked;
    if (normal + hard + fresh > seeds) {
      refuse(context, 'seeds', `Normal, hard and fresh seed come to ${normal + hard + fresh}: more than were set.`);
    }
    for (const kind of ['hard', 'fresh'] as const) {
      const [looked, alive] = [asked[`${kind}Looked`], asked[`${kind}Alive`]];
      if (looked > asked[kind]) refuse(context, `${kind}Looked`, `Only ${asked[kind]} stayed ${kind}: check both.`);
      else if (alive > looked) refuse(context, `${kind}Alive`, `Only ${looked} were looked at: check both.`);
    }
  });

/** The same lot, other seed, set to germinate as it was. */
const germination = { grew: optionalField(any), set: optionalField(some) };

function refuseHalfTest({ grew, set }: { grew?: number | undefined; set?: number | undefined }, context: Refusing) {
  if ((grew === undefined) !== (set === undefined)) {
    refuse(context, grew === undefined ? 'grew' : 'set', 'Give both figures of the germination test, or neither.');
  } else if ((grew ?? 0) > (set ?? 0)) refuse(context, 'grew', 'More seeds grew than were set: check both.');
}

const NONE_COUNTED = 'Count at least one seed.';

/** Seed stained in tetrazolium. */
export const tetrazoliumSchema = z
  .object({ stained: any, partly: noneUnlessSaid, unstained: noneUnlessSaid, ...germination })
  .superRefine((asked, context) => {
    if (asked.stained + asked.partly + asked.unstained === 0) refuse(context, 'stained', NONE_COUNTED);
    refuseHalfTest(asked, context);
  });

/** Seed cut open. */
export const cutSchema = z
  .object({ firm: any, empty: noneUnlessSaid, insect: noneUnlessSaid, rotten: noneUnlessSaid })
  .superRefine((asked, context) => {
    if (asked.firm + asked.empty + asked.insect + asked.rotten === 0) refuse(context, 'firm', NONE_COUNTED);
  });

/** A side sample of the lot, scarified or chilled before it was set, beside one set as it was. */
export const treatedSampleSchema = z
  .object({ treatedGrew: any, treatedSet: some, plainGrew: any, plainSet: some })
  .superRefine((asked, context) => {
    for (const sample of ['treated', 'plain'] as const) {
      if (asked[`${sample}Grew`] > asked[`${sample}Set`]) {
        refuse(context, `${sample}Grew`, 'More seeds grew than were set: check both.');
      }
    }
  });
