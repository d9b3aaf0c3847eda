-- CreateTable
CREATE TABLE "question_still" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "question_id" UUID NOT NULL,
    "storage_key" TEXT NOT NULL,
    "width" INTEGER NOT NULL,
    "height" INTEGER NOT NULL,
    "bytes" INTEGER NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "question_still_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateIndex
CREATE INDEX "question_still_team_id_question_id_idx" ON "question_still"("team_id", "question_id");

-- CreateIndex
CREATE UNIQUE INDEX "question_still_storage_key_key" ON "question_still"("storage_key");

-- AddForeignKey
ALTER TABLE "question_still" ADD CONSTRAINT "question_still_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "question_still" ADD CONSTRAINT "question_still_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "question_still" ADD CONSTRAINT "question_still_team_id_question_id_fkey" FOREIGN KEY ("team_id", "question_id") REFERENCES "question"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;
