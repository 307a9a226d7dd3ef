import { formatDate } from '@/app/_format/figures';
import type { TrayRemark } from '@/lib/server/queries/tray-page';

/** Notes and photographs from the bench. */
export function Remarks({ remarks }: { remarks: TrayRemark[] }) {
  if (remarks.length === 0) return null;
  const notes = remarks.filter(({ kind }) => kind === 'note');
  const photos = remarks.filter(({ kind }) => kind === 'photo');
  return (
    <section className="grid gap-3" aria-labelledby="remarks-title">
      <h2 id="remarks-title">{photos.length > 0 ? 'Notes and photographs' : 'Notes from the bench'}</h2>
      {notes.length > 0 && (
        <ul className="sheet grid gap-3">
          {notes.map((note) => (
            <li key={note.id} className="wrap-anywhere">
              {note.text}
              <span className="label block">{aboutWhat(note)}</span>
            </li>
          ))}
        </ul>
      )}
      {photos.length > 0 && (
        <ul className="grid grid-cols-2 gap-4 sm:grid-cols-4">
          {photos.map((photo) => (
            <li key={photo.id} className="grid content-start gap-1">
              <a href={photoPath(photo.id)}>
                {/* biome-ignore lint/performance/noImgElement: it is small already, and only people who are signed in may see it */}
                <img
                  src={photoPath(photo.id)}
                  alt={`${photo.text ?? 'Photograph'}: ${aboutWhat(photo)}`}
                  width={photo.width ?? undefined}
                  height={photo.height ?? undefined}
                  loading="lazy"
                  className="h-auto w-full rounded-paper border border-rule"
                />
              </a>
              <span className="label">{aboutWhat(photo)}</span>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

const photoPath = (id: string) => `/api/bench/photos/${encodeURIComponent(id)}`;

const aboutWhat = ({ dish, on, byName }: TrayRemark) =>
  `${dish === null ? 'the whole tray' : `dish ${dish}`}, ${formatDate(on)}, ${byName}`;
