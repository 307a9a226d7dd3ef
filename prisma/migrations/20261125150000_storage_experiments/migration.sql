-- CreateTable
CREATE TABLE "StorageExperiment" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "species" TEXT NOT NULL,
    "cropId" TEXT,
    "notes" TEXT,
    "createdAt" DATETIME NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "byId" TEXT NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "StorageExperiment_cropId_fkey" FOREIGN KEY ("cropId") REFERENCES "Crop" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "StorageExperimentRow" (
    "experimentId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "lot" TEXT NOT NULL,
    "moisturePercent" REAL,
    "temperatureC" REAL,
    "days" REAL NOT NULL,
    "sown" INTEGER NOT NULL,
    "germinated" INTEGER NOT NULL,

    PRIMARY KEY ("experimentId", "position"),
    CONSTRAINT "StorageExperimentRow_experimentId_fkey" FOREIGN KEY ("experimentId") REFERENCES "StorageExperiment" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "StorageExperiment_name_key" ON "StorageExperiment"("name");

-- CreateIndex
CREATE INDEX "StorageExperiment_cropId_idx" ON "StorageExperiment"("cropId");
