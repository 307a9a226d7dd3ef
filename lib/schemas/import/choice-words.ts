/** Words that stewards write for isolation, containers, treatment and sharing, brought to the product's own choices. */
import { ISOLATIONS, type Isolation } from '../../domain/pollination/isolation';
import { plainWords } from '../../domain/spreadsheet/plain-words';
import { CONTAINERS, type ContainerKey } from '../../domain/stock/containers';
import type { SharingTermsKey } from '../../domain/stock/sharing-terms';

const ISOLATION_WORDS: Record<Isolation, string> = {
  'hand pollination':
    'hand, hand pollinated, hand pollinating, hp, handbestäubung, handbestäubt, von hand, manual, à la main, polinización manual',
  'bagged flowers':
    'bag, bags, bagged, bagging, blossom bags, blütenbeutel, beutel, tüte, tüten, eingetütet, sachet, ensaché, ensachage, bolsa, embolsado',
  cage: 'caged, cages, net, netted, net cage, isolation cage, tent, isolation tent, tunnel, käfig, isolierkäfig, netz, zelt, filet, jaula, malla',
  distance: 'isolation distance, by distance, isolated by distance, spatial, abstand, räumlich, distancia',
  time: 'flowering time, by time, time isolation, timing, staggered, zeit, zeitlich, temps, tiempo',
  unknown: 'not known, not recorded, unbekannt, inconnu, desconocido, desconocida',
  none: 'no, no isolation, not isolated, open, open pollinated, op, keine, nein, ohne, offen, frei abgeblüht, aucun, aucune, non, libre, ninguno, ninguna',
};

const CONTAINER_WORDS: Record<ContainerKey, string> = {
  'foil-pouch':
    'foil, foil bag, foil packet, foil pouch, foil sachet, alu, alu bag, aluminium pouch, mylar, mylar bag, alubeutel, aluminiumbeutel, sachet alu, bolsa de aluminio',
  'glass-jar':
    'jar, jars, glass, mason jar, preserving jar, glas, einmachglas, schraubglas, bocal, bocal en verre, frasco, tarro',
  'metal-tin': 'tin, can, metal, metal can, dose, blechdose, boîte métallique, lata',
  'screw-cap-tube':
    'tube, screw cap tube, screw cap, vial, cryotube, cryo tube, röhrchen, schraubröhrchen, tubo, éprouvette',
  'glass-ampoule': 'ampoule, ampulle, ampolla',
  'plastic-bag':
    'plastic, zip bag, ziplock, zip lock, zip lock bag, poly bag, polythene bag, plastikbeutel, plastiktüte, sac plastique, bolsa de plástico',
  'plastic-box': 'plastic tub, tub, plastikdose, plastikbox, boîte plastique, caja de plástico',
  'paper-envelope':
    'paper, envelope, paper bag, paper packet, paper sachet, papier, papiertüte, umschlag, briefumschlag, enveloppe, sac papier, papel, sobre, bolsa de papel',
  'cloth-bag': 'cloth, cotton bag, linen bag, stoffbeutel, leinenbeutel, sac en tissu, bolsa de tela',
  'open-tray': 'tray, open, offen, schale, plateau, bandeja',
};

function wordTable<Key extends string>(
  choices: readonly { key: Key; label: string }[],
  words: Record<Key, string>,
): Map<string, Key> {
  const table = new Map<string, Key>();
  for (const { key, label } of choices) {
    for (const word of [key, label, ...words[key].split(',')]) table.set(plainWords(word), key);
  }
  return table;
}

const ISOLATION_BY_WORD = wordTable<Isolation>(ISOLATIONS, ISOLATION_WORDS);
const CONTAINER_BY_WORD = wordTable<ContainerKey>(CONTAINERS, CONTAINER_WORDS);

// The whole text, or else the one choice that its words and pairs of words name without contradiction.
function choiceFor<Key extends string>(table: Map<string, Key>, text: string): Key | null {
  const plain = plainWords(text);
  const whole = table.get(plain);
  if (whole) return whole;
  const words = plain.split(' ');
  const pairs = words.slice(1).map((word, index) => `${words[index]} ${word}`);
  for (const parts of [pairs, words]) {
    const named = new Set(parts.flatMap((part) => table.get(part) ?? []));
    if (named.size === 1) return [...named][0] ?? null;
    if (named.size > 1) return null;
  }
  return null;
}

/**
 * The isolation that a steward's words name.
 *
 * @param text  a cell, not blank
 * @returns a key of ISOLATIONS, or null when the words name none or several
 * Checked in tests/schemas/import/choice-words.test.ts
 */
export function isolationFromWords(text: string): Isolation | null {
  return choiceFor(ISOLATION_BY_WORD, text);
}

/**
 * The container that a steward's words name.
 *
 * @param text  a cell, not blank
 * @returns a key of CONTAINERS, or null when the words name none or several
 * Checked in tests/schemas/import/choice-words.test.ts
 */
export function containerFromWords(text: string): ContainerKey | null {
  return choiceFor(CONTAINER_BY_WORD, text);
}

export const CONTAINER_ADVICE = `Write one of: ${CONTAINERS.map(({ label }) => label.replace(/,.*/, '')).join(', ')}.`;

const UNTREATED = new Set('no n none untreated nein keine unbehandelt ungebeizt non sin 0 false f'.split(' '));
for (const phrase of ['not treated', 'non traite', 'no tratado', 'sin tratar', 'sin tratamiento'])
  UNTREATED.add(phrase);
const TREATED = new Set('yes y treated dressed ja behandelt gebeizt oui traite si tratado x 1 true t'.split(' '));
const NOT_KNOWN = new Set(['unknown', 'not known', 'unbekannt', 'inconnu', 'desconocido', '']);

/**
 * What a steward's words say about seed treatment.
 *
 * @param text  a cell, not blank
 * @returns undefined for untreated; otherwise text for the lot: the treatment's name, or that it was not named. When in
 *   doubt the lot counts as treated, because treated seed must not become food or feed.
 * Checked in tests/schemas/import/choice-words.test.ts
 */
export function treatmentFromWords(text: string): string | undefined {
  const plain = plainWords(text);
  if (NOT_KNOWN.has(plain)) return 'not known whether treated';
  if (UNTREATED.has(plain)) return undefined;
  return TREATED.has(plain) ? 'treated (with what is not recorded)' : text.trim();
}

const MAY_BE_SHARED = new Set('yes y may shared free freely x 1 true t ja frei oui libre si'.split(' '));
for (const phrase of ['may be shared', 'can be shared', 'on request']) MAY_BE_SHARED.add(phrase);
const MAY_NOT_BE_SHARED = new Set('no n not never private 0 false f nein nie non jamais privado'.split(' '));
for (const phrase of ['may not be shared', 'do not share', 'not to be shared']) MAY_NOT_BE_SHARED.add(phrase);

/**
 * What a steward's words say about giving seed away.
 *
 * @param text  a cell, not blank
 * @returns yes or no; any other words are terms, to be read by whoever shares it. When in doubt it may not be shared,
 *   because seed that was given away does not come back
 * Checked in tests/schemas/import/choice-words.test.ts
 */
export function sharingFromWords(text: string): { sharing: SharingTermsKey; terms?: string } {
  const plain = plainWords(text);
  if (NOT_KNOWN.has(plain)) return { sharing: 'not', terms: 'not known whether it may be shared' };
  if (MAY_BE_SHARED.has(plain)) return { sharing: 'may' };
  if (MAY_NOT_BE_SHARED.has(plain)) return { sharing: 'not' };
  return { sharing: 'with-terms', terms: text.trim() };
}
