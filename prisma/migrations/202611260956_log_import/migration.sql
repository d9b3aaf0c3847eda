-- AlterTable
ALTER TABLE "check_in" ADD COLUMN     "log_import_id" UUID;

-- CreateTable
CREATE TABLE "log_import" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "by_id" UUID NOT NULL,
    "days" INTEGER NOT NULL,
    "sets" INTEGER NOT NULL,
    "from_date" DATE NOT NULL,
    "to_date" DATE NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL,
    "undone_at" TIMESTAMPTZ(3),

    CONSTRAINT "log_import_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateIndex
CREATE INDEX "log_import_team_id_client_id_idx" ON "log_import"("team_id", "client_id");

-- CreateIndex
CREATE INDEX "check_in_team_id_log_import_id_idx" ON "check_in"("team_id", "log_import_id");

-- AddForeignKey
ALTER TABLE "check_in" ADD CONSTRAINT "check_in_team_id_log_import_id_fkey" FOREIGN KEY ("team_id", "log_import_id") REFERENCES "log_import"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "log_import" ADD CONSTRAINT "log_import_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "log_import" ADD CONSTRAINT "log_import_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "log_import" ADD CONSTRAINT "log_import_team_id_by_id_fkey" FOREIGN KEY ("team_id", "by_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
