import { NotAllowed } from '@/app/_components/not-allowed';

/** As app/forbidden.tsx, with the places to go beside it. */
export default function BankForbidden() {
  return <NotAllowed />;
}
