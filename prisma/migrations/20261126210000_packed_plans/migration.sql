-- A plan with its sessions and lines as one text beside the rows: a night reads it so. lib/db/sql/functions.sql fills it.
ALTER TABLE "plan" ADD COLUMN "packed" TEXT;
