-- The key also says whether the night is done and how often it was tried: nights behind a client and nights owed are then
-- counted in the index alone.
CREATE UNIQUE INDEX "night_client_by_key" ON "night_client" ("team_id", "client_id", "local_date") INCLUDE ("done_at", "attempts");
ALTER TABLE "night_client" DROP CONSTRAINT "night_client_pkey",
  ADD CONSTRAINT "night_client_pkey" PRIMARY KEY USING INDEX "night_client_by_key";
