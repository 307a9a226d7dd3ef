-- AlterTable
ALTER TABLE "Bank" ADD COLUMN "address" TEXT;

-- CreateTable
CREATE TABLE "PacketCare" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "packetId" TEXT NOT NULL,
    "on" TEXT NOT NULL,
    "what" TEXT NOT NULL,
    "desiccant" TEXT,
    "desiccantGrams" REAL,
    "changeDueOn" TEXT,
    "note" TEXT,
    "byId" TEXT NOT NULL,
    "recordedAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "PacketCare_packetId_fkey" FOREIGN KEY ("packetId") REFERENCES "Packet" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "StorePhase" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "storeId" TEXT NOT NULL,
    "from" TEXT NOT NULL,
    "parentId" TEXT,
    "targetTemperatureC" REAL,
    "targetRelativeHumidity" REAL,
    "recordedAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "byId" TEXT NOT NULL,
    CONSTRAINT "StorePhase_storeId_fkey" FOREIGN KEY ("storeId") REFERENCES "Store" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "StorePhase_parentId_fkey" FOREIGN KEY ("parentId") REFERENCES "Store" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ReadingDay" (
    "storeId" TEXT NOT NULL,
    "epochDay" INTEGER NOT NULL,
    "readings" INTEGER NOT NULL,
    "lowestTemperatureC" REAL NOT NULL,
    "meanTemperatureC" REAL NOT NULL,
    "highestTemperatureC" REAL NOT NULL,
    "humidityReadings" INTEGER NOT NULL,
    "lowestHumidity" REAL,
    "meanHumidity" REAL,
    "highestHumidity" REAL,

    PRIMARY KEY ("storeId", "epochDay"),
    CONSTRAINT "ReadingDay_storeId_fkey" FOREIGN KEY ("storeId") REFERENCES "Store" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ReadingImport" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "storeId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "uploadId" TEXT,
    "fileName" TEXT,
    "fileHash" TEXT,
    "tokenId" TEXT,
    "layout" TEXT,
    "status" TEXT NOT NULL,
    "rows" INTEGER NOT NULL DEFAULT 0,
    "added" INTEGER NOT NULL DEFAULT 0,
    "report" TEXT,
    "byId" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "finishedAt" DATETIME,
    CONSTRAINT "ReadingImport_storeId_fkey" FOREIGN KEY ("storeId") REFERENCES "Store" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "ReadingImport_tokenId_fkey" FOREIGN KEY ("tokenId") REFERENCES "ReadingToken" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ReadingToken" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "storeId" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "hash" TEXT NOT NULL,
    "byId" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "lastUsedAt" DATETIME,
    "revokedAt" DATETIME,
    CONSTRAINT "ReadingToken_storeId_fkey" FOREIGN KEY ("storeId") REFERENCES "Store" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "StockTake" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" TEXT NOT NULL,
    "storeId" TEXT NOT NULL,
    "startedOn" TEXT NOT NULL,
    "closedOn" TEXT,
    "status" TEXT NOT NULL DEFAULT 'open',
    "notes" TEXT,
    "byId" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "StockTake_storeId_fkey" FOREIGN KEY ("storeId") REFERENCES "Store" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "StockTakeLine" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "stockTakeId" TEXT NOT NULL,
    "packetId" TEXT NOT NULL,
    "finding" TEXT NOT NULL,
    "expectedSeeds" INTEGER NOT NULL,
    "seeds" INTEGER,
    "seedsSd" REAL,
    "grams" REAL,
    "decision" TEXT,
    "note" TEXT,
    "byId" TEXT NOT NULL,
    "at" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "StockTakeLine_stockTakeId_fkey" FOREIGN KEY ("stockTakeId") REFERENCES "StockTake" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "StockTakeLine_packetId_fkey" FOREIGN KEY ("packetId") REFERENCES "Packet" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "MoistureTest" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" TEXT NOT NULL,
    "lotId" TEXT NOT NULL,
    "packetId" TEXT,
    "testedOn" TEXT NOT NULL,
    "method" TEXT NOT NULL,
    "moisturePercent" REAL NOT NULL,
    "relativeHumidity" REAL,
    "temperatureC" REAL,
    "notes" TEXT,
    "byId" TEXT NOT NULL,
    "recordedAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "withdrawalId" TEXT,
    "correctsId" TEXT,
    CONSTRAINT "MoistureTest_lotId_fkey" FOREIGN KEY ("lotId") REFERENCES "Lot" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "MoistureTest_packetId_fkey" FOREIGN KEY ("packetId") REFERENCES "Packet" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "MoistureTest_withdrawalId_fkey" FOREIGN KEY ("withdrawalId") REFERENCES "Movement" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "MoistureTest_correctsId_fkey" FOREIGN KEY ("correctsId") REFERENCES "MoistureTest" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "MoistureDish" (
    "testId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "dishG" REAL NOT NULL,
    "dishAndFreshG" REAL NOT NULL,
    "dishAndDryG" REAL NOT NULL,
    "beforePreDryingG" REAL,
    "afterPreDryingG" REAL,

    PRIMARY KEY ("testId", "position"),
    CONSTRAINT "MoistureDish_testId_fkey" FOREIGN KEY ("testId") REFERENCES "MoistureTest" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "DryingRun" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" TEXT NOT NULL,
    "lotId" TEXT NOT NULL,
    "packetId" TEXT,
    "storeId" TEXT,
    "dryingWith" TEXT,
    "startedOn" TEXT NOT NULL,
    "startMoisturePercent" REAL NOT NULL,
    "moistureTestId" TEXT,
    "targetMoisturePercent" REAL NOT NULL,
    "tareG" REAL NOT NULL DEFAULT 0,
    "endedOn" TEXT,
    "notes" TEXT,
    "byId" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "DryingRun_lotId_fkey" FOREIGN KEY ("lotId") REFERENCES "Lot" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "DryingRun_packetId_fkey" FOREIGN KEY ("packetId") REFERENCES "Packet" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "DryingRun_storeId_fkey" FOREIGN KEY ("storeId") REFERENCES "Store" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "DryingRun_moistureTestId_fkey" FOREIGN KEY ("moistureTestId") REFERENCES "MoistureTest" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "DryingWeighing" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "runId" TEXT NOT NULL,
    "atEpochSeconds" INTEGER NOT NULL,
    "weightG" REAL NOT NULL,
    "byId" TEXT NOT NULL,
    "recordedAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "correctsId" TEXT,
    CONSTRAINT "DryingWeighing_runId_fkey" FOREIGN KEY ("runId") REFERENCES "DryingRun" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "DryingWeighing_correctsId_fkey" FOREIGN KEY ("correctsId") REFERENCES "DryingWeighing" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "LabelFormat" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "pageWidthMm" REAL NOT NULL,
    "pageHeightMm" REAL NOT NULL,
    "labelWidthMm" REAL NOT NULL,
    "labelHeightMm" REAL NOT NULL,
    "columns" INTEGER NOT NULL DEFAULT 1,
    "rows" INTEGER NOT NULL DEFAULT 1,
    "marginLeftMm" REAL NOT NULL DEFAULT 0,
    "marginTopMm" REAL NOT NULL DEFAULT 0,
    "pitchXMm" REAL NOT NULL,
    "pitchYMm" REAL NOT NULL,
    "code" TEXT NOT NULL DEFAULT 'qr',
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "byId" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1
);

