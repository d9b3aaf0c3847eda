-- CreateTable
CREATE TABLE "night_left_out" (
    "team_id" UUID NOT NULL,
    "client_id" UUID NOT NULL,
    "from_date" DATE NOT NULL,
    "to_date" DATE NOT NULL,
    "nights" INTEGER NOT NULL,
    "said_at" TIMESTAMPTZ(3) NOT NULL,

    CONSTRAINT "night_left_out_pkey" PRIMARY KEY ("team_id","client_id","from_date")
);

-- CreateIndex
CREATE INDEX "night_left_out_team_id_to_date_idx" ON "night_left_out"("team_id", "to_date");

-- AddForeignKey
ALTER TABLE "night_left_out" ADD CONSTRAINT "night_left_out_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "night_left_out" ADD CONSTRAINT "night_left_out_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;
