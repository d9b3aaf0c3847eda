-- AlterTable
ALTER TABLE "day_rollup" DROP COLUMN "tissue_loads";
