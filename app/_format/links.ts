/** Addresses of things that have numbers: the number is what people read from a label and type. */
export const lotPath = (number: string) => `/collection/lots/${encodeURIComponent(number)}`;
export const accessionPath = (number: string) => `/collection/accessions/${encodeURIComponent(number)}`;
export const cropPath = (id: string) => `/collection/crops/${encodeURIComponent(id)}`;
export const testPath = (number: string) => `/germination/${encodeURIComponent(number)}`;
/** The form that sets a test of one lot. */
export const setTestPath = (lotNumber: string) => `/germination/plan/set?lot=${encodeURIComponent(lotNumber)}`;
/** A tetrazolium or cut test. */
export const viabilityTestPath = (number: string) => `/germination/viability/${encodeURIComponent(number)}`;
/** A lot's moisture: its tests, and where its packets stand. */
export const moisturePath = (lotNumber: string) => `${lotPath(lotNumber)}/moisture`;
export const dryingPath = (number: string) => `/stores/drying/${encodeURIComponent(number)}`;
