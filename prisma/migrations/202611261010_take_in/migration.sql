-- AlterTable
ALTER TABLE "handover_link" ADD COLUMN     "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
ADD COLUMN     "last_opened_at" TIMESTAMPTZ(3),
ADD COLUMN     "openings" INTEGER NOT NULL DEFAULT 0,
ADD COLUMN     "with_pack" BOOLEAN NOT NULL DEFAULT false,
ADD COLUMN     "wrong_codes" INTEGER NOT NULL DEFAULT 0;

-- AlterTable
ALTER TABLE "ladder" ADD COLUMN     "brought_from" TEXT;

-- AlterTable
ALTER TABLE "member" ADD COLUMN     "brought_from" TEXT;

-- CreateTable
CREATE TABLE "consent_elsewhere" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "to_team" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "text_version" TEXT NOT NULL,
    "given_at" TIMESTAMPTZ(3) NOT NULL,
    "withdrawn_at" TIMESTAMPTZ(3),
    "given_by" TEXT NOT NULL,
    "withdrawn_by" TEXT,

    CONSTRAINT "consent_elsewhere_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "taken_in" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "by_id" UUID NOT NULL,
    "source_client_id" UUID NOT NULL,
    "source_team" TEXT NOT NULL,
    "manifest_sha256" TEXT NOT NULL,
    "rows" JSONB NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "taken_in_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateIndex
CREATE INDEX "consent_elsewhere_team_id_client_id_idx" ON "consent_elsewhere"("team_id", "client_id");

-- CreateIndex
CREATE INDEX "taken_in_team_id_client_id_idx" ON "taken_in"("team_id", "client_id");

-- CreateIndex
CREATE UNIQUE INDEX "taken_in_team_id_source_client_id_key" ON "taken_in"("team_id", "source_client_id");

-- AddForeignKey
ALTER TABLE "consent_elsewhere" ADD CONSTRAINT "consent_elsewhere_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "consent_elsewhere" ADD CONSTRAINT "consent_elsewhere_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "taken_in" ADD CONSTRAINT "taken_in_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "taken_in" ADD CONSTRAINT "taken_in_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "taken_in" ADD CONSTRAINT "taken_in_team_id_by_id_fkey" FOREIGN KEY ("team_id", "by_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
