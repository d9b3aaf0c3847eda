-- AlterTable
ALTER TABLE "question_still" ADD COLUMN     "at_seconds" DOUBLE PRECISION,
ADD COLUMN     "clip_id" UUID,
ALTER COLUMN "question_id" DROP NOT NULL;

-- CreateTable
CREATE TABLE "set_verdict" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "clip_id" UUID NOT NULL,
    "by_id" UUID NOT NULL,
    "check_in_id" UUID,
    "rung_id" UUID NOT NULL,
    "side" TEXT NOT NULL,
    "idx" INTEGER,
    "verdict" TEXT NOT NULL,
    "faults" TEXT[],
    "at" TIMESTAMPTZ(3) NOT NULL,
    "undone_at" TIMESTAMPTZ(3),

    CONSTRAINT "set_verdict_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateIndex
CREATE INDEX "set_verdict_team_id_clip_id_idx" ON "set_verdict"("team_id", "clip_id");

-- CreateIndex
CREATE INDEX "set_verdict_team_id_check_in_id_idx" ON "set_verdict"("team_id", "check_in_id");

-- CreateIndex
CREATE INDEX "set_verdict_team_id_client_id_idx" ON "set_verdict"("team_id", "client_id");

-- CreateIndex
CREATE INDEX "question_still_team_id_client_id_idx" ON "question_still"("team_id", "client_id");

-- AddForeignKey
ALTER TABLE "question_still" ADD CONSTRAINT "question_still_team_id_clip_id_fkey" FOREIGN KEY ("team_id", "clip_id") REFERENCES "clip"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "set_verdict" ADD CONSTRAINT "set_verdict_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "set_verdict" ADD CONSTRAINT "set_verdict_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "set_verdict" ADD CONSTRAINT "set_verdict_team_id_clip_id_fkey" FOREIGN KEY ("team_id", "clip_id") REFERENCES "clip"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "set_verdict" ADD CONSTRAINT "set_verdict_team_id_by_id_fkey" FOREIGN KEY ("team_id", "by_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "set_verdict" ADD CONSTRAINT "set_verdict_team_id_check_in_id_fkey" FOREIGN KEY ("team_id", "check_in_id") REFERENCES "check_in"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "set_verdict" ADD CONSTRAINT "set_verdict_team_id_rung_id_fkey" FOREIGN KEY ("team_id", "rung_id") REFERENCES "rung"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- A still belongs to a question or to a clip.
ALTER TABLE "question_still" ADD CONSTRAINT "question_still_of_one" CHECK (num_nonnulls("question_id", "clip_id") = 1);
