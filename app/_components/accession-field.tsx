'use client';

import { useEffect, useState } from 'react';
import { TextField } from './form/fields';

interface Choice {
  number: string;
  name: string;
  cropName: string;
}

interface Props {
  name: string;
  label: string;
  defaultValue?: string;
}

const PAUSE_MS = 200;
const LIST_ID = 'accession-choices';

/**
 * An accession by number or name, offered as one types. Without scripts it is a plain text field: the command finds
 * the accession by its number or its exact name.
 */
export function AccessionField({ name, label, defaultValue }: Props) {
  const [typed, setTyped] = useState('');
  const [choices, setChoices] = useState<Choice[]>([]);
  useEffect(() => {
    if (typed.trim().length === 0) return;
    const stopped = new AbortController();
    const timer = setTimeout(() => {
      fetch(`/api/accessions?q=${encodeURIComponent(typed)}`, { signal: stopped.signal })
        .then((answer) => (answer.ok ? answer.json() : { accessions: [] }))
        .then((found: { accessions: Choice[] }) => setChoices(found.accessions))
        // No list to choose from is no reason to stop anybody from typing.
        .catch(() => undefined);
    }, PAUSE_MS);
    return () => {
      clearTimeout(timer);
      stopped.abort();
    };
  }, [typed]);
  const chosen = choices.find((choice) => choice.number.toLowerCase() === typed.trim().toLowerCase());
  return (
    <div onInput={(event) => setTyped((event.target as HTMLInputElement).value)}>
      <TextField
        name={name}
        label={label}
        hint="Its number, or its name as on the label."
        defaultValue={defaultValue}
        list={LIST_ID}
      />
      <datalist id={LIST_ID}>
        {choices.map((choice) => (
          <option key={choice.number} value={choice.number}>
            {choice.name}, {choice.cropName}
          </option>
        ))}
      </datalist>
      <p aria-live="polite" className="mt-1 text-sm empty:hidden">
        {chosen && `${chosen.name}, ${chosen.cropName}`}
      </p>
    </div>
  );
}
