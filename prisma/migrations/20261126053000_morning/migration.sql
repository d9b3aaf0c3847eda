-- AlterTable
ALTER TABLE "coach_word" ADD COLUMN     "act_id" UUID;

-- AlterTable
ALTER TABLE "member" ADD COLUMN     "morning_mail" TEXT NOT NULL DEFAULT 'when-new',
ADD COLUMN     "morning_mail_hour" INTEGER NOT NULL DEFAULT 6;

-- AlterTable
ALTER TABLE "reason" ADD COLUMN     "known_on" DATE,
ADD COLUMN     "known_words" TEXT;

-- CreateTable
CREATE TABLE "reason_outcome" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "reason_id" UUID NOT NULL,
    "window_days" INTEGER NOT NULL,
    "outcome" TEXT NOT NULL,
    "evidence" JSONB NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "reason_outcome_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "kept_reply" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "by_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "text" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "retired_at" TIMESTAMPTZ(3),

    CONSTRAINT "kept_reply_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "client_move" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "from_id" UUID NOT NULL,
    "to_id" UUID NOT NULL,
    "by_id" UUID NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "client_move_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateIndex
CREATE UNIQUE INDEX "reason_outcome_team_id_reason_id_window_days_key" ON "reason_outcome"("team_id", "reason_id", "window_days");

-- CreateIndex
CREATE INDEX "client_move_team_id_client_id_idx" ON "client_move"("team_id", "client_id");

-- CreateIndex
CREATE UNIQUE INDEX "team_settings_team_id_version_key" ON "team_settings"("team_id", "version");

-- AddForeignKey
ALTER TABLE "reason_outcome" ADD CONSTRAINT "reason_outcome_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "reason_outcome" ADD CONSTRAINT "reason_outcome_team_id_reason_id_fkey" FOREIGN KEY ("team_id", "reason_id") REFERENCES "reason"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "kept_reply" ADD CONSTRAINT "kept_reply_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "kept_reply" ADD CONSTRAINT "kept_reply_team_id_by_id_fkey" FOREIGN KEY ("team_id", "by_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "client_move" ADD CONSTRAINT "client_move_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "client_move" ADD CONSTRAINT "client_move_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "client_move" ADD CONSTRAINT "client_move_team_id_from_id_fkey" FOREIGN KEY ("team_id", "from_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "client_move" ADD CONSTRAINT "client_move_team_id_to_id_fkey" FOREIGN KEY ("team_id", "to_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "client_move" ADD CONSTRAINT "client_move_team_id_by_id_fkey" FOREIGN KEY ("team_id", "by_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
