-- CreateTable
CREATE TABLE "start_tests" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "by_id" UUID NOT NULL,
    "aims" JSONB NOT NULL,
    "kit" TEXT[],
    "under18_allowed" BOOLEAN NOT NULL DEFAULT false,
    "tests" JSONB NOT NULL,
    "words" TEXT NOT NULL DEFAULT '',
    "asked_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "answers" JSONB NOT NULL DEFAULT '[]',
    "moved_at" TIMESTAMPTZ(3),
    "done_at" TIMESTAMPTZ(3),
    "ended_at" TIMESTAMPTZ(3),
    "placed_at" TIMESTAMPTZ(3),
    "placed" JSONB,

    CONSTRAINT "start_tests_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateIndex
CREATE INDEX "start_tests_team_id_client_id_idx" ON "start_tests"("team_id", "client_id");

-- AddForeignKey
ALTER TABLE "start_tests" ADD CONSTRAINT "start_tests_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "start_tests" ADD CONSTRAINT "start_tests_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "start_tests" ADD CONSTRAINT "start_tests_team_id_by_id_fkey" FOREIGN KEY ("team_id", "by_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