-- CreateTable
CREATE TABLE "SharingRequest" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" TEXT NOT NULL,
    "recipient" TEXT NOT NULL,
    "recipientKind" TEXT NOT NULL,
    "contact" TEXT,
    "purpose" TEXT,
    "askedOn" TEXT NOT NULL,
    "status" TEXT NOT NULL DEFAULT 'open',
    "settledOn" TEXT,
    "notes" TEXT,
    "byId" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "version" INTEGER NOT NULL DEFAULT 1
);

-- CreateTable
CREATE TABLE "SharingLine" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "requestId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "accessionId" TEXT NOT NULL,
    "lotId" TEXT,
    "packetId" TEXT,
    "seeds" INTEGER,
    "note" TEXT,
    "movementId" TEXT,
    CONSTRAINT "SharingLine_requestId_fkey" FOREIGN KEY ("requestId") REFERENCES "SharingRequest" ("id") ON DELETE CASCADE ON UPDATE CASCADE,
    CONSTRAINT "SharingLine_accessionId_fkey" FOREIGN KEY ("accessionId") REFERENCES "Accession" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "SharingLine_lotId_fkey" FOREIGN KEY ("lotId") REFERENCES "Lot" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "SharingLine_packetId_fkey" FOREIGN KEY ("packetId") REFERENCES "Packet" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "SharingLine_movementId_fkey" FOREIGN KEY ("movementId") REFERENCES "Movement" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- Columns are added rather than the tables rebuilt, so that the triggers of the first migration stay on them.
