/**
 * Where things stand in a knot of a posterior: a posterior is one array of numbers (see rate-cells.ts), and each knot, a rate of
 * ageing with its table of K, takes KNOT_LENGTH of them.
 */

/** numbers a knot takes */
export const KNOT_LENGTH = 30;
/** relative rate of ageing; top and width of the hump of K, probits; one over the width */
export const RATE = 0;
export const MODE = 1;
export const SCALE = 2;
export const PER_SCALE = 3;
/** the table that gives the shape of K here: where its numbers begin, its spacings, and one over them */
export const TABLE_AT = 4;
export const LEFT_SPACING = 5;
export const RIGHT_SPACING = 6;
export const PER_LEFT = 7;
export const PER_RIGHT = 8;
/** Simpson's weight of the knot in the cell before it and in the one after; a middle has all of its weight in the first */
export const MASS_BEFORE = 9;
export const MASS_AFTER = 10;
/** of a middle only: the probability of its cell, and of each quarter of it */
export const CELL_MASS = 11;
export const QUARTER_MASS = 12;
/**
 * Of a middle only: what the ends of the first and the third quarter weigh when Simpson's rule is taken over each half of the
 * cell, and by what the weights above of the two knots beside it, and half that of the middle, are then multiplied.
 */
export const FIRST_WEIGHT = 16;
export const THIRD_WEIGHT = 17;
export const HALVES_SHARE = 18;
/** of a middle only: how the density per unit of rate tilts along each quarter: (end - start) / (end + start) */
export const QUARTER_TILT = 19;
/** of a middle only: rate, top and one over the width at the first quarter of its cell, and the same at the third */
export const FIRST_QUARTER = 23;
export const THIRD_QUARTER = 26;
