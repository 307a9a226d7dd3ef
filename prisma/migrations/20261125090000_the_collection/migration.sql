-- CreateTable
CREATE TABLE "User" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "emailVerified" BOOLEAN NOT NULL DEFAULT false,
    "image" TEXT,
    "username" TEXT,
    "displayUsername" TEXT,
    "role" TEXT NOT NULL DEFAULT 'visitor',
    "banned" BOOLEAN DEFAULT false,
    "banReason" TEXT,
    "banExpires" DATETIME,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "Session" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "expiresAt" DATETIME NOT NULL,
    "token" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL,
    "ipAddress" TEXT,
    "userAgent" TEXT,
    "userId" TEXT NOT NULL,
    "impersonatedBy" TEXT,
    CONSTRAINT "Session_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Account" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "accountId" TEXT NOT NULL,
    "providerId" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "accessToken" TEXT,
    "refreshToken" TEXT,
    "idToken" TEXT,
    "accessTokenExpiresAt" DATETIME,
    "refreshTokenExpiresAt" DATETIME,
    "scope" TEXT,
    "password" TEXT,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL,
    CONSTRAINT "Account_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Verification" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "identifier" TEXT NOT NULL,
    "value" TEXT NOT NULL,
    "expiresAt" DATETIME NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updatedAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "RateLimit" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "key" TEXT NOT NULL,
    "count" INTEGER NOT NULL,
    "lastRequest" BIGINT NOT NULL
);

-- CreateTable
CREATE TABLE "Bank" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT DEFAULT 1,
    "name" TEXT NOT NULL,
    "thresholdKind" TEXT NOT NULL DEFAULT 'fraction-of-initial',
    "thresholdValue" REAL NOT NULL DEFAULT 0.85,
    "sowingMonth" INTEGER NOT NULL DEFAULT 4,
    "emergence" REAL NOT NULL DEFAULT 0.7,
    "assurance" REAL NOT NULL DEFAULT 0.95,
    "version" INTEGER NOT NULL DEFAULT 1
);

-- CreateTable
CREATE TABLE "NumberSeries" (
    "series" TEXT NOT NULL PRIMARY KEY,
    "last" INTEGER NOT NULL
);

-- CreateTable
CREATE TABLE "LongevityConstants" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "species" TEXT NOT NULL,
    "KE" REAL NOT NULL,
    "CW" REAL NOT NULL,
    "CH" REAL NOT NULL,
    "CQ" REAL NOT NULL,
    "standardErrorKE" REAL,
    "standardErrorCW" REAL,
    "moistureFromPercent" REAL,
    "moistureToPercent" REAL,
    "temperatureFromC" REAL,
    "temperatureToC" REAL,
    "lowMoistureLimitPercent" REAL,
    "mark" TEXT NOT NULL,
    "source" TEXT NOT NULL
);

