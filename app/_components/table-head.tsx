interface Props {
  columns: readonly string[];
  /** those of the columns that hold words; all others hold figures and stand to the right */
  words?: readonly string[];
}

/** The head of a table of figures. */
export function TableHead({ columns, words = [] }: Props) {
  return (
    <thead>
      <tr>
        {columns.map((name) => (
          <th key={name} scope="col" className={words.includes(name) ? undefined : 'number'}>
            {name}
          </th>
        ))}
      </tr>
    </thead>
  );
}
