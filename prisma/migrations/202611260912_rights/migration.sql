-- DropForeignKey
ALTER TABLE "erased" DROP CONSTRAINT "erased_team_id_fkey";

-- AlterTable
ALTER TABLE "consent" ADD COLUMN     "withdrawn_by" TEXT;

-- AlterTable
ALTER TABLE "team" ADD COLUMN     "retention_erases" BOOLEAN NOT NULL DEFAULT false,
ADD COLUMN     "retention_years" INTEGER NOT NULL DEFAULT 6;

-- DropTable
DROP TABLE "erased";

-- CreateTable
CREATE TABLE "erasure_ask" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "origin" TEXT NOT NULL,
    "by_id" UUID,
    "words" TEXT NOT NULL DEFAULT '',
    "receipt" TEXT NOT NULL,
    "asked_at" TIMESTAMPTZ(3) NOT NULL,
    "due_at" TIMESTAMPTZ(3) NOT NULL,
    "taken_back_at" TIMESTAMPTZ(3),

    CONSTRAINT "erasure_ask_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "erasure" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "receipt" TEXT NOT NULL,
    "origin" TEXT NOT NULL,
    "asked_at" TIMESTAMPTZ(3) NOT NULL,
    "erased_at" TIMESTAMPTZ(3) NOT NULL,
    "rows" JSONB NOT NULL,
    "files" INTEGER NOT NULL,
    "files_left" TEXT[],

    CONSTRAINT "erasure_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateIndex
CREATE INDEX "erasure_ask_team_id_client_id_idx" ON "erasure_ask"("team_id", "client_id");

-- CreateIndex
CREATE UNIQUE INDEX "erasure_ask_receipt_key" ON "erasure_ask"("receipt");

-- CreateIndex
CREATE UNIQUE INDEX "erasure_receipt_key" ON "erasure"("receipt");

-- CreateIndex
CREATE UNIQUE INDEX "erasure_team_id_client_id_key" ON "erasure"("team_id", "client_id");

-- CreateIndex
CREATE INDEX "audit_team_id_client_id_at_idx" ON "audit"("team_id", "client_id", "at");

-- AddForeignKey
ALTER TABLE "erasure_ask" ADD CONSTRAINT "erasure_ask_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "erasure_ask" ADD CONSTRAINT "erasure_ask_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "erasure_ask" ADD CONSTRAINT "erasure_ask_team_id_by_id_fkey" FOREIGN KEY ("team_id", "by_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "erasure" ADD CONSTRAINT "erasure_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;
