-- Parents and guardians who agreed on the phone of a client under 18 before they had a link of their own: what they gave
-- still holds, and so does the training. Named guardians without a decision get it, others are added by name.
UPDATE "guardian" SET "agreed_at" = k."given_at"
FROM "consent" k JOIN "client" c ON c."team_id" = k."team_id" AND c."id" = k."client_id" AND c."under18"
WHERE k."team_id" = "guardian"."team_id" AND k."client_id" = "guardian"."client_id" AND k."kind" = 'health-data'
  AND k."withdrawn_at" IS NULL AND k."given_by" = "guardian"."name" || ', parent or guardian'
  AND "guardian"."agreed_at" IS NULL;

INSERT INTO "guardian" ("team_id", "client_id", "name", "agreed_at", "created_at")
SELECT k."team_id", k."client_id", left(k."given_by", -length(', parent or guardian')), k."given_at", k."given_at"
FROM "consent" k JOIN "client" c ON c."team_id" = k."team_id" AND c."id" = k."client_id" AND c."under18"
WHERE k."kind" = 'health-data' AND k."withdrawn_at" IS NULL AND k."given_by" LIKE '_%, parent or guardian'
  AND NOT EXISTS (SELECT FROM "guardian" g WHERE g."team_id" = k."team_id" AND g."client_id" = k."client_id");
