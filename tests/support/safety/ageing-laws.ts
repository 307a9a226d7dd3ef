import { daysBetween, toEpochDay } from '@/lib/domain/calendar/calendar-date';
import { packetAgeing } from '@/lib/domain/longevity/packet-ageing';
import { connections } from '@/lib/server/database/connections';
import { staysUntil } from '@/lib/server/judging/age-tests';
import { loadCropJudging } from '@/lib/server/judging/load-crop-judging';
import { loadLots } from '@/lib/server/judging/load-lots';
import { storeClimates } from '@/lib/server/judging/store-climates';

const RELATIVE_ERROR = 1e-9;

/**
 * Whether every packet's history is unbroken from its first placement to today, and its ageing the sum over its stays
 * that never falls as time goes on.
 *
 * @returns complaints; none when all holds, and how many packets had an ageing to look at
 */
export function ageingComplaints(today: string): { complaints: string[]; packets: number } {
  const { rows } = connections();
  const climates = storeClimates(rows);
  const crops = loadCropJudging(rows, 'all');
  const complaints: string[] = [];
  let packets = 0;
  for (const lot of loadLots(rows, 'all')) {
    const seed = crops.get(lot.cropId)?.seed;
    for (const packet of lot.packets) {
      const complain = (what: string) => complaints.push(`packet ${packet.id} of ${lot.number}: ${what}`);
      const first = packet.placements[0]?.from;
      if (first === undefined) {
        complain('lies nowhere');
        continue;
      }
      const stays = staysUntil(packet, climates, today);
      stays.forEach((stay, index) => {
        const begins = index === 0 ? first : stays[index - 1]?.to;
        if (stay.from !== begins) complain(`a stay begins on ${stay.from}, the one before ended on ${begins}`);
        if (stay.days !== daysBetween(stay.from, stay.to)) complain(`a stay from ${stay.from} has ${stay.days} days`);
      });
      if (stays.at(-1)?.to !== today) complain(`its history ends on ${stays.at(-1)?.to}`);
      if (!seed) continue;
      const whole = packetAgeing(stays, climates.climateOf, seed);
      const parts = stays.map((stay) => ({ stay, ageing: packetAgeing([stay], climates.climateOf, seed) }));
      if (whole.ok !== parts.every(({ ageing }) => ageing.ok)) complain('is reckoned as a whole but not in parts');
      if (!whole.ok) continue;
      packets += 1;
      let sum = 0;
      for (const { stay, ageing } of parts) {
        const [from, to] = [toEpochDay(stay.from), toEpochDay(stay.to)];
        if (differs(whole.probitsAt(from), sum))
          complain(`aged ${whole.probitsAt(from)} until ${stay.from}, its stays ${sum}`);
        if (ageing.ok) sum += ageing.probitsAt(to);
      }
      if (differs(whole.probitsAt(toEpochDay(today)), sum)) complain('its ageing is not the sum over its stays');
      let before = 0;
      for (let day = toEpochDay(first) - 30; day < toEpochDay(today) + 400; day += 13) {
        const probits = whole.probitsAt(day);
        if (!(probits >= before - 1e-12)) complain(`grew younger, from ${before} to ${probits} on day ${day}`);
        before = probits;
      }
    }
  }
  return { complaints, packets };
}

const differs = (one: number, other: number) =>
  Math.abs(one - other) > RELATIVE_ERROR * Math.max(Math.abs(one), Math.abs(other), 1e-9);
