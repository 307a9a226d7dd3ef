import 'server-only';
import type { LabelledDish } from '@/lib/domain/labels/tray-label';
import { connections } from '../database/connections';

/**
 * What stands on the labels of dishes: those of each tray, trays in the order asked. One statement, however many there
 * are. Tests that are not in the collection, or were written down without a tray, are left out.
 *
 * Checked in tests/server/queries/tray-labels.test.ts
 */
export function findLabelledDishes(numbers: readonly string[]): LabelledDish[] {
  if (numbers.length === 0) return [];
  return connections()
    .rows.prepare<[string], LabelledDish>(
      `SELECT t."number" AS "trayNumber", d."position" AS "dish", d."seeds",
         (SELECT COUNT(*) FROM "TrayDish" WHERE "trayId" = t."id") AS "dishes",
         l."number" AS "lotNumber", l."treatment", a."name" AS "accessionName", c."name" AS "cropName",
         t."setOn", t."firstCountOn", t."finalCountOn", t."temperatures", t."place"
       FROM json_each(?) wanted JOIN "Tray" t ON t."number" = wanted.value JOIN "TrayDish" d ON d."trayId" = t."id"
         JOIN "Lot" l ON l."id" = t."lotId" JOIN "Accession" a ON a."id" = l."accessionId"
         JOIN "Crop" c ON c."id" = a."cropId"
       ORDER BY wanted.key, d."position"`,
    )
    .all(JSON.stringify(numbers));
}
