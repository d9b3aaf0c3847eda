-- AlterTable
ALTER TABLE "approval" ADD COLUMN     "act_id" UUID,
ADD COLUMN     "context" JSONB NOT NULL DEFAULT '{}',
ADD COLUMN     "words" TEXT NOT NULL DEFAULT '';

-- AlterTable
ALTER TABLE "client_move" ADD COLUMN     "read_at" TIMESTAMPTZ(3);

-- CreateTable
CREATE TABLE "member_invitation" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "by_id" UUID NOT NULL,
    "role" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "token_hash" TEXT NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "withdrawn_at" TIMESTAMPTZ(3),
    "used_at" TIMESTAMPTZ(3),
    "member_id" UUID,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "member_invitation_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "standing_change" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "by_id" UUID NOT NULL,
    "before" TEXT NOT NULL,
    "after" TEXT NOT NULL,
    "from_date" DATE NOT NULL,
    "why" TEXT NOT NULL DEFAULT '',
    "behind" JSONB NOT NULL DEFAULT '{}',
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "applied_at" TIMESTAMPTZ(3),
    "undone_at" TIMESTAMPTZ(3),

    CONSTRAINT "standing_change_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateIndex
CREATE UNIQUE INDEX "member_invitation_token_hash_key" ON "member_invitation"("token_hash");

-- CreateIndex
CREATE INDEX "standing_change_team_id_client_id_idx" ON "standing_change"("team_id", "client_id");

-- AddForeignKey
ALTER TABLE "member_invitation" ADD CONSTRAINT "member_invitation_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "member_invitation" ADD CONSTRAINT "member_invitation_team_id_by_id_fkey" FOREIGN KEY ("team_id", "by_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "member_invitation" ADD CONSTRAINT "member_invitation_team_id_member_id_fkey" FOREIGN KEY ("team_id", "member_id") REFERENCES "member"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "standing_change" ADD CONSTRAINT "standing_change_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "standing_change" ADD CONSTRAINT "standing_change_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "standing_change" ADD CONSTRAINT "standing_change_team_id_by_id_fkey" FOREIGN KEY ("team_id", "by_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;
