/** What a link to the map of storage life carries; what it leaves out the page fills in. Percents as they are written. */
interface StorageLifeLink {
  crop?: string;
  store?: string;
  moisture?: number;
  temperature?: number;
  initial?: number;
  wanted?: number;
}

/** Address of the calculator of storage life, asked this: figures rounded to a tenth. */
export function storageLifePath(link: StorageLifeLink): string {
  const query = new URLSearchParams();
  for (const [name, value] of Object.entries(link)) {
    if (value !== undefined) query.set(name, typeof value === 'number' ? String(Math.round(value * 10) / 10) : value);
  }
  return `/reference/storage-life?${query}`;
}
