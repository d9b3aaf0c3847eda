-- AlterTable
ALTER TABLE "plan" ADD COLUMN     "no_kit_weeks" DATE[];

-- AlterTable
ALTER TABLE "plan_item" ADD COLUMN     "no_kit_rung_id" UUID;

-- CreateTable
CREATE TABLE "plan_draft" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "by_id" UUID,
    "source" TEXT NOT NULL,
    "reason_id" UUID,
    "body" JSONB NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "used_at" TIMESTAMPTZ(3),
    "used_version" INTEGER,

    CONSTRAINT "plan_draft_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateIndex
CREATE INDEX "plan_draft_team_id_client_id_idx" ON "plan_draft"("team_id", "client_id");

-- AddForeignKey
ALTER TABLE "plan_item" ADD CONSTRAINT "plan_item_team_id_no_kit_rung_id_fkey" FOREIGN KEY ("team_id", "no_kit_rung_id") REFERENCES "rung"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "plan_draft" ADD CONSTRAINT "plan_draft_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "plan_draft" ADD CONSTRAINT "plan_draft_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "plan_draft" ADD CONSTRAINT "plan_draft_team_id_by_id_fkey" FOREIGN KEY ("team_id", "by_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
