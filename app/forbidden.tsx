import { NotAllowed } from './_components/not-allowed';

export default function Forbidden() {
  return (
    <main>
      <NotAllowed />
    </main>
  );
}
