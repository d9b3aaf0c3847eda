-- AlterTable
ALTER TABLE "clip" ADD COLUMN     "angle" TEXT,
ADD COLUMN     "codec" TEXT,
ADD COLUMN     "content_type" TEXT,
ADD COLUMN     "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
ADD COLUMN     "filmed_on" DATE,
ADD COLUMN     "fps" DOUBLE PRECISION,
ADD COLUMN     "height" INTEGER,
ADD COLUMN     "keep_until" DATE,
ADD COLUMN     "kind" TEXT NOT NULL DEFAULT 'clip',
ADD COLUMN     "looked_by_id" UUID,
ADD COLUMN     "piece_at" TIMESTAMPTZ(3),
ADD COLUMN     "pinned_at" TIMESTAMPTZ(3),
ADD COLUMN     "refused_why" TEXT,
ADD COLUMN     "rung_id" UUID,
ADD COLUMN     "set_id" UUID,
ADD COLUMN     "side" TEXT,
ADD COLUMN     "sound" BOOLEAN NOT NULL DEFAULT false,
ADD COLUMN     "upload_length" INTEGER NOT NULL DEFAULT 0,
ADD COLUMN     "upload_offset" INTEGER NOT NULL DEFAULT 0,
ADD COLUMN     "width" INTEGER,
ADD COLUMN     "writing_until" TIMESTAMPTZ(3),
ALTER COLUMN "received_at" DROP NOT NULL,
ALTER COLUMN "received_at" DROP DEFAULT;

-- A clip so far answers a request and takes its drill, side and angle from it.
UPDATE "clip" c SET "rung_id" = f."rung_id", "side" = f."side", "angle" = f."angle", "filmed_on" = c."received_at"::date,
  "upload_length" = c."bytes", "upload_offset" = c."bytes", "created_at" = c."received_at"
FROM "film_request" f WHERE f."team_id" = c."team_id" AND f."id" = c."request_id";

-- AlterTable
ALTER TABLE "clip" ALTER COLUMN "rung_id" SET NOT NULL,
ALTER COLUMN "side" SET NOT NULL,
ALTER COLUMN "filmed_on" SET NOT NULL;

-- AlterTable
ALTER TABLE "coach_word" ADD COLUMN     "at_seconds" DOUBLE PRECISION,
ADD COLUMN     "clip_id" UUID;

-- AlterTable
ALTER TABLE "film_request" ADD COLUMN     "taken_back_at" TIMESTAMPTZ(3);

-- AlterTable
ALTER TABLE "still_frame" ADD COLUMN     "at_seconds" DOUBLE PRECISION;

-- AlterTable
ALTER TABLE "team" ADD COLUMN     "clip_keep_days" INTEGER NOT NULL DEFAULT 180;

-- CreateIndex
CREATE INDEX "clip_team_id_client_id_idx" ON "clip"("team_id", "client_id");

-- CreateIndex
CREATE INDEX "film_request_team_id_client_id_idx" ON "film_request"("team_id", "client_id");

-- AddForeignKey
ALTER TABLE "coach_word" ADD CONSTRAINT "coach_word_team_id_clip_id_fkey" FOREIGN KEY ("team_id", "clip_id") REFERENCES "clip"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "clip" ADD CONSTRAINT "clip_team_id_set_id_fkey" FOREIGN KEY ("team_id", "set_id") REFERENCES "check_in_set"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "clip" ADD CONSTRAINT "clip_team_id_rung_id_fkey" FOREIGN KEY ("team_id", "rung_id") REFERENCES "rung"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "clip" ADD CONSTRAINT "clip_team_id_looked_by_id_fkey" FOREIGN KEY ("team_id", "looked_by_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
