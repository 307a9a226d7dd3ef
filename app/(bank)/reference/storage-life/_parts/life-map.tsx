import type { LifeContour } from '@/lib/domain/longevity/life-contours';
import type { MapBounds, MapZone } from '@/lib/domain/longevity/storage-life-map';
import type { StorageCondition } from '@/lib/domain/longevity/viability-equation';
import { Hatches } from './hatches';
import {
  type Box,
  boxAround,
  type Frame,
  freePlace,
  labelPlaces,
  linePlaces,
  linesOf,
  plotOf,
  toPixels,
  wordPlaces,
  zoneNames,
} from './map-layout';
import { Grid, Lines, Outline, StoreMark, Words, ZoneArea } from './map-strokes';

interface Props {
  frame: Frame;
  /** makes the ids of this drawing its own */
  prefix: string;
  contours: LifeContour[];
  /** the line of the years that were asked for */
  goal: LifeContour;
  zones: (MapBounds & { zone: MapZone })[];
  asked: { at: StorageCondition; words: string };
  /** moisture null where the store's humidity is not known: then its temperature is a line across the map */
  store: { temperatureC: number; moisturePercent: number | null; words: string } | null;
  label: string;
}

/** Storage life over moisture and temperature, drawn on the server: it draws what it is given and reckons nothing. */
export function LifeMap({ frame, prefix, contours, goal, zones, asked, store, label }: Props) {
  const plot = plotOf(frame);
  const askedAt = toPixels(frame, asked.at);
  const storeIsLine = store?.moisturePercent === null;
  const storeAt =
    store && toPixels(frame, { moisturePercent: store.moisturePercent ?? 0, temperatureC: store.temperatureC });
  const names = zoneNames(zones, frame);
  // Marks come first, then the line that was asked for; what finds no free place after them goes without words.
  const taken: Box[] = [boxAround(askedAt), ...names.map(({ box }) => box)];
  if (storeAt && !storeIsLine) taken.push(boxAround(storeAt));
  const place = (text: string, places: ReturnType<typeof wordPlaces>, fill?: string) => {
    const at = freePlace(text, places, frame, taken);
    return at && { text, at, fill };
  };
  const goalLines = linesOf(goal, frame);
  const words = [
    place(asked.words, wordPlaces(asked.words, askedAt, frame), 'var(--madder)'),
    store &&
      storeAt &&
      place(
        store.words,
        storeIsLine ? linePlaces(store.words, storeAt.y, frame) : wordPlaces(store.words, storeAt, frame),
        'var(--indigo)',
      ),
    place(`${goal.years} y asked for`, labelPlaces(goalLines.flat(), frame), 'var(--leaf)'),
    ...contours.map((contour) => place(`${contour.years} y`, labelPlaces(linesOf(contour, frame).flat(), frame))),
  ].filter((one) => one !== null);
  return (
    <svg
      role="img"
      aria-label={label}
      viewBox={`0 0 ${frame.width} ${frame.height}`}
      className="block h-auto w-full"
      fontSize={frame.fontSize}
      fill="var(--ink)"
    >
      <Hatches prefix={prefix} />
      <Grid frame={frame} />
      {zones.map((zone) => (
        <ZoneArea
          key={`${zone.zone} ${zone.moistureFromPercent} ${zone.temperatureFromC}`}
          zone={zone}
          frame={frame}
          prefix={prefix}
        />
      ))}
      {contours.map((contour) => (
        <Lines key={contour.years} lines={linesOf(contour, frame)} stroke="var(--ink)" strokeWidth={1.25} />
      ))}
      <Lines lines={goalLines} stroke="var(--leaf)" strokeWidth={2.5} strokeDasharray="7 4" />
      {names.map(({ text, at, upright }) => (
        <Words key={text} text={text} at={at} fill="var(--ink-2)" upright={upright} fontSize={frame.fontSize} />
      ))}
      {storeAt && <StoreMark at={storeAt} isLine={storeIsLine} plot={plot} />}
      {words.map((one) => (
        <Words key={one.text} {...one} fontSize={frame.fontSize} />
      ))}
      <circle cx={askedAt.x} cy={askedAt.y} r={6} fill="var(--madder)" stroke="var(--sheet)" strokeWidth={2} />
      <Outline box={plot} />
    </svg>
  );
}
