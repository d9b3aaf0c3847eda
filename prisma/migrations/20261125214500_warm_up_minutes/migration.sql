-- AlterTable
ALTER TABLE "plan_session" ADD COLUMN     "warm_up_minutes" INTEGER;
