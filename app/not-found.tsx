import { DeadEnd } from './_components/dead-end';

export default function NotFound() {
  return (
    <main>
      <DeadEnd title="Not here">
        <p>There is no page at this address.</p>
      </DeadEnd>
    </main>
  );
}
