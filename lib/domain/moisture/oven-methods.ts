/**
 * Which oven method for which crop: how hot, how long, ground or whole, dried beforehand or not.
 *
 * The lines follow the international testing rules as far as they could be recalled or were quoted in a text that was
 * read; each carries its mark. Where no line is known the answer is the low constant method, as the gentler of the two,
 * and it says so.
 */
import type { FactMark } from '../reference/crop-facts';

/** One line of advice with how it is known. */
export type OvenLine<Value> = { value: Value; mark: FactMark; source: string };

export type OvenHeat = {
  key: 'low' | 'high';
  name: string;
  temperatureFromC: number;
  temperatureToC: number;
  hoursFrom: number;
  hoursTo: number;
};

const RULES_RECALLED = 'From memory: International Rules for Seed Testing, chapter 9 (not read)';
const LOW_READ =
  'After the ISTA Rules 2016, https://1library.net/article/seed-quality-tests-materials-and-methods.zpwv60vy (103 C, 17 h); the band 101-105 C and the hour either side are from memory';
const GRINDING_READ = 'https://edurev.in/studytube/Determination-of-Moisture-Content/d5d7002c-...';
const GRAIN_READ =
  'ASAE S352 as quoted, https://engineering.purdue.edu/~abe305/moisture/html/page23.htm (one temperature for the row is our reading)';

/** 103 C (101-105) for 17 hours (16-18); the weights are taken after 15 minutes' cooling in a desiccator. */
export const LOW_CONSTANT: OvenLine<OvenHeat> = {
  value: {
    key: 'low',
    name: 'low constant temperature',
    temperatureFromC: 101,
    temperatureToC: 105,
    hoursFrom: 16,
    hoursTo: 18,
  },
  mark: 'published',
  source: LOW_READ,
};

export const COOLING_MINUTES: OvenLine<number> = { value: 15, mark: 'published', source: LOW_READ };

/** Two independent working samples of 5 to 10 g. */
export const WORKING_SAMPLE_G: OvenLine<{ from: number; to: number }> = {
  value: { from: 5, to: 10 },
  mark: 'published',
  source: GRINDING_READ,
};

/** Seed as wet as this is dried at 70 C for 2-5 hours first, whatever the crop. */
export const VERY_WET: OvenLine<{ abovePercent: number; temperatureC: number; hoursFrom: number; hoursTo: number }> = {
  value: { abovePercent: 25, temperatureC: 70, hoursFrom: 2, hoursTo: 5 },
  mark: 'published',
  source: GRINDING_READ,
};

/** Genera whose seed is held to the low method: their oil or other volatiles would leave with the water at 130 C. */
const LOW_ONLY_GENERA = [
  'Allium',
  'Arachis',
  'Brassica',
  'Capsicum',
  'Glycine',
  'Gossypium',
  'Linum',
  'Raphanus',
  'Ricinus',
  'Sesamum',
  'Sinapis',
] as const;
/** The one species held to it whose genus is not. */
const LOW_ONLY_SPECIES = ['Solanum melongena'] as const;

/** Crops whose line the recalled rules leave open: neither list could be recalled to hold them. */
const LINE_NOT_KNOWN_GENERA = ['Abelmoschus'] as const;

/** Hours of the grain standard, whole seed: for comparison with a grain merchant's figure, not the seed-testing method. */
const GRAIN_TIMES: readonly { genera: readonly string[]; temperatureC: number; hours: number; words: string }[] = [
  { genera: ['Zea', 'Glycine', 'Phaseolus'], temperatureC: 103, hours: 72, words: '72 hours' },
  { genera: ['Triticum'], temperatureC: 130, hours: 19, words: '19 hours' },
  { genera: ['Avena'], temperatureC: 130, hours: 22, words: '22 hours' },
  { genera: ['Secale'], temperatureC: 130, hours: 16, words: '16 hours' },
  { genera: ['Sorghum'], temperatureC: 130, hours: 18, words: '18 hours' },
  { genera: ['Helianthus'], temperatureC: 130, hours: 3, words: '3 hours' },
  { genera: ['Trifolium', 'Medicago'], temperatureC: 130, hours: 2.5, words: '2.5 hours or less' },
];

