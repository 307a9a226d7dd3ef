/**
 * What a packet is kept for where it lies: at a partner bank everything is a safety duplicate, whatever it was before.
 */
export const roleAtPlace = (role: string, place: { atPartnerBank: boolean }): string =>
  place.atPartnerBank ? 'safety-duplicate' : role;