ALTER TABLE "Accession" ADD COLUMN "sharing" TEXT NOT NULL DEFAULT 'may';
ALTER TABLE "Accession" ADD COLUMN "sharingTerms" TEXT;
ALTER TABLE "Movement" ADD COLUMN "seedsSd" REAL;
ALTER TABLE "Movement" ADD COLUMN "pairId" TEXT;
ALTER TABLE "Movement" ADD COLUMN "stockTakeId" TEXT CONSTRAINT "Movement_stockTakeId_fkey" REFERENCES "StockTake" ("id") ON DELETE SET NULL ON UPDATE CASCADE;
ALTER TABLE "Movement" ADD COLUMN "requestId" TEXT CONSTRAINT "Movement_requestId_fkey" REFERENCES "SharingRequest" ("id") ON DELETE SET NULL ON UPDATE CASCADE;
CREATE INDEX "Movement_on_idx" ON "Movement"("on");
CREATE INDEX "Movement_pairId_idx" ON "Movement"("pairId");
CREATE INDEX "Movement_stockTakeId_idx" ON "Movement"("stockTakeId");
CREATE INDEX "Movement_requestId_idx" ON "Movement"("requestId");
ALTER TABLE "GerminationTest" ADD COLUMN "withdrawalId" TEXT CONSTRAINT "GerminationTest_withdrawalId_fkey" REFERENCES "Movement" ("id") ON DELETE SET NULL ON UPDATE CASCADE;
CREATE UNIQUE INDEX "GerminationTest_withdrawalId_key" ON "GerminationTest"("withdrawalId");
ALTER TABLE "Store" ADD COLUMN "inheritsTarget" BOOLEAN NOT NULL DEFAULT false;
ALTER TABLE "Store" ADD COLUMN "capacityPackets" INTEGER;
ALTER TABLE "Store" ADD COLUMN "closedOn" TEXT;

-- Readings are clustered by store and time: half the size, and a year of a store is one stretch of the file.
CREATE TABLE "new_Reading" (
    "storeId" TEXT NOT NULL,
    "atEpochSeconds" INTEGER NOT NULL,
    "importId" INTEGER NOT NULL DEFAULT 0,
    "temperatureC" REAL NOT NULL,
    "relativeHumidity" REAL,
    "takenBack" BOOLEAN NOT NULL DEFAULT false,

    PRIMARY KEY ("storeId", "atEpochSeconds", "importId"),
    CONSTRAINT "Reading_storeId_fkey" FOREIGN KEY ("storeId") REFERENCES "Store" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
) WITHOUT ROWID;
INSERT INTO "new_Reading" ("storeId", "atEpochSeconds", "temperatureC", "relativeHumidity") SELECT "storeId", "atEpochSeconds", "temperatureC", "relativeHumidity" FROM "Reading" ORDER BY "storeId", "atEpochSeconds";
DROP TABLE "Reading";
ALTER TABLE "new_Reading" RENAME TO "Reading";

-- CreateIndex
CREATE INDEX "PacketCare_packetId_on_idx" ON "PacketCare"("packetId", "on");

-- CreateIndex
CREATE INDEX "PacketCare_changeDueOn_idx" ON "PacketCare"("changeDueOn");

-- CreateIndex
CREATE INDEX "StorePhase_storeId_from_idx" ON "StorePhase"("storeId", "from");