-- CreateTable
CREATE TABLE "Crop" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "scientificName" TEXT NOT NULL,
    "family" TEXT NOT NULL,
    "pollination" TEXT NOT NULL,
    "lifeCycle" TEXT NOT NULL,
    "storageBehaviour" TEXT NOT NULL DEFAULT 'orthodox',
    "longevityConstantsId" TEXT,
    "constantsBorrowed" BOOLEAN NOT NULL DEFAULT true,
    "borrowedBecause" TEXT,
    "plantsNeeded" INTEGER,
    "thresholdKind" TEXT,
    "thresholdValue" REAL,
    "sowingMonth" INTEGER,
    "emergence" REAL,
    "priorInitialMean" REAL,
    "priorInitialSd" REAL,
    "priorLogRateMean" REAL,
    "priorLogRateSd" REAL,
    "notes" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Crop_longevityConstantsId_fkey" FOREIGN KEY ("longevityConstantsId") REFERENCES "LongevityConstants" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "CropFact" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "cropId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "lower" REAL,
    "upper" REAL,
    "text" TEXT,
    "mark" TEXT NOT NULL,
    "source" TEXT NOT NULL,
    CONSTRAINT "CropFact_cropId_fkey" FOREIGN KEY ("cropId") REFERENCES "Crop" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "GerminationMethod" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "cropId" TEXT NOT NULL,
    "substrata" TEXT NOT NULL,
    "temperatures" TEXT NOT NULL,
    "firstCountDays" INTEGER,
    "finalCountDays" INTEGER NOT NULL,
    "light" BOOLEAN NOT NULL DEFAULT false,
    "preTreatment" TEXT,
    "hardSeedOccurs" BOOLEAN NOT NULL DEFAULT false,
    "mark" TEXT NOT NULL,
    "source" TEXT NOT NULL,
    CONSTRAINT "GerminationMethod_cropId_fkey" FOREIGN KEY ("cropId") REFERENCES "Crop" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Accession" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "cropId" TEXT NOT NULL,
    "donor" TEXT,
    "acquiredOn" TEXT,
    "origin" TEXT,
    "notes" TEXT,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Accession_cropId_fkey" FOREIGN KEY ("cropId") REFERENCES "Crop" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Lot" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" TEXT NOT NULL,
    "accessionId" TEXT NOT NULL,
    "harvestedOn" TEXT NOT NULL,
    "generation" INTEGER NOT NULL DEFAULT 0,
    "isolation" TEXT NOT NULL,
    "plantsHarvested" INTEGER,
    "cleanWeightG" REAL,
    "thousandSeedWeightG" REAL,
    "treatment" TEXT,
    "notes" TEXT,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "Lot_accessionId_fkey" FOREIGN KEY ("accessionId") REFERENCES "Accession" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Packet" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" TEXT NOT NULL,
    "lotId" TEXT NOT NULL,
    "role" TEXT NOT NULL DEFAULT 'active',
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "Packet_lotId_fkey" FOREIGN KEY ("lotId") REFERENCES "Lot" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Placement" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "packetId" TEXT NOT NULL,
    "storeId" TEXT NOT NULL,
    "from" TEXT NOT NULL,
    "container" TEXT NOT NULL,
    "moisturePercent" REAL,
    CONSTRAINT "Placement_packetId_fkey" FOREIGN KEY ("packetId") REFERENCES "Packet" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Placement_storeId_fkey" FOREIGN KEY ("storeId") REFERENCES "Store" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Movement" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "packetId" TEXT NOT NULL,
    "on" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "seeds" INTEGER NOT NULL,
    "grams" REAL,
    "note" TEXT,
    "byId" TEXT NOT NULL,
    "recordedAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "correctsId" TEXT,
    CONSTRAINT "Movement_correctsId_fkey" FOREIGN KEY ("correctsId") REFERENCES "Movement" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "Movement_packetId_fkey" FOREIGN KEY ("packetId") REFERENCES "Packet" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Store" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "parentId" TEXT,
    "targetTemperatureC" REAL NOT NULL,
    "targetRelativeHumidity" REAL,
    "notes" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,
    "climateVersion" INTEGER NOT NULL DEFAULT 0,
    CONSTRAINT "Store_parentId_fkey" FOREIGN KEY ("parentId") REFERENCES "Store" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Reading" (
    "storeId" TEXT NOT NULL,
    "atEpochSeconds" INTEGER NOT NULL,
    "temperatureC" REAL NOT NULL,
    "relativeHumidity" REAL,

    PRIMARY KEY ("storeId", "atEpochSeconds"),
    CONSTRAINT "Reading_storeId_fkey" FOREIGN KEY ("storeId") REFERENCES "Store" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "GerminationTest" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "number" TEXT NOT NULL,
    "lotId" TEXT NOT NULL,
    "packetId" TEXT,
    "setOn" TEXT NOT NULL,
    "finishedOn" TEXT NOT NULL,
    "method" TEXT,
    "notes" TEXT,
    "byId" TEXT NOT NULL,
    "recordedAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "correctsId" TEXT,
    CONSTRAINT "GerminationTest_correctsId_fkey" FOREIGN KEY ("correctsId") REFERENCES "GerminationTest" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "GerminationTest_lotId_fkey" FOREIGN KEY ("lotId") REFERENCES "Lot" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "GerminationTest_packetId_fkey" FOREIGN KEY ("packetId") REFERENCES "Packet" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Replicate" (
    "testId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "seeds" INTEGER NOT NULL,
    "normal" INTEGER NOT NULL,
    "abnormal" INTEGER NOT NULL,
    "hard" INTEGER NOT NULL,
    "fresh" INTEGER NOT NULL,
    "dead" INTEGER NOT NULL,

    PRIMARY KEY ("testId", "position"),
    CONSTRAINT "Replicate_testId_fkey" FOREIGN KEY ("testId") REFERENCES "GerminationTest" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "LotJudgement" (
    "lotId" TEXT NOT NULL PRIMARY KEY,
    "judgedOn" TEXT NOT NULL,
    "lotNumber" TEXT NOT NULL,
    "accessionId" TEXT NOT NULL,
    "accessionNumber" TEXT NOT NULL,
    "accessionName" TEXT NOT NULL,
    "cropId" TEXT NOT NULL,
    "cropName" TEXT NOT NULL,
    "harvestedOn" TEXT NOT NULL,
    "searchText" TEXT NOT NULL,
    "seedsLeft" INTEGER NOT NULL,
    "storeId" TEXT,
    "storeName" TEXT,
    "viabilityMedian" REAL,
    "viabilityLower" REAL,
    "viabilityUpper" REAL,
    "threshold" REAL,
    "chanceBelow" REAL,
    "seedsNeeded" INTEGER,
    "plantsNeeded" INTEGER,
    "lastSafeSeason" INTEGER,
    "rescue" BOOLEAN NOT NULL DEFAULT false,
    "testDueOn" TEXT,
    "testDueReason" TEXT,
    "lastTestedOn" TEXT,
    "action" TEXT NOT NULL,
    "urgency" REAL NOT NULL,
    "sentence" TEXT NOT NULL,
    "noForecastBecause" TEXT,
    CONSTRAINT "LotJudgement_lotId_fkey" FOREIGN KEY ("lotId") REFERENCES "Lot" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "AccessionJudgement" (
    "accessionId" TEXT NOT NULL PRIMARY KEY,
    "judgedOn" TEXT NOT NULL,
    "accessionNumber" TEXT NOT NULL,
    "accessionName" TEXT NOT NULL,
    "cropId" TEXT NOT NULL,
    "cropName" TEXT NOT NULL,
    "searchText" TEXT NOT NULL,
    "lots" INTEGER NOT NULL,
    "seedsLeft" INTEGER NOT NULL,
    "keyLotId" TEXT,
    "keyLotNumber" TEXT,
    "sowFromLotId" TEXT,
    "viabilityMedian" REAL,
    "viabilityLower" REAL,
    "viabilityUpper" REAL,
    "threshold" REAL,
    "chanceBelow" REAL,
    "seedsNeeded" INTEGER,
    "plantsNeeded" INTEGER,
    "lastSafeSeason" INTEGER,
    "rescue" BOOLEAN NOT NULL DEFAULT false,
    "action" TEXT NOT NULL,
    "season" INTEGER,
    "urgency" REAL NOT NULL,
    "sentence" TEXT NOT NULL,
    CONSTRAINT "AccessionJudgement_accessionId_fkey" FOREIGN KEY ("accessionId") REFERENCES "Accession" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "RegrowDecision" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "accessionId" TEXT NOT NULL,
    "lotId" TEXT,
    "season" INTEGER NOT NULL,
    "action" TEXT NOT NULL,
    "reason" TEXT NOT NULL,
    "byId" TEXT NOT NULL,
    "byName" TEXT NOT NULL,
    "decidedAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    CONSTRAINT "RegrowDecision_accessionId_fkey" FOREIGN KEY ("accessionId") REFERENCES "Accession" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "ImportJob" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "kind" TEXT NOT NULL,
    "fileName" TEXT NOT NULL,
    "status" TEXT NOT NULL,
    "rows" INTEGER NOT NULL DEFAULT 0,
    "message" TEXT,
    "byId" TEXT NOT NULL,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "finishedAt" DATETIME
);

-- CreateTable
CREATE TABLE "AuditEntry" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "at" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "byId" TEXT NOT NULL,
    "byName" TEXT NOT NULL,
    "command" TEXT NOT NULL,
    "entity" TEXT NOT NULL,
    "entityId" TEXT NOT NULL,
    "summary" TEXT NOT NULL,
    "before" TEXT,
    "after" TEXT
);

