-- The days of a client's week as one text: a night reads a page for each week instead of one for each day.
-- lib/db/sql/functions.sql fills it, and keeps it from there on.
CREATE TABLE "week_rollup" (
    "team_id" UUID NOT NULL,
    "client_id" UUID NOT NULL,
    "week" DATE NOT NULL,
    "days" TEXT NOT NULL,

    CONSTRAINT "week_rollup_pkey" PRIMARY KEY ("team_id","client_id","week")
);
ALTER TABLE "week_rollup" ADD CONSTRAINT "week_rollup_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;
ALTER TABLE "week_rollup" ADD CONSTRAINT "week_rollup_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;
-- In line up to a page, as it is: unpacking would cost more than it saves.
ALTER TABLE "week_rollup" SET (toast_tuple_target = 8160);
