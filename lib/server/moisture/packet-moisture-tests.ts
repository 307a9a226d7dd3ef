import type Database from 'better-sqlite3';
import { moistureMethod } from '@/lib/domain/moisture/moisture-methods';
import { type OvenDish, ovenDishes } from '@/lib/domain/moisture/oven-dishes';
import type { PacketMoistureTest } from '@/lib/domain/moisture/stay-moisture';

interface Row {
  packetId: string;
  number: string;
  testedOn: string;
  method: string;
  moisturePercent: number;
  /** JSON: OvenDish[] */
  dishes: string;
}

/**
 * Moisture tests that stand, by the packet their sample came from: one query, with their dishes.
 *
 * @param lots  'IN (...)' for the lots wanted, over the parameters given; '' for all
 */
export function packetMoistureTests(
  database: Database.Database,
  lots: string,
  parameters: object,
): Map<string, PacketMoistureTest[]> {
  const byPacket = new Map<string, PacketMoistureTest[]>();
  const rows = database
    .prepare<object, Row>(
      `SELECT t."packetId", t."number", t."testedOn", t."method", t."moisturePercent",
         (SELECT json_group_array(json_object('dishG', d."dishG", 'dishAndFreshG', d."dishAndFreshG",
            'dishAndDryG', d."dishAndDryG", 'beforePreDryingG', d."beforePreDryingG",
            'afterPreDryingG', d."afterPreDryingG"))
          FROM "MoistureDish" d WHERE d."testId" = t."id") AS "dishes"
       FROM "MoistureTest" t
       WHERE t."packetId" IS NOT NULL ${lots && `AND t."lotId" ${lots}`}
         AND NOT EXISTS (SELECT 1 FROM "MoistureTest" c WHERE c."correctsId" = t."id")`,
    )
    .iterate(parameters);
  for (const { packetId, method, dishes, ...test } of rows) {
    const own = byPacket.get(packetId) ?? [];
    own.push({ ...test, standardPoints: standardPoints(method, JSON.parse(dishes) as OvenDish[]) });
    byPacket.set(packetId, own);
  }
  return byPacket;
}

/**
 * One standard deviation of a test's result, points: its method's, or half the range of its dishes where that is more.
 */
export function standardPoints(method: string, dishes: readonly OvenDish[]): number {
  const usual = moistureMethod(method).standardPoints;
  return dishes.length < 2 ? usual : Math.max(usual, ovenDishes(dishes).rangePoints / 2);
}