-- CreateIndex
CREATE UNIQUE INDEX "User_email_key" ON "User"("email");

-- CreateIndex
CREATE UNIQUE INDEX "User_username_key" ON "User"("username");

-- CreateIndex
CREATE UNIQUE INDEX "Session_token_key" ON "Session"("token");

-- CreateIndex
CREATE INDEX "Session_userId_idx" ON "Session"("userId");

-- CreateIndex
CREATE INDEX "Account_userId_idx" ON "Account"("userId");

-- CreateIndex
CREATE INDEX "Verification_identifier_idx" ON "Verification"("identifier");

-- CreateIndex
CREATE UNIQUE INDEX "RateLimit_key_key" ON "RateLimit"("key");

-- CreateIndex
CREATE UNIQUE INDEX "LongevityConstants_name_key" ON "LongevityConstants"("name");

-- CreateIndex
CREATE UNIQUE INDEX "Crop_name_key" ON "Crop"("name");

-- CreateIndex
CREATE INDEX "CropFact_cropId_kind_idx" ON "CropFact"("cropId", "kind");

-- CreateIndex
CREATE INDEX "GerminationMethod_cropId_idx" ON "GerminationMethod"("cropId");

-- CreateIndex
CREATE UNIQUE INDEX "Accession_number_key" ON "Accession"("number");

