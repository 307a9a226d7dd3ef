import { CROPS } from '@/lib/domain/reference/all-crops';
import { LONGEVITY_CONSTANTS } from '@/lib/domain/reference/longevity-constants';
import { connections } from '../database/connections';
import { enqueueWrite } from '../database/write-queue';
import { newId } from '../new-id';

/**
 * Puts the reference facts into the database: longevity constants, crops, their facts and germination methods, and the
 * one bank row. Run after every migration. Facts of the reference are replaced as a whole, so that a corrected figure
 * arrives with a new version; what the steward has added or set (mark "bank's own", columns of their own) stays.
 */
export async function loadReferenceFacts(): Promise<{ crops: number }> {
  return enqueueWrite(async () => {
    const { bulk } = connections();
    bulk.transaction(() => {
      bulk.prepare(`INSERT OR IGNORE INTO "Bank" ("id", "name") VALUES (1, 'Our seed bank')`).run();
      loadConstants();
      loadCrops();
    })();
    return { crops: CROPS.length };
  });
}

function loadConstants(): void {
  const put = connections().bulk.prepare(
    `INSERT INTO "LongevityConstants" ("id", "name", "species", "KE", "CW", "CH", "CQ", "standardErrorKE", "standardErrorCW",
       "moistureFromPercent", "moistureToPercent", "temperatureFromC", "temperatureToC", "lowMoistureLimitPercent", "mark", "source")
     VALUES (@key, @name, @species, @KE, @CW, @CH, @CQ, @standardErrorKE, @standardErrorCW, @moistureFromPercent,
       @moistureToPercent, @temperatureFromC, @temperatureToC, @lowMoistureLimitPercent, @mark, @source)
     ON CONFLICT ("id") DO UPDATE SET "name" = excluded."name", "species" = excluded."species", "KE" = excluded."KE",
       "CW" = excluded."CW", "CH" = excluded."CH", "CQ" = excluded."CQ", "standardErrorKE" = excluded."standardErrorKE",
       "standardErrorCW" = excluded."standardErrorCW", "moistureFromPercent" = excluded."moistureFromPercent",
       "moistureToPercent" = excluded."moistureToPercent", "temperatureFromC" = excluded."temperatureFromC",
       "temperatureToC" = excluded."temperatureToC", "lowMoistureLimitPercent" = excluded."lowMoistureLimitPercent",
       "mark" = excluded."mark", "source" = excluded."source"`,
  );
  for (const constants of Object.values(LONGEVITY_CONSTANTS)) put.run(constants);
}

function loadCrops(): void {
  const { bulk } = connections();
  const findCrop = bulk.prepare<[string], { id: string }>(`SELECT "id" FROM "Crop" WHERE "name" = ?`);
  const addCrop = bulk.prepare(
    `INSERT INTO "Crop" ("id", "name", "scientificName", "family", "pollination", "lifeCycle", "storageBehaviour",
       "longevityConstantsId", "constantsBorrowed", "borrowedBecause")
     VALUES (@id, @name, @scientificName, @family, @pollination, @lifeCycle, @storageBehaviour, @longevityConstantsId,
       @constantsBorrowed, @borrowedBecause)`,
  );
  const dropFacts = bulk.prepare(`DELETE FROM "CropFact" WHERE "cropId" = ? AND "mark" <> 'bank''s own'`);
  const dropMethods = bulk.prepare(`DELETE FROM "GerminationMethod" WHERE "cropId" = ? AND "mark" <> 'bank''s own'`);
  const addFact = bulk.prepare(
    `INSERT INTO "CropFact" ("id", "cropId", "kind", "lower", "upper", "text", "mark", "source")
     VALUES (@id, @cropId, @kind, @lower, @upper, @text, @mark, @source)`,
  );
  const addMethod = bulk.prepare(
    `INSERT INTO "GerminationMethod" ("id", "cropId", "substrata", "temperatures", "firstCountDays", "finalCountDays",
       "light", "preTreatment", "hardSeedOccurs", "mark", "source")
     VALUES (@id, @cropId, @substrata, @temperatures, @firstCountDays, @finalCountDays, @light, @preTreatment,
       @hardSeedOccurs, @mark, @source)`,
  );
  for (const crop of CROPS) {
    const known = findCrop.get(crop.name);
    const cropId = known?.id ?? newId();
    if (!known) {
      addCrop.run({
        id: cropId,
        name: crop.name,
        scientificName: crop.scientificName,
        family: crop.family,
        pollination: crop.pollination,
        lifeCycle: crop.lifeCycle,
        storageBehaviour: crop.storageBehaviour.behaviour,
        longevityConstantsId: crop.longevityConstantsKey,
        constantsBorrowed: crop.constantsBorrowed ? 1 : 0,
        borrowedBecause: crop.borrowedBecause,
      });
    }
    dropFacts.run(cropId);
    dropMethods.run(cropId);
    for (const fact of crop.facts) addFact.run({ id: newId(), cropId, ...fact });
    for (const method of crop.germination) {
      addMethod.run({
        id: newId(),
        cropId,
        substrata: method.substrataInWords.join(', '),
        temperatures: method.temperatures,
        firstCountDays: method.firstCountDays,
        finalCountDays: method.finalCountDays,
        light: method.light ? 1 : 0,
        preTreatment: method.preTreatment,
        hardSeedOccurs: method.hardSeedOccurs ? 1 : 0,
        mark: method.mark,
        source: method.source,
      });
    }
  }
}
