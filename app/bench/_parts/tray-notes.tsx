import { Camera } from 'lucide-react';
import { type ChangeEvent, useId, useState } from 'react';
import type { BenchNote, BenchTray } from '@/lib/schemas/bench-wire';
import type { Bench } from '../_store/bench-view';
import { shortDay } from './day-words';
import { keepNoteDraft, noteDraft } from './note-draft';
import { PhotoWaiting } from './photo-waiting';
import { shrinkPhoto } from './shrink-photo';

interface Props {
  bench: Bench;
  tray: BenchTray;
  /** the dish that is open */
  position: number;
  on: string;
  /** it is the tray's only dish */
  only: boolean;
  /** all of the tray is at the server, which shows its photographs */
  sent: boolean;
  /** photographs that are still on this phone alone */
  photosWaiting: readonly { id: string; picture: Blob }[];
}

/** Notes and photographs of a tray: what is there, and new ones. */
export function TrayNotes({ bench, tray, position, on, only, sent, photosWaiting }: Props) {
  const id = useId();
  const [text, setText] = useState(() => noteDraft(tray.number));
  const [whole, setWhole] = useState(only);
  const [said, setSaid] = useState('');
  const dish = whole ? null : position;
  const about = whole ? 'the tray' : `dish ${position}`;
  const type = (typed: string) => {
    setText(typed);
    keepNoteDraft(tray.number, typed);
  };
  const add = () => {
    if (text.trim() === '') {
      setSaid('Write or say something first.');
      return;
    }
    bench.addNote({ trayId: tray.id, dish, on, text: text.trim() });
    type('');
    setSaid('Noted.');
  };
  const photograph = async ({ target }: ChangeEvent<HTMLInputElement>) => {
    const file = target.files?.[0];
    target.value = '';
    if (!file) return;
    setSaid('Keeping the photo …');
    try {
      await bench.addPhoto({ trayId: tray.id, dish, on, picture: await shrinkPhoto(file) });
      setSaid(bench.view().notKept ? 'Photo taken. Leave this page open until it is sent.' : 'Photo kept.');
    } catch {
      setSaid('This picture cannot be read here. Take it again as JPEG.');
    }
  };
  return (
    <section aria-labelledby={`${id}-title`} className="grid content-start gap-3">
      <h2 id={`${id}-title`}>Notes and photos</h2>
      {!only && (
        <label className="flex min-h-11 items-center gap-3">
          <input
            type="checkbox"
            className="size-6"
            checked={whole}
            onChange={(event) => setWhole(event.target.checked)}
          />
          about the whole tray, not dish {position}
        </label>
      )}
      <label className="grid gap-1">
        <span className="label">Note on {about}; the keyboard’s microphone writes it too</span>
        <textarea
          className="field min-h-24"
          maxLength={LONGEST_NOTE}
          value={text}
          onChange={(event) => type(event.target.value)}
        />
      </label>
      <div className="flex flex-wrap gap-2">
        <button type="button" className="button" onClick={add}>
          Add the note
        </button>
        <label className="button max-w-full py-1.5 whitespace-normal! has-focus-visible:outline-3 has-focus-visible:outline-offset-2 has-focus-visible:outline-indigo">
          <Camera aria-hidden size={20} />
          Photo of {about}
          <input
            type="file"
            accept="image/*"
            capture="environment"
            className="sr-only"
            onChange={(event) => void photograph(event)}
          />
        </label>
      </div>
      <p role="status" className="min-h-6">
        {said}
      </p>
      {tray.notes.length > 0 && (
        <ul className="grid gap-2">
          {tray.notes.toReversed().map((note) => (
            <li key={note.id} className="border-l-2 border-rule pl-3">
              {note.kind === 'note' ? (
                <p className="whitespace-pre-wrap break-words">{note.text}</p>
              ) : (
                <Photo note={note} sent={sent} waiting={photosWaiting.find(({ id }) => id === note.id)?.picture} />
              )}
              <p className="label">{whereAndWho(note)}</p>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

/** What waits is shown from this phone; what is sent, by the server. */
function Photo({ note, sent, waiting }: { note: BenchNote; sent: boolean; waiting: Blob | undefined }) {
  if (waiting) return <PhotoWaiting picture={waiting} of={whereAndWhen(note)} />;
  if (!sent) return <p>Photo</p>;
  return (
    <a href={`/api/bench/photos/${note.id}`} className="inline-block py-2.5 text-leaf underline">
      Photo
    </a>
  );
}

const LONGEST_NOTE = 2000;

const whereAndWhen = ({ dish, on }: BenchNote) => `${dish === null ? 'whole tray' : `dish ${dish}`}, ${shortDay(on)}`;
const whereAndWho = (note: BenchNote) => `${whereAndWhen(note)}, ${note.byName}`;
