import 'server-only';
import { reader } from '../database/connections';

export async function getBank() {
  return reader().bank.findUniqueOrThrow({ where: { id: 1 } });
}
