import { TableHead } from '@/app/_components/table-head';

/** The same bounds as the picture, in figures. */
export function BoundsTable({ rows }: { rows: { name: string; lower: number; upper: number }[] }) {
  return (
    <table className="ledger">
      <TableHead columns={['interval', 'lower, %', 'upper, %']} words={['interval']} />
      <tbody>
        {rows.map(({ name, lower, upper }) => (
          <tr key={name}>
            <td>{name}</td>
            <td className="number">{(lower * 100).toFixed(2)}</td>
            <td className="number">{(upper * 100).toFixed(2)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
