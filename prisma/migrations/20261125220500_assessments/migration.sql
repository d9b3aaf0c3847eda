-- CreateTable
CREATE TABLE "assessment" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "by_id" UUID NOT NULL,
    "skill_id" UUID NOT NULL,
    "on_date" DATE NOT NULL,
    "answers" JSONB NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "assessment_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateIndex
CREATE INDEX "assessment_team_id_client_id_idx" ON "assessment"("team_id", "client_id");

-- AddForeignKey
ALTER TABLE "assessment" ADD CONSTRAINT "assessment_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "assessment" ADD CONSTRAINT "assessment_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "assessment" ADD CONSTRAINT "assessment_team_id_by_id_fkey" FOREIGN KEY ("team_id", "by_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "assessment" ADD CONSTRAINT "assessment_team_id_skill_id_fkey" FOREIGN KEY ("team_id", "skill_id") REFERENCES "skill"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
