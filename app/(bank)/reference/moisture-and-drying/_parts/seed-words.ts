/** 'kale with 33 to 39 % oil', 'seed with 20 % oil'. */
export function seedWords(crop: string | undefined, oil: { lower: number; upper: number }, typed: boolean): string {
  const [low, high] = [Math.round(oil.lower * 1000) / 10, Math.round(oil.upper * 1000) / 10];
  const share = low === high ? `${low}` : `${low} to ${high}`;
  return `${crop === undefined || typed ? 'seed' : crop.toLowerCase()} with ${share} % oil`;
}
