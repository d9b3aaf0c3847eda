-- AlterTable
ALTER TABLE "day_rollup" ALTER COLUMN "facts" SET DATA TYPE TEXT;