-- CreateIndex
CREATE INDEX "StorePhase_parentId_idx" ON "StorePhase"("parentId");

-- CreateIndex
CREATE UNIQUE INDEX "ReadingImport_uploadId_key" ON "ReadingImport"("uploadId");

-- CreateIndex
CREATE INDEX "ReadingImport_storeId_createdAt_idx" ON "ReadingImport"("storeId", "createdAt");

-- CreateIndex
CREATE INDEX "ReadingImport_tokenId_idx" ON "ReadingImport"("tokenId");

-- CreateIndex
CREATE UNIQUE INDEX "ReadingToken_hash_key" ON "ReadingToken"("hash");

-- CreateIndex
CREATE INDEX "ReadingToken_storeId_idx" ON "ReadingToken"("storeId");

-- CreateIndex
CREATE UNIQUE INDEX "StockTake_number_key" ON "StockTake"("number");

-- CreateIndex
CREATE INDEX "StockTake_status_idx" ON "StockTake"("status");

-- CreateIndex
CREATE INDEX "StockTake_storeId_idx" ON "StockTake"("storeId");

-- CreateIndex
CREATE INDEX "StockTakeLine_packetId_idx" ON "StockTakeLine"("packetId");

-- CreateIndex
CREATE UNIQUE INDEX "StockTakeLine_stockTakeId_packetId_key" ON "StockTakeLine"("stockTakeId", "packetId");

-- CreateIndex
CREATE UNIQUE INDEX "MoistureTest_number_key" ON "MoistureTest"("number");

-- CreateIndex
CREATE UNIQUE INDEX "MoistureTest_withdrawalId_key" ON "MoistureTest"("withdrawalId");

-- CreateIndex
CREATE UNIQUE INDEX "MoistureTest_correctsId_key" ON "MoistureTest"("correctsId");

-- CreateIndex
CREATE INDEX "MoistureTest_lotId_testedOn_idx" ON "MoistureTest"("lotId", "testedOn");

-- CreateIndex
CREATE INDEX "MoistureTest_packetId_idx" ON "MoistureTest"("packetId");

-- CreateIndex
CREATE UNIQUE INDEX "DryingRun_number_key" ON "DryingRun"("number");

-- CreateIndex
CREATE INDEX "DryingRun_lotId_idx" ON "DryingRun"("lotId");

-- CreateIndex
CREATE INDEX "DryingRun_endedOn_idx" ON "DryingRun"("endedOn");

-- CreateIndex
CREATE UNIQUE INDEX "DryingWeighing_correctsId_key" ON "DryingWeighing"("correctsId");

-- CreateIndex
CREATE INDEX "DryingWeighing_runId_atEpochSeconds_idx" ON "DryingWeighing"("runId", "atEpochSeconds");

-- CreateIndex
CREATE UNIQUE INDEX "LabelFormat_name_key" ON "LabelFormat"("name");

-- CreateIndex
CREATE UNIQUE INDEX "SharingRequest_number_key" ON "SharingRequest"("number");

-- CreateIndex
CREATE INDEX "SharingRequest_status_askedOn_idx" ON "SharingRequest"("status", "askedOn");

-- CreateIndex
CREATE UNIQUE INDEX "SharingLine_movementId_key" ON "SharingLine"("movementId");

-- CreateIndex
CREATE INDEX "SharingLine_lotId_idx" ON "SharingLine"("lotId");

-- CreateIndex
CREATE INDEX "SharingLine_accessionId_idx" ON "SharingLine"("accessionId");

-- CreateIndex
CREATE INDEX "SharingLine_packetId_idx" ON "SharingLine"("packetId");

-- CreateIndex
CREATE UNIQUE INDEX "SharingLine_requestId_position_key" ON "SharingLine"("requestId", "position");



-- What a day's readings add up to, for readings that are here already.
INSERT INTO "ReadingDay"
SELECT "storeId", CAST(floor("atEpochSeconds" / 86400.0) AS INTEGER), COUNT(*), MIN("temperatureC"), AVG("temperatureC"), MAX("temperatureC"),
  COUNT("relativeHumidity"), MIN("relativeHumidity"), AVG("relativeHumidity"), MAX("relativeHumidity")