-- CreateIndex
CREATE INDEX "Accession_cropId_name_idx" ON "Accession"("cropId", "name");

-- CreateIndex
CREATE INDEX "Accession_name_idx" ON "Accession"("name");

-- CreateIndex
CREATE UNIQUE INDEX "Lot_number_key" ON "Lot"("number");

-- CreateIndex
CREATE INDEX "Lot_accessionId_idx" ON "Lot"("accessionId");

-- CreateIndex
CREATE INDEX "Lot_harvestedOn_idx" ON "Lot"("harvestedOn");

-- CreateIndex
CREATE UNIQUE INDEX "Packet_number_key" ON "Packet"("number");

-- CreateIndex
CREATE INDEX "Packet_lotId_idx" ON "Packet"("lotId");

-- CreateIndex
CREATE INDEX "Placement_packetId_from_idx" ON "Placement"("packetId", "from");

-- CreateIndex
CREATE INDEX "Placement_storeId_idx" ON "Placement"("storeId");

-- CreateIndex
CREATE UNIQUE INDEX "Movement_correctsId_key" ON "Movement"("correctsId");

-- CreateIndex
CREATE INDEX "Movement_packetId_on_idx" ON "Movement"("packetId", "on");

-- CreateIndex
CREATE UNIQUE INDEX "Store_name_key" ON "Store"("name");

-- CreateIndex
CREATE INDEX "Store_parentId_idx" ON "Store"("parentId");

-- CreateIndex
CREATE UNIQUE INDEX "GerminationTest_number_key" ON "GerminationTest"("number");

-- CreateIndex
CREATE UNIQUE INDEX "GerminationTest_correctsId_key" ON "GerminationTest"("correctsId");

-- CreateIndex
CREATE INDEX "GerminationTest_lotId_finishedOn_idx" ON "GerminationTest"("lotId", "finishedOn");

-- CreateIndex
CREATE INDEX "GerminationTest_finishedOn_idx" ON "GerminationTest"("finishedOn");

-- CreateIndex
CREATE INDEX "LotJudgement_accessionId_idx" ON "LotJudgement"("accessionId");

-- CreateIndex
CREATE INDEX "LotJudgement_lotNumber_idx" ON "LotJudgement"("lotNumber");

-- CreateIndex
CREATE INDEX "LotJudgement_accessionName_lotNumber_idx" ON "LotJudgement"("accessionName", "lotNumber");

-- CreateIndex
CREATE INDEX "LotJudgement_cropName_accessionName_idx" ON "LotJudgement"("cropName", "accessionName");

-- CreateIndex
CREATE INDEX "LotJudgement_cropId_lotNumber_idx" ON "LotJudgement"("cropId", "lotNumber");

-- CreateIndex
CREATE INDEX "LotJudgement_harvestedOn_idx" ON "LotJudgement"("harvestedOn");

