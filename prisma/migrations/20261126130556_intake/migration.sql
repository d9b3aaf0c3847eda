-- AlterTable
ALTER TABLE "clinician_word" ADD COLUMN     "clinician" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "lifts" BOOLEAN NOT NULL DEFAULT false,
ADD COLUMN     "told" TEXT;

-- AlterTable
ALTER TABLE "drill" ADD COLUMN     "upside_down" BOOLEAN NOT NULL DEFAULT false;

-- AlterTable
ALTER TABLE "guardian" ADD COLUMN     "declined_at" TIMESTAMPTZ(3),
ADD COLUMN     "text_version" TEXT,
ADD COLUMN     "withdrawn_at" TIMESTAMPTZ(3);

-- AlterTable
ALTER TABLE "intake" ADD COLUMN     "changes" JSONB NOT NULL DEFAULT '[]',
ADD COLUMN     "draft" JSONB,
ADD COLUMN     "draft_at" TIMESTAMPTZ(3),
ADD COLUMN     "sent_key" UUID;

-- AlterTable
ALTER TABLE "limit_rule" ADD COLUMN     "told" TEXT;

-- Drills that teams copied from the starter library, by the keys of their rungs.
UPDATE "drill" SET "upside_down" = true FROM "rung"
WHERE "rung"."team_id" = "drill"."team_id" AND "rung"."drill_id" = "drill"."id" AND "rung"."key" IN (
  'W1.6', 'H1.1', 'H1.2', 'H1.3', 'H1.4', 'H1.5', 'H1.6', 'H1.7', 'H1.8', 'H2.2', 'H2.3', 'H2.4',
  'H2.5', 'H2.6', 'H2.7', 'H2.8', 'H3.1', 'H3.2', 'H3.3', 'H3.4', 'H3.5', 'H3.6', 'H4.1', 'H4.2',
  'H4.3', 'H4.4', 'H4.5', 'H4.6', 'H5.1', 'H5.2', 'H5.3', 'H5.4', 'H5.5', 'H5.6', 'H6.1', 'H6.2',
  'H6.3', 'H6.4', 'H6.5', 'H6.6', 'H6.7', 'PT.1', 'PT.2', 'PT.3', 'P2.1', 'P2.2', 'P2.3', 'P2.4',
  'P2.5', 'P3.1', 'P3.2', 'P3.3', 'P3.4', 'P3.5', 'P4.1', 'P4.2', 'P4.3', 'P4.4', 'P4.5', 'P4.6',
  'P4.7', 'P5.1', 'P5.2', 'P5.3', 'P5.4', 'U1.3', 'U1.4', 'U1.5', 'U1.6', 'U1.7', 'U1.8', 'U1.9',
  'U1.10', 'U2.1', 'U2.2', 'U2.3', 'U3.1', 'U3.2', 'U3.3', 'U3.4', 'U3.5', 'U3.6', 'OA.1', 'OA.2',
  'OA.3', 'OA.4', 'OA.5', 'OA.6', 'OA.7', 'OA.8', 'OA.9', 'OA.10', 'OA.11', 'OA.12', 'OA.13', 'LV.1',
  'LM.2', 'LM.4', 'LM.6', 'BK.2', 'BK.3', 'BK.4', 'BK.5', 'BK.6', 'BK.7', 'X3.1', 'X3.2', 'X3.3',
  'X3.4', 'X5.2', 'X5.3', 'X5.4'
);
