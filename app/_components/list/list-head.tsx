import { SortHeader } from './sort-header';

export interface ListColumn {
  title: string;
  /** the sort parameter; none where the list is not ordered by this column */
  sort?: string;
  number?: boolean;
  descendingFirst?: boolean;
}

interface Props {
  path: string;
  query: Record<string, string | number | undefined> & { sort: string };
  columns: readonly ListColumn[];
}

/** The head of a list that can be ordered by its columns. */
export function ListHead({ path, query, columns }: Props) {
  return (
    <thead>
      <tr>
        {columns.map(({ title, sort, ...how }) =>
          sort === undefined ? (
            <th key={title} scope="col">
              {title}
            </th>
          ) : (
            <SortHeader key={title} path={path} query={query} sort={sort} {...how}>
              {title}
            </SortHeader>
          ),
        )}
      </tr>
    </thead>
  );
}
