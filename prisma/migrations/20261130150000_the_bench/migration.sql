-- CreateTable
CREATE TABLE "Tray" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" TEXT NOT NULL,
    "lotId" TEXT NOT NULL,
    "packetId" TEXT,
    "withdrawalId" TEXT,
    "setOn" TEXT NOT NULL,
    "substrate" TEXT,
    "temperatures" TEXT,
    "light" BOOLEAN NOT NULL DEFAULT false,
    "preTreatment" TEXT,
    "prechillDays" INTEGER NOT NULL DEFAULT 0,
    "firstCountOn" TEXT NOT NULL,
    "finalCountOn" TEXT NOT NULL,
    "countEveryDays" INTEGER,
    "place" TEXT,
    "notes" TEXT,
    "seriesId" TEXT NOT NULL,
    "groupNumber" INTEGER NOT NULL DEFAULT 1,
    "sequentialPlan" TEXT,
    "status" TEXT NOT NULL DEFAULT 'open',
    "closedOn" TEXT,
    "closedAt" DATETIME,
    "byId" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Tray_lotId_fkey" FOREIGN KEY ("lotId") REFERENCES "Lot" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Tray_packetId_fkey" FOREIGN KEY ("packetId") REFERENCES "Packet" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "Tray_withdrawalId_fkey" FOREIGN KEY ("withdrawalId") REFERENCES "Movement" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "TrayDish" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "trayId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "seeds" INTEGER NOT NULL,
    CONSTRAINT "TrayDish_trayId_fkey" FOREIGN KEY ("trayId") REFERENCES "Tray" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "TrayCount" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "trayId" TEXT NOT NULL,
    "dishId" TEXT NOT NULL,
    "on" TEXT NOT NULL,
    "counted" BOOLEAN NOT NULL DEFAULT true,
    "normal" INTEGER NOT NULL DEFAULT 0,
    "abnormal" INTEGER NOT NULL DEFAULT 0,
    "hard" INTEGER NOT NULL DEFAULT 0,
    "fresh" INTEGER NOT NULL DEFAULT 0,
    "dead" INTEGER NOT NULL DEFAULT 0,
    "places" TEXT,
    "replaces" TEXT NOT NULL DEFAULT '[]',
    "deviceId" TEXT NOT NULL,
    "madeAt" DATETIME NOT NULL,
    "byId" TEXT NOT NULL,
    "byName" TEXT NOT NULL,
    "countedBy" TEXT,
    "receivedAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "TrayCount_trayId_fkey" FOREIGN KEY ("trayId") REFERENCES "Tray" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "TrayCount_dishId_fkey" FOREIGN KEY ("dishId") REFERENCES "TrayDish" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "TrayNote" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "trayId" TEXT NOT NULL,
    "dish" INTEGER,
    "on" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "text" TEXT,
    "width" INTEGER,
    "height" INTEGER,
    "bytes" INTEGER,
    "deviceId" TEXT NOT NULL,
    "madeAt" DATETIME NOT NULL,
    "byId" TEXT NOT NULL,
    "byName" TEXT NOT NULL,
    "receivedAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "TrayNote_trayId_fkey" FOREIGN KEY ("trayId") REFERENCES "Tray" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "CalendarFeed" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "hash" TEXT NOT NULL,
    "byId" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "lastUsedAt" DATETIME,
    "revokedAt" DATETIME
);

-- CreateTable
CREATE TABLE "ViabilityTest" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" TEXT NOT NULL,
    "lotId" TEXT NOT NULL,
    "packetId" TEXT,
    "testedOn" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "trayId" TEXT,
    "stainedNormally" INTEGER,
    "stainedAbnormally" INTEGER,
    "unstained" INTEGER,
    "firm" INTEGER,
    "empty" INTEGER,
    "insectDamaged" INTEGER,
    "dead" INTEGER,
    "method" TEXT,
    "notes" TEXT,
    "byId" TEXT NOT NULL,
    "recordedAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "withdrawalId" TEXT,
    "correctsId" TEXT,
    CONSTRAINT "ViabilityTest_lotId_fkey" FOREIGN KEY ("lotId") REFERENCES "Lot" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "ViabilityTest_packetId_fkey" FOREIGN KEY ("packetId") REFERENCES "Packet" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "ViabilityTest_trayId_fkey" FOREIGN KEY ("trayId") REFERENCES "Tray" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "ViabilityTest_withdrawalId_fkey" FOREIGN KEY ("withdrawalId") REFERENCES "Movement" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "ViabilityTest_correctsId_fkey" FOREIGN KEY ("correctsId") REFERENCES "ViabilityTest" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- AlterTable (not rebuilt: triggers guard it)
