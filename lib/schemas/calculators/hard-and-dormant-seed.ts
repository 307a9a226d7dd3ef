/** Hard and dormant seed: what the four forms of its calculator are asked. Field names differ, for they share an address. */
import { z } from 'zod';
import { optionalField, positiveSeedCount, seedCount } from '../field-schemas';
import { MORE_THAN_SET, refuse, refuseHalfTest } from './parts-agree';

/** Left empty, none was seen. */
const noneUnlessSaid = optionalField(seedCount).transform((count) => count ?? 0);

/** A test that left hard or fresh seed, of which some was looked at. */
export const sideSamplesSchema = z
  .object({
    seeds: positiveSeedCount,
    normal: seedCount,
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

const NONE_COUNTED = 'Count at least one seed.';

/** Seed stained in tetrazolium. */
export const tetrazoliumSchema = z
  .object({
    stained: seedCount,
    partly: noneUnlessSaid,
    unstained: noneUnlessSaid,
    /** the same lot, other seed, set to germinate as it was */
    grew: optionalField(seedCount),
    set: optionalField(positiveSeedCount),
  })
  .superRefine((asked, context) => {
    if (asked.stained + asked.partly + asked.unstained === 0) refuse(context, 'stained', NONE_COUNTED);
    refuseHalfTest(context, {
      grew: { field: 'grew', count: asked.grew },
      set: { field: 'set', count: asked.set },
      test: 'the germination test',
    });
  });

/** Seed cut open. */
export const cutSchema = z
  .object({ firm: seedCount, empty: noneUnlessSaid, insect: noneUnlessSaid, rotten: noneUnlessSaid })
  .superRefine((asked, context) => {
    if (asked.firm + asked.empty + asked.insect + asked.rotten === 0) refuse(context, 'firm', NONE_COUNTED);
  });

/** A side sample of the lot, scarified or chilled before it was set, beside one set as it was. */
export const treatedSampleSchema = z
  .object({ treatedGrew: seedCount, treatedSet: positiveSeedCount, plainGrew: seedCount, plainSet: positiveSeedCount })
  .superRefine((asked, context) => {
    for (const sample of ['treated', 'plain'] as const) {
      if (asked[`${sample}Grew`] > asked[`${sample}Set`]) {
        refuse(context, `${sample}Grew`, MORE_THAN_SET);
      }
    }
  });
