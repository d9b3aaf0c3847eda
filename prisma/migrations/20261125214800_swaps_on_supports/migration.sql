-- DropIndex
DROP INDEX "swap_team_id_rung_id_instead_id_tissue_key";

-- AlterTable
ALTER TABLE "swap" ADD COLUMN     "position" INTEGER NOT NULL DEFAULT 0,
ADD COLUMN     "support" TEXT NOT NULL DEFAULT '';

-- CreateIndex
CREATE UNIQUE INDEX "swap_team_id_rung_id_instead_id_tissue_support_key" ON "swap"("team_id", "rung_id", "instead_id", "tissue", "support");