-- CreateIndex
CREATE INDEX "LotJudgement_storeId_lotNumber_idx" ON "LotJudgement"("storeId", "lotNumber");

-- CreateIndex
CREATE INDEX "LotJudgement_urgency_idx" ON "LotJudgement"("urgency");

-- CreateIndex
CREATE INDEX "LotJudgement_testDueOn_idx" ON "LotJudgement"("testDueOn");

-- CreateIndex
CREATE INDEX "LotJudgement_chanceBelow_idx" ON "LotJudgement"("chanceBelow");

-- CreateIndex
CREATE INDEX "LotJudgement_seedsLeft_idx" ON "LotJudgement"("seedsLeft");

-- CreateIndex
CREATE INDEX "LotJudgement_viabilityMedian_idx" ON "LotJudgement"("viabilityMedian");

-- CreateIndex
CREATE INDEX "LotJudgement_searchText_idx" ON "LotJudgement"("searchText");

-- CreateIndex
CREATE INDEX "AccessionJudgement_accessionNumber_idx" ON "AccessionJudgement"("accessionNumber");

-- CreateIndex
CREATE INDEX "AccessionJudgement_accessionName_idx" ON "AccessionJudgement"("accessionName");

-- CreateIndex
CREATE INDEX "AccessionJudgement_cropName_accessionName_idx" ON "AccessionJudgement"("cropName", "accessionName");

-- CreateIndex
CREATE INDEX "AccessionJudgement_urgency_idx" ON "AccessionJudgement"("urgency");

-- CreateIndex
CREATE INDEX "AccessionJudgement_action_urgency_idx" ON "AccessionJudgement"("action", "urgency");

-- CreateIndex
CREATE INDEX "AccessionJudgement_cropId_urgency_idx" ON "AccessionJudgement"("cropId", "urgency");

-- CreateIndex
CREATE INDEX "AccessionJudgement_searchText_idx" ON "AccessionJudgement"("searchText");

-- CreateIndex
CREATE INDEX "RegrowDecision_accessionId_decidedAt_idx" ON "RegrowDecision"("accessionId", "decidedAt");

-- CreateIndex
CREATE INDEX "ImportJob_createdAt_idx" ON "ImportJob"("createdAt");

-- CreateIndex
CREATE INDEX "AuditEntry_entity_entityId_idx" ON "AuditEntry"("entity", "entityId");

-- CreateIndex
CREATE INDEX "AuditEntry_at_idx" ON "AuditEntry"("at");



-- Written by hand from here: rules that hold whoever writes.

-- A packet can never give more seed than it holds.
CREATE TRIGGER "Movement_never_overdraws" BEFORE INSERT ON "Movement"
WHEN (SELECT COALESCE(SUM("seeds"), 0) FROM "Movement" WHERE "packetId" = NEW."packetId") + NEW."seeds" < 0
BEGIN SELECT RAISE(ABORT, 'packet overdrawn'); END;

-- Append-only tables: a mistake is corrected by a further row.
CREATE TRIGGER "Movement_no_update" BEFORE UPDATE ON "Movement" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "Movement_no_delete" BEFORE DELETE ON "Movement" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "Placement_no_update" BEFORE UPDATE ON "Placement" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "Placement_no_delete" BEFORE DELETE ON "Placement" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "Reading_no_update" BEFORE UPDATE ON "Reading" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "Reading_no_delete" BEFORE DELETE ON "Reading" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "GerminationTest_no_update" BEFORE UPDATE ON "GerminationTest" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "GerminationTest_no_delete" BEFORE DELETE ON "GerminationTest" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "Replicate_no_update" BEFORE UPDATE ON "Replicate" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "Replicate_no_delete" BEFORE DELETE ON "Replicate" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "RegrowDecision_no_update" BEFORE UPDATE ON "RegrowDecision" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "RegrowDecision_no_delete" BEFORE DELETE ON "RegrowDecision" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "AuditEntry_no_update" BEFORE UPDATE ON "AuditEntry" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
CREATE TRIGGER "AuditEntry_no_delete" BEFORE DELETE ON "AuditEntry" BEGIN SELECT RAISE(ABORT, 'append-only'); END;
