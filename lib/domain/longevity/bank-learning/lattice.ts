/** The even lattices of initial viability K and log rate on which likelihoods are tabulated and beliefs weighed. */

/** Step of the coarsest lattice in both directions, probits and log rate; a level halves it. */
export const BASE_STEP = 0.125;
export const FINEST_LEVEL = 6;
/** Where the lattices begin and end: farther out no belief about a crop reaches. */
export const INITIAL_FROM = -9;
export const INITIAL_TO = 12;
export const LOG_RATE_FROM = -8;
export const LOG_RATE_TO = 8;
/** No spread of a crop's lots narrower than this is reckoned with, probits or log rate: our own choice. */
export const LEAST_SPREAD = 0.15;