FROM "Reading" GROUP BY 1, 2;

-- Every store has a first phase, from before any seed was in it.
INSERT INTO "StorePhase" ("storeId", "from", "parentId", "targetTemperatureC", "targetRelativeHumidity", "byId")
SELECT "id", '0001-01-01', "parentId", "targetTemperatureC", "targetRelativeHumidity", 'hilum' FROM "Store";
CREATE TRIGGER "Store_first_phase" AFTER INSERT ON "Store"
BEGIN
  INSERT INTO "StorePhase" ("storeId", "from", "parentId", "targetTemperatureC", "targetRelativeHumidity", "byId")
  VALUES (NEW."id", '0001-01-01', NEW."parentId",
    CASE WHEN NEW."inheritsTarget" THEN NULL ELSE NEW."targetTemperatureC" END,
    CASE WHEN NEW."inheritsTarget" THEN NULL ELSE NEW."targetRelativeHumidity" END, 'hilum');
END;

-- Append-only tables: a mistake is corrected by a further row.
CREATE TRIGGER "PacketCare_no_update" BEFORE UPDATE ON "PacketCare" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "PacketCare_no_delete" BEFORE DELETE ON "PacketCare" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "StorePhase_no_update" BEFORE UPDATE ON "StorePhase" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "StorePhase_no_delete" BEFORE DELETE ON "StorePhase" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "MoistureTest_no_update" BEFORE UPDATE ON "MoistureTest" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "MoistureTest_no_delete" BEFORE DELETE ON "MoistureTest" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "MoistureDish_no_update" BEFORE UPDATE ON "MoistureDish" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "MoistureDish_no_delete" BEFORE DELETE ON "MoistureDish" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "DryingWeighing_no_update" BEFORE UPDATE ON "DryingWeighing" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "DryingWeighing_no_delete" BEFORE DELETE ON "DryingWeighing" BEGIN SELECT RAISE(ABORT, 'append-only'); END;

-- A reading stays as it came; all that may happen to it is that its import is taken back.
CREATE TRIGGER "Reading_no_update" BEFORE UPDATE ON "Reading"
WHEN NOT (OLD."storeId" IS NEW."storeId" AND OLD."atEpochSeconds" IS NEW."atEpochSeconds" AND OLD."importId" IS NEW."importId"
  AND OLD."temperatureC" IS NEW."temperatureC" AND OLD."relativeHumidity" IS NEW."relativeHumidity"
  AND OLD."takenBack" = 0 AND NEW."takenBack" = 1)
BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "Reading_no_delete" BEFORE DELETE ON "Reading" BEGIN SELECT RAISE(ABORT, 'append-only'); END;

-- What a closed stock-take found and what was sent to somebody stays as it is.
CREATE TRIGGER "StockTakeLine_settled_no_update" BEFORE UPDATE ON "StockTakeLine"
WHEN (SELECT "status" FROM "StockTake" WHERE "id" = OLD."stockTakeId") <> 'open' BEGIN SELECT RAISE(ABORT, 'stock-take settled'); END;
CREATE TRIGGER "StockTakeLine_settled_no_delete" BEFORE DELETE ON "StockTakeLine"
WHEN (SELECT "status" FROM "StockTake" WHERE "id" = OLD."stockTakeId") <> 'open' BEGIN SELECT RAISE(ABORT, 'stock-take settled'); END;
CREATE TRIGGER "SharingLine_settled_no_update" BEFORE UPDATE ON "SharingLine"
WHEN (SELECT "status" FROM "SharingRequest" WHERE "id" = OLD."requestId") <> 'open' BEGIN SELECT RAISE(ABORT, 'request settled'); END;
CREATE TRIGGER "SharingLine_settled_no_delete" BEFORE DELETE ON "SharingLine"
WHEN (SELECT "status" FROM "SharingRequest" WHERE "id" = OLD."requestId") <> 'open' BEGIN SELECT RAISE(ABORT, 'request settled'); END;