ALTER TABLE "GerminationTest" ADD COLUMN "trayId" TEXT REFERENCES "Tray" ("id") ON DELETE SET NULL ON UPDATE CASCADE;

-- CreateIndex
CREATE INDEX "GerminationTest_trayId_idx" ON "GerminationTest"("trayId");


-- CreateIndex
CREATE UNIQUE INDEX "Tray_number_key" ON "Tray"("number");

-- CreateIndex
CREATE UNIQUE INDEX "Tray_withdrawalId_key" ON "Tray"("withdrawalId");

-- CreateIndex
CREATE INDEX "Tray_status_finalCountOn_idx" ON "Tray"("status", "finalCountOn");

-- CreateIndex
CREATE INDEX "Tray_lotId_idx" ON "Tray"("lotId");

-- CreateIndex
CREATE INDEX "Tray_seriesId_idx" ON "Tray"("seriesId");

-- CreateIndex
CREATE UNIQUE INDEX "TrayDish_trayId_position_key" ON "TrayDish"("trayId", "position");

-- CreateIndex
CREATE INDEX "TrayCount_trayId_on_idx" ON "TrayCount"("trayId", "on");

-- CreateIndex
CREATE INDEX "TrayCount_dishId_idx" ON "TrayCount"("dishId");

-- CreateIndex
CREATE INDEX "TrayNote_trayId_idx" ON "TrayNote"("trayId");

-- CreateIndex
CREATE UNIQUE INDEX "CalendarFeed_hash_key" ON "CalendarFeed"("hash");

-- CreateIndex
CREATE UNIQUE INDEX "ViabilityTest_number_key" ON "ViabilityTest"("number");

-- CreateIndex
CREATE UNIQUE INDEX "ViabilityTest_withdrawalId_key" ON "ViabilityTest"("withdrawalId");

-- CreateIndex
CREATE UNIQUE INDEX "ViabilityTest_correctsId_key" ON "ViabilityTest"("correctsId");

-- CreateIndex
CREATE INDEX "ViabilityTest_lotId_testedOn_idx" ON "ViabilityTest"("lotId", "testedOn");

-- CreateIndex
CREATE INDEX "ViabilityTest_packetId_idx" ON "ViabilityTest"("packetId");

-- CreateIndex
CREATE INDEX "ViabilityTest_trayId_idx" ON "ViabilityTest"("trayId");



-- Append-only tables: a mistake is corrected by a further row.
CREATE TRIGGER "TrayDish_no_update" BEFORE UPDATE ON "TrayDish" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "TrayDish_no_delete" BEFORE DELETE ON "TrayDish" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "TrayCount_no_update" BEFORE UPDATE ON "TrayCount" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "TrayCount_no_delete" BEFORE DELETE ON "TrayCount" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "TrayNote_no_update" BEFORE UPDATE ON "TrayNote" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "TrayNote_no_delete" BEFORE DELETE ON "TrayNote" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "ViabilityTest_no_update" BEFORE UPDATE ON "ViabilityTest" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "ViabilityTest_no_delete" BEFORE DELETE ON "ViabilityTest" BEGIN SELECT RAISE(ABORT, 'append-only'); END;

-- A tray is never lost: a mistaken one is given up, and says why.
CREATE TRIGGER "Tray_no_delete" BEFORE DELETE ON "Tray" BEGIN SELECT RAISE(ABORT, 'append-only'); END;

-- A count belongs to a dish of its own tray.
CREATE TRIGGER "TrayCount_of_own_dish" BEFORE INSERT ON "TrayCount"
WHEN (SELECT "trayId" FROM "TrayDish" WHERE "id" = NEW."dishId") IS NOT NEW."trayId"
BEGIN SELECT RAISE(ABORT, 'dish of another tray'); END;