export type OvenAdvice = {
  heat: OvenLine<OvenHeat>;
  /** False: the high method may not be used (its oil would leave with the water), or no line is known for it. */
  highAllowed: OvenLine<'yes' | 'no' | 'no line known'>;
  /** Hours at 130-133 C where the high method may be used; null elsewhere. */
  highHours: OvenLine<number> | null;
  grinding: OvenLine<'fine' | 'coarse'> | null;
  /** Pre-dry before grinding when the seed is moister than this, percent of fresh weight; null where it is not ground. */
  predryAbovePercent: OvenLine<number> | null;
  grainStandard: OvenLine<{ temperatureC: number; hours: number; words: string }> | null;
};

/**
 * The oven method for a crop.
 *
 * @param scientificName  genus and species, as CropFacts has it; only the genus (and for aubergine the species) counts
 * @param family          botanical family: grasses are ground fine, legumes coarse
 * @returns the method to use, what the high method would allow, grinding and pre-drying, each with its mark and source.
 *          `heat` is always the low constant method, the one every crop may be given; `highHours` is the quicker choice
 * @see seed-testing rules, marks line by line
 * Checked in tests/domain/moisture/oven-methods.test.ts, line by line against the facts sheet
 */
export function ovenMethodFor({ scientificName, family }: { scientificName: string; family: string }): OvenAdvice {
  // A hybrid such as 'x Triticosecale' gives 'x', which is in no list: its family decides.
  const genus = scientificName.trim().split(/\s+/)[0] ?? '';
  const grass = family === 'Poaceae';
  const highAllowed = highAllowedFor(scientificName, genus);
  const grinding = grindingFor(genus, grass, family === 'Fabaceae');
  const grain = GRAIN_TIMES.find((row) => row.genera.includes(genus));
  return {
    heat: LOW_CONSTANT,
    highAllowed: { value: highAllowed, mark: 'from memory', source: RULES_RECALLED },
    highHours:
      highAllowed === 'yes'
        ? { value: genus === 'Zea' ? 4 : grass ? 2 : 1, mark: 'from memory', source: RULES_RECALLED }
        : null,
    grinding: grinding === null ? null : { value: grinding, mark: 'published', source: GRINDING_READ },
    predryAbovePercent:
      grinding === null ? null : { value: predryLimit(genus), mark: 'published', source: GRINDING_READ },
    grainStandard:
      grain === undefined
        ? null
        : {
            value: { temperatureC: grain.temperatureC, hours: grain.hours, words: grain.words },
            mark: 'published',
            source: GRAIN_READ,
          },
  };
}

function highAllowedFor(scientificName: string, genus: string): 'yes' | 'no' | 'no line known' {
  if ((LOW_ONLY_GENERA as readonly string[]).includes(genus)) return 'no';
  if (LOW_ONLY_SPECIES.some((species) => scientificName.startsWith(species))) return 'no';
  return (LINE_NOT_KNOWN_GENERA as readonly string[]).includes(genus) ? 'no line known' : 'yes';
}

/** Clovers and lucerne are legumes too small to be ground, though no line that was read says so. */
function grindingFor(genus: string, grass: boolean, legume: boolean): 'fine' | 'coarse' | null {
  if (grass || genus === 'Gossypium') return 'fine';
  if (legume && genus !== 'Trifolium' && genus !== 'Medicago') return 'coarse';
  return null;
}

function predryLimit(genus: string): number {
  if (genus === 'Glycine') return 10;
  return genus === 'Oryza' ? 13 : 17;
}

/** What fine and coarse mean, as sieves. */
export const GRINDING_WORDS: Record<'fine' | 'coarse', string> = {
  fine: 'ground fine: half through a 0.5 mm sieve, at most a tenth left on 1.0 mm',
  coarse: 'ground coarse: half through a 4.0 mm sieve',
};
