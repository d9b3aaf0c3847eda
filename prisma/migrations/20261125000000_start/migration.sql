-- CreateTable
CREATE TABLE "user" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "name" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "email_verified" BOOLEAN NOT NULL DEFAULT false,
    "image" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "user_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "session" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "user_id" UUID NOT NULL,
    "token" TEXT NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "ip_address" TEXT,
    "user_agent" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "session_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "account" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "user_id" UUID NOT NULL,
    "account_id" TEXT NOT NULL,
    "provider_id" TEXT NOT NULL,
    "access_token" TEXT,
    "refresh_token" TEXT,
    "id_token" TEXT,
    "access_token_expires_at" TIMESTAMPTZ(3),
    "refresh_token_expires_at" TIMESTAMPTZ(3),
    "scope" TEXT,
    "password" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "account_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "verification" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "identifier" TEXT NOT NULL,
    "value" TEXT NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "verification_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "rate_limit" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "key" TEXT NOT NULL,
    "count" INTEGER NOT NULL,
    "last_request" BIGINT NOT NULL DEFAULT 0,

    CONSTRAINT "rate_limit_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "check_in" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "corrects_id" UUID,
    "body_hash" TEXT NOT NULL,
    "date" DATE NOT NULL,
    "zone" TEXT NOT NULL,
    "started_at" TIMESTAMPTZ(3),
    "sent_at" TIMESTAMPTZ(3) NOT NULL,
    "received_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "kind" TEXT NOT NULL,
    "session" TEXT,
    "plan_version" INTEGER,
    "effort" INTEGER,
    "minutes" INTEGER,
    "ground" TEXT,
    "sleep_hours" DOUBLE PRECISION,
    "nothing_hurts" BOOLEAN NOT NULL DEFAULT false,
    "words" TEXT NOT NULL DEFAULT '',
    "replaced_at" TIMESTAMPTZ(3),
    "deleted_at" TIMESTAMPTZ(3),

    CONSTRAINT "check_in_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "check_in_set" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "check_in_id" UUID NOT NULL,
    "client_id" UUID NOT NULL,
    "rung_id" UUID NOT NULL,
    "side" TEXT NOT NULL,
    "idx" INTEGER NOT NULL,
    "planned" DOUBLE PRECISION,
    "value" DOUBLE PRECISION,
    "tried" INTEGER,
    "how" TEXT NOT NULL,
    "clean" BOOLEAN NOT NULL DEFAULT true,
    "faults" TEXT[],
    "support" TEXT,
    "added_kg" DOUBLE PRECISION,

    CONSTRAINT "check_in_set_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "pain_score" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "check_in_id" UUID NOT NULL,
    "client_id" UUID NOT NULL,
    "region" TEXT NOT NULL,
    "side" TEXT NOT NULL,
    "moment" TEXT NOT NULL,
    "value" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "usual" BOOLEAN,

    CONSTRAINT "pain_score_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "danger_sign_told" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "check_in_id" UUID NOT NULL,
    "client_id" UUID NOT NULL,
    "sign" TEXT NOT NULL,
    "gone_within_minute" BOOLEAN NOT NULL DEFAULT false,
    "region" TEXT,
    "side" TEXT,

    CONSTRAINT "danger_sign_told_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "question" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "check_in_id" UUID,
    "text" TEXT NOT NULL,
    "asked_at" TIMESTAMPTZ(3) NOT NULL,
    "answered_at" TIMESTAMPTZ(3),

    CONSTRAINT "question_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "answer" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "question_id" UUID NOT NULL,
    "by_id" UUID NOT NULL,
    "text" TEXT NOT NULL,
    "kept_for_reuse" BOOLEAN NOT NULL DEFAULT false,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "answer_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "coach_word" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "by_id" UUID NOT NULL,
    "check_in_id" UUID,
    "set_id" UUID,
    "text" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "read_at" TIMESTAMPTZ(3),

    CONSTRAINT "coach_word_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "seen_mark" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "by_id" UUID NOT NULL,
    "check_in_id" UUID,
    "at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "seen_mark_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "film_request" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "by_id" UUID NOT NULL,
    "rung_id" UUID NOT NULL,
    "side" TEXT NOT NULL,
    "angle" TEXT NOT NULL,
    "words" TEXT NOT NULL DEFAULT '',
    "by_date" DATE,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "done_at" TIMESTAMPTZ(3),

    CONSTRAINT "film_request_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "clip" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "request_id" UUID,
    "check_in_id" UUID,
    "storage_key" TEXT NOT NULL,
    "seconds" DOUBLE PRECISION,
    "bytes" INTEGER NOT NULL,
    "state" TEXT NOT NULL,
    "verdict" TEXT,
    "faults" TEXT[],
    "received_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "looked_at" TIMESTAMPTZ(3),

    CONSTRAINT "clip_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "still_frame" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "clip_id" UUID,
    "storage_key" TEXT,
    "joints" JSONB NOT NULL,
    "vertical" JSONB NOT NULL,
    "scale" JSONB NOT NULL,
    "mass_model" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "still_frame_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "client" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "user_id" UUID,
    "coach_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "email" TEXT,
    "zone" TEXT NOT NULL,
    "standing" TEXT NOT NULL DEFAULT 'invited',
    "under18" BOOLEAN NOT NULL DEFAULT false,
    "birth_year" INTEGER,
    "body_mass_kg" DOUBLE PRECISION,
    "told_week_au" DOUBLE PRECISION,
    "goal" TEXT NOT NULL DEFAULT '',
    "usual_session_minutes" INTEGER,
    "invited_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "joined_at" TIMESTAMPTZ(3),
    "left_at" TIMESTAMPTZ(3),
    "note" TEXT NOT NULL DEFAULT '',
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "client_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "entry_link" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID,
    "member_id" UUID,
    "guardian_id" UUID,
    "token_hash" TEXT NOT NULL,
    "purpose" TEXT NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "used_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "entry_link_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "guardian" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "user_id" UUID,
    "name" TEXT NOT NULL,
    "email" TEXT,
    "agreed_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "guardian_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "intake" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "answers" JSONB NOT NULL,
    "completed_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "intake_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "consent" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "text_version" TEXT NOT NULL,
    "given_at" TIMESTAMPTZ(3) NOT NULL,
    "withdrawn_at" TIMESTAMPTZ(3),
    "given_by" TEXT NOT NULL,

    CONSTRAINT "consent_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "limit_rule" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "tissue" TEXT,
    "region" TEXT,
    "side" TEXT,
    "rule" TEXT NOT NULL,
    "percent" DOUBLE PRECISION,
    "from_date" DATE NOT NULL,
    "until_date" DATE,
    "who" TEXT NOT NULL,
    "words" TEXT NOT NULL DEFAULT '',
    "ended_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "limit_rule_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "clinician_word" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "by_id" UUID,
    "date" DATE NOT NULL,
    "region" TEXT,
    "side" TEXT,
    "words" TEXT NOT NULL,
    "review_on" DATE,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "clinician_word_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "absence" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "from_date" DATE NOT NULL,
    "to_date" DATE,
    "said_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "absence_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "private_note" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "by_id" UUID NOT NULL,
    "text" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "private_note_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "goal" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "skill_id" UUID NOT NULL,
    "wanted_by" DATE,
    "from_date" DATE NOT NULL,
    "ended_on" DATE,

    CONSTRAINT "goal_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "skill" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "key" TEXT,
    "name" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "retired_at" TIMESTAMPTZ(3),

    CONSTRAINT "skill_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "part" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "skill_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "retired_at" TIMESTAMPTZ(3),

    CONSTRAINT "part_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "ladder" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "part_id" UUID NOT NULL,
    "key" TEXT,
    "name" TEXT NOT NULL,
    "family" TEXT NOT NULL,
    "clean" TEXT NOT NULL,
    "faults" TEXT[],
    "openings" JSONB NOT NULL DEFAULT '[]',
    "position" INTEGER NOT NULL,
    "retired_at" TIMESTAMPTZ(3),

    CONSTRAINT "ladder_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "drill" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "ladder_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "family" TEXT,
    "measure" TEXT NOT NULL,
    "each_side" BOOLEAN NOT NULL,
    "each_is_leg" BOOLEAN NOT NULL DEFAULT false,
    "seconds_per_rep" DOUBLE PRECISION,
    "share" DOUBLE PRECISION,
    "helping_share" DOUBLE PRECISION,
    "share_source" TEXT NOT NULL DEFAULT '',
    "weights" JSONB NOT NULL,
    "equipment" TEXT[],
    "camera" TEXT NOT NULL DEFAULT '',
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "drill_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "rung" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "ladder_id" UUID NOT NULL,
    "drill_id" UUID NOT NULL,
    "key" TEXT,
    "position" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "pass_sets" INTEGER NOT NULL,
    "pass_target" DOUBLE PRECISION NOT NULL,
    "pass_days" INTEGER NOT NULL,
    "pass_tries" INTEGER,
    "usual_weeks" DOUBLE PRECISION NOT NULL,
    "needs_film" BOOLEAN NOT NULL DEFAULT false,
    "note" TEXT NOT NULL DEFAULT '',
    "retired_at" TIMESTAMPTZ(3),

    CONSTRAINT "rung_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "support_profile" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "key" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "wrist_back_factor" DOUBLE PRECISION NOT NULL,
    "wrist_forward_factor" DOUBLE PRECISION NOT NULL DEFAULT 1,
    "add" JSONB NOT NULL DEFAULT '{}',
    "results_count" BOOLEAN NOT NULL DEFAULT true,

    CONSTRAINT "support_profile_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "swap" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "rung_id" UUID NOT NULL,
    "instead_id" UUID NOT NULL,
    "tissue" TEXT NOT NULL,
    "why" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "swap_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "day_rollup" (
    "team_id" UUID NOT NULL,
    "client_id" UUID NOT NULL,
    "date" DATE NOT NULL,
    "state" TEXT NOT NULL,
    "session_load_au" DOUBLE PRECISION,
    "tissue_loads" JSONB NOT NULL,
    "worst_pain" INTEGER,
    "check_ins" INTEGER NOT NULL,
    "facts" JSONB NOT NULL,

    CONSTRAINT "day_rollup_pkey" PRIMARY KEY ("team_id","client_id","date")
);

-- CreateTable
CREATE TABLE "reason" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "subject_key" TEXT NOT NULL,
    "subject" JSONB NOT NULL,
    "level" TEXT NOT NULL,
    "points" INTEGER NOT NULL,
    "tier" TEXT,
    "sentence" TEXT NOT NULL,
    "short" TEXT NOT NULL,
    "since" DATE NOT NULL,
    "step" JSONB NOT NULL,
    "clears" TEXT NOT NULL,
    "evidence" JSONB NOT NULL,
    "working" JSONB NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'open',
    "aside_until" DATE,
    "aside_until_worse" BOOLEAN NOT NULL DEFAULT false,
    "with_client_until" DATE,
    "clear_nights" INTEGER NOT NULL DEFAULT 0,
    "settings_version" INTEGER NOT NULL DEFAULT 0,
    "rules_version" TEXT NOT NULL,
    "raised_at" TIMESTAMPTZ(3) NOT NULL,
    "updated_at" TIMESTAMPTZ(3) NOT NULL,
    "closed_at" TIMESTAMPTZ(3),
    "closed_why" TEXT,
    "known_from" DATE,

    CONSTRAINT "reason_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "reason_event" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "reason_id" UUID NOT NULL,
    "by_id" UUID,
    "at" TIMESTAMPTZ(3) NOT NULL,
    "night" DATE,
    "what" TEXT NOT NULL,
    "level" TEXT,
    "body" JSONB NOT NULL DEFAULT '{}',

    CONSTRAINT "reason_event_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "verdict" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "reason_id" UUID NOT NULL,
    "by_id" UUID NOT NULL,
    "right_to_tell" BOOLEAN NOT NULL,
    "text" TEXT NOT NULL DEFAULT '',
    "at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "undone_at" TIMESTAMPTZ(3),

    CONSTRAINT "verdict_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "step_taken" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "reason_id" UUID,
    "by_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "ladder_id" UUID,
    "side" TEXT,
    "words" TEXT NOT NULL DEFAULT '',
    "taken_on" DATE NOT NULL,
    "review_on" DATE,
    "plan_version" INTEGER,
    "undone_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "step_taken_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "step_outcome" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "step_id" UUID NOT NULL,
    "window_days" INTEGER NOT NULL,
    "outcome" TEXT NOT NULL,
    "evidence" JSONB NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "step_outcome_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "night_run" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "local_date" DATE NOT NULL,
    "started_at" TIMESTAMPTZ(3) NOT NULL,
    "finished_at" TIMESTAMPTZ(3),
    "clients_due" INTEGER NOT NULL,
    "clients_done" INTEGER NOT NULL DEFAULT 0,
    "clients_failed" INTEGER NOT NULL DEFAULT 0,
    "rules_version" TEXT NOT NULL,

    CONSTRAINT "night_run_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "night_client" (
    "team_id" UUID NOT NULL,
    "client_id" UUID NOT NULL,
    "local_date" DATE NOT NULL,
    "done_at" TIMESTAMPTZ(3),
    "failed_at" TIMESTAMPTZ(3),
    "failure" TEXT,
    "attempts" INTEGER NOT NULL DEFAULT 0,
    "findings" JSONB NOT NULL DEFAULT '[]',
    "settings_version" INTEGER NOT NULL DEFAULT 0,
    "rules_version" TEXT NOT NULL,

    CONSTRAINT "night_client_pkey" PRIMARY KEY ("team_id","client_id","local_date")
);

-- CreateTable
CREATE TABLE "outbox" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "kind" TEXT NOT NULL,
    "client_id" UUID,
    "dedupe_key" TEXT NOT NULL,
    "body" JSONB NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "sent_at" TIMESTAMPTZ(3),
    "attempts" INTEGER NOT NULL DEFAULT 0,
    "last_error" TEXT,

    CONSTRAINT "outbox_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "audit" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "actor_user_id" UUID,
    "actor_role" TEXT NOT NULL,
    "action" TEXT NOT NULL,
    "client_id" UUID,
    "object_id" TEXT,
    "fields" TEXT[],
    "from_address" TEXT,

    CONSTRAINT "audit_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "handover_pack" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "by_id" UUID NOT NULL,
    "why" TEXT NOT NULL DEFAULT '',
    "options" JSONB NOT NULL,
    "sha256" TEXT,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "handover_pack_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "handover_link" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "pack_id" UUID NOT NULL,
    "token_hash" TEXT NOT NULL,
    "code_hash" TEXT NOT NULL,
    "for_whom" TEXT NOT NULL,
    "expires_at" TIMESTAMPTZ(3) NOT NULL,
    "revoked_at" TIMESTAMPTZ(3),

    CONSTRAINT "handover_link_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "erased" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "receipt" TEXT NOT NULL,

    CONSTRAINT "erased_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "plan" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "by_id" UUID,
    "version" INTEGER NOT NULL,
    "from_date" DATE NOT NULL,
    "until_date" DATE,
    "sessions_per_week" INTEGER NOT NULL,
    "notes" TEXT NOT NULL DEFAULT '',
    "why" TEXT NOT NULL DEFAULT '',
    "easy_weeks" DATE[],
    "test_weeks" DATE[],
    "accepted_week_au" DOUBLE PRECISION,
    "skills_in_focus" TEXT[],
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "plan_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "plan_session" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "plan_id" UUID NOT NULL,
    "label" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "rest_seconds" INTEGER,
    "warm_up" TEXT NOT NULL DEFAULT '',
    "minutes" INTEGER,

    CONSTRAINT "plan_session_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "plan_item" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "session_id" UUID NOT NULL,
    "rung_id" UUID NOT NULL,
    "side" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "sets" INTEGER NOT NULL,
    "target" DOUBLE PRECISION,
    "minutes" DOUBLE PRECISION,
    "times_per_week" DOUBLE PRECISION NOT NULL,
    "support" TEXT,
    "stop_rule" TEXT NOT NULL DEFAULT '',
    "not_two_days_running" BOOLEAN NOT NULL DEFAULT false,
    "paired_with_id" UUID,

    CONSTRAINT "plan_item_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "plan_template" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "name" TEXT NOT NULL,
    "body" JSONB NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "plan_template_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "placement" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "client_id" UUID NOT NULL,
    "ladder_id" UUID NOT NULL,
    "rung_id" UUID NOT NULL,
    "side" TEXT NOT NULL,
    "from_date" DATE NOT NULL,
    "why" TEXT NOT NULL DEFAULT '',
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "placement_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "team" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "name" TEXT NOT NULL,
    "answering_hours" JSONB NOT NULL DEFAULT '{}',
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "team_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "member" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "user_id" UUID NOT NULL,
    "role" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "zone" TEXT NOT NULL,
    "left_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "member_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "member_leave" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "member_id" UUID NOT NULL,
    "act" TEXT NOT NULL,

    CONSTRAINT "member_leave_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "approval" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "prepared_by_id" UUID NOT NULL,
    "decided_by_id" UUID,
    "client_id" UUID NOT NULL,
    "act" TEXT NOT NULL,
    "body" JSONB NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'waiting',
    "prepared_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "decided_at" TIMESTAMPTZ(3),

    CONSTRAINT "approval_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "cover" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "member_id" UUID NOT NULL,
    "covered_by_id" UUID NOT NULL,
    "from_date" DATE NOT NULL,
    "to_date" DATE NOT NULL,

    CONSTRAINT "cover_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "team_settings" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "version" INTEGER NOT NULL,
    "client_id" UUID,
    "values" JSONB NOT NULL,
    "by_id" UUID,
    "why" TEXT NOT NULL DEFAULT '',
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "team_settings_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateTable
CREATE TABLE "saved_view" (
    "team_id" UUID NOT NULL,
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "member_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "query" TEXT NOT NULL,

    CONSTRAINT "saved_view_pkey" PRIMARY KEY ("team_id","id")
);

-- CreateIndex
CREATE UNIQUE INDEX "user_email_key" ON "user"("email");

-- CreateIndex
CREATE UNIQUE INDEX "session_token_key" ON "session"("token");

-- CreateIndex
CREATE UNIQUE INDEX "rate_limit_key_key" ON "rate_limit"("key");

-- CreateIndex
CREATE INDEX "check_in_team_id_client_id_date_idx" ON "check_in"("team_id", "client_id", "date");

-- CreateIndex
CREATE INDEX "check_in_set_team_id_client_id_idx" ON "check_in_set"("team_id", "client_id");

-- CreateIndex
CREATE UNIQUE INDEX "check_in_set_team_id_check_in_id_rung_id_side_idx_key" ON "check_in_set"("team_id", "check_in_id", "rung_id", "side", "idx");

-- CreateIndex
CREATE INDEX "pain_score_team_id_client_id_idx" ON "pain_score"("team_id", "client_id");

-- CreateIndex
CREATE UNIQUE INDEX "pain_score_team_id_check_in_id_region_side_moment_key" ON "pain_score"("team_id", "check_in_id", "region", "side", "moment");

-- CreateIndex
CREATE UNIQUE INDEX "danger_sign_told_team_id_check_in_id_sign_key" ON "danger_sign_told"("team_id", "check_in_id", "sign");

-- CreateIndex
CREATE INDEX "question_team_id_client_id_idx" ON "question"("team_id", "client_id");

-- CreateIndex
CREATE INDEX "coach_word_team_id_client_id_idx" ON "coach_word"("team_id", "client_id");

-- CreateIndex
CREATE INDEX "seen_mark_team_id_client_id_at_idx" ON "seen_mark"("team_id", "client_id", "at");

-- CreateIndex
CREATE UNIQUE INDEX "clip_storage_key_key" ON "clip"("storage_key");

-- CreateIndex
CREATE INDEX "client_team_id_coach_id_idx" ON "client"("team_id", "coach_id");

-- CreateIndex
CREATE UNIQUE INDEX "client_team_id_user_id_key" ON "client"("team_id", "user_id");

-- CreateIndex
CREATE UNIQUE INDEX "entry_link_token_hash_key" ON "entry_link"("token_hash");

-- CreateIndex
CREATE UNIQUE INDEX "intake_team_id_client_id_key" ON "intake"("team_id", "client_id");

-- CreateIndex
CREATE INDEX "limit_rule_team_id_client_id_idx" ON "limit_rule"("team_id", "client_id");

-- CreateIndex
CREATE INDEX "clinician_word_team_id_client_id_idx" ON "clinician_word"("team_id", "client_id");

-- CreateIndex
CREATE INDEX "absence_team_id_client_id_idx" ON "absence"("team_id", "client_id");

-- CreateIndex
CREATE INDEX "private_note_team_id_client_id_idx" ON "private_note"("team_id", "client_id");

-- CreateIndex
CREATE UNIQUE INDEX "skill_team_id_key_key" ON "skill"("team_id", "key");

-- CreateIndex
CREATE UNIQUE INDEX "part_team_id_skill_id_name_key" ON "part"("team_id", "skill_id", "name");

-- CreateIndex
CREATE UNIQUE INDEX "ladder_team_id_key_key" ON "ladder"("team_id", "key");

-- CreateIndex
CREATE INDEX "rung_team_id_ladder_id_position_idx" ON "rung"("team_id", "ladder_id", "position");

-- CreateIndex
CREATE UNIQUE INDEX "rung_team_id_key_key" ON "rung"("team_id", "key");

-- CreateIndex
CREATE UNIQUE INDEX "support_profile_team_id_key_key" ON "support_profile"("team_id", "key");

-- CreateIndex
CREATE UNIQUE INDEX "swap_team_id_rung_id_instead_id_tissue_key" ON "swap"("team_id", "rung_id", "instead_id", "tissue");

-- CreateIndex
CREATE INDEX "reason_team_id_client_id_closed_at_idx" ON "reason"("team_id", "client_id", "closed_at");

-- CreateIndex
CREATE INDEX "reason_event_team_id_reason_id_idx" ON "reason_event"("team_id", "reason_id");

-- CreateIndex
CREATE INDEX "step_taken_team_id_client_id_idx" ON "step_taken"("team_id", "client_id");

-- CreateIndex
CREATE UNIQUE INDEX "step_outcome_team_id_step_id_window_days_key" ON "step_outcome"("team_id", "step_id", "window_days");

-- CreateIndex
CREATE UNIQUE INDEX "night_run_team_id_local_date_key" ON "night_run"("team_id", "local_date");

-- CreateIndex
CREATE UNIQUE INDEX "outbox_team_id_kind_dedupe_key_key" ON "outbox"("team_id", "kind", "dedupe_key");

-- CreateIndex
CREATE INDEX "audit_team_id_at_idx" ON "audit"("team_id", "at");

-- CreateIndex
CREATE UNIQUE INDEX "handover_link_token_hash_key" ON "handover_link"("token_hash");

-- CreateIndex
CREATE UNIQUE INDEX "plan_team_id_client_id_version_key" ON "plan"("team_id", "client_id", "version");

-- CreateIndex
CREATE UNIQUE INDEX "plan_session_team_id_plan_id_label_key" ON "plan_session"("team_id", "plan_id", "label");

-- CreateIndex
CREATE UNIQUE INDEX "plan_item_team_id_session_id_position_key" ON "plan_item"("team_id", "session_id", "position");

-- CreateIndex
CREATE UNIQUE INDEX "placement_team_id_client_id_ladder_id_side_from_date_key" ON "placement"("team_id", "client_id", "ladder_id", "side", "from_date");

-- CreateIndex
CREATE UNIQUE INDEX "member_team_id_user_id_key" ON "member"("team_id", "user_id");

-- CreateIndex
CREATE UNIQUE INDEX "member_leave_team_id_member_id_act_key" ON "member_leave"("team_id", "member_id", "act");

-- CreateIndex
CREATE UNIQUE INDEX "saved_view_team_id_member_id_name_key" ON "saved_view"("team_id", "member_id", "name");

-- AddForeignKey
ALTER TABLE "session" ADD CONSTRAINT "session_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "user"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "account" ADD CONSTRAINT "account_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "user"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "check_in" ADD CONSTRAINT "check_in_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "check_in" ADD CONSTRAINT "check_in_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "check_in" ADD CONSTRAINT "check_in_team_id_corrects_id_fkey" FOREIGN KEY ("team_id", "corrects_id") REFERENCES "check_in"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "check_in_set" ADD CONSTRAINT "check_in_set_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "check_in_set" ADD CONSTRAINT "check_in_set_team_id_check_in_id_fkey" FOREIGN KEY ("team_id", "check_in_id") REFERENCES "check_in"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "check_in_set" ADD CONSTRAINT "check_in_set_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "check_in_set" ADD CONSTRAINT "check_in_set_team_id_rung_id_fkey" FOREIGN KEY ("team_id", "rung_id") REFERENCES "rung"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "pain_score" ADD CONSTRAINT "pain_score_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "pain_score" ADD CONSTRAINT "pain_score_team_id_check_in_id_fkey" FOREIGN KEY ("team_id", "check_in_id") REFERENCES "check_in"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "pain_score" ADD CONSTRAINT "pain_score_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "danger_sign_told" ADD CONSTRAINT "danger_sign_told_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "danger_sign_told" ADD CONSTRAINT "danger_sign_told_team_id_check_in_id_fkey" FOREIGN KEY ("team_id", "check_in_id") REFERENCES "check_in"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "danger_sign_told" ADD CONSTRAINT "danger_sign_told_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "question" ADD CONSTRAINT "question_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "question" ADD CONSTRAINT "question_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "question" ADD CONSTRAINT "question_team_id_check_in_id_fkey" FOREIGN KEY ("team_id", "check_in_id") REFERENCES "check_in"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "answer" ADD CONSTRAINT "answer_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "answer" ADD CONSTRAINT "answer_team_id_question_id_fkey" FOREIGN KEY ("team_id", "question_id") REFERENCES "question"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "answer" ADD CONSTRAINT "answer_team_id_by_id_fkey" FOREIGN KEY ("team_id", "by_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "coach_word" ADD CONSTRAINT "coach_word_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "coach_word" ADD CONSTRAINT "coach_word_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "coach_word" ADD CONSTRAINT "coach_word_team_id_by_id_fkey" FOREIGN KEY ("team_id", "by_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "coach_word" ADD CONSTRAINT "coach_word_team_id_check_in_id_fkey" FOREIGN KEY ("team_id", "check_in_id") REFERENCES "check_in"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "coach_word" ADD CONSTRAINT "coach_word_team_id_set_id_fkey" FOREIGN KEY ("team_id", "set_id") REFERENCES "check_in_set"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "seen_mark" ADD CONSTRAINT "seen_mark_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "seen_mark" ADD CONSTRAINT "seen_mark_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "seen_mark" ADD CONSTRAINT "seen_mark_team_id_by_id_fkey" FOREIGN KEY ("team_id", "by_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "seen_mark" ADD CONSTRAINT "seen_mark_team_id_check_in_id_fkey" FOREIGN KEY ("team_id", "check_in_id") REFERENCES "check_in"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "film_request" ADD CONSTRAINT "film_request_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "film_request" ADD CONSTRAINT "film_request_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "film_request" ADD CONSTRAINT "film_request_team_id_by_id_fkey" FOREIGN KEY ("team_id", "by_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "film_request" ADD CONSTRAINT "film_request_team_id_rung_id_fkey" FOREIGN KEY ("team_id", "rung_id") REFERENCES "rung"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "clip" ADD CONSTRAINT "clip_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "clip" ADD CONSTRAINT "clip_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "clip" ADD CONSTRAINT "clip_team_id_request_id_fkey" FOREIGN KEY ("team_id", "request_id") REFERENCES "film_request"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "clip" ADD CONSTRAINT "clip_team_id_check_in_id_fkey" FOREIGN KEY ("team_id", "check_in_id") REFERENCES "check_in"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "still_frame" ADD CONSTRAINT "still_frame_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "still_frame" ADD CONSTRAINT "still_frame_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "still_frame" ADD CONSTRAINT "still_frame_team_id_clip_id_fkey" FOREIGN KEY ("team_id", "clip_id") REFERENCES "clip"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "client" ADD CONSTRAINT "client_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "client" ADD CONSTRAINT "client_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "user"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "client" ADD CONSTRAINT "client_team_id_coach_id_fkey" FOREIGN KEY ("team_id", "coach_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "entry_link" ADD CONSTRAINT "entry_link_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "entry_link" ADD CONSTRAINT "entry_link_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "entry_link" ADD CONSTRAINT "entry_link_team_id_member_id_fkey" FOREIGN KEY ("team_id", "member_id") REFERENCES "member"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "entry_link" ADD CONSTRAINT "entry_link_team_id_guardian_id_fkey" FOREIGN KEY ("team_id", "guardian_id") REFERENCES "guardian"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "guardian" ADD CONSTRAINT "guardian_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "guardian" ADD CONSTRAINT "guardian_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "guardian" ADD CONSTRAINT "guardian_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "user"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "intake" ADD CONSTRAINT "intake_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "intake" ADD CONSTRAINT "intake_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "consent" ADD CONSTRAINT "consent_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "consent" ADD CONSTRAINT "consent_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "limit_rule" ADD CONSTRAINT "limit_rule_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "limit_rule" ADD CONSTRAINT "limit_rule_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "clinician_word" ADD CONSTRAINT "clinician_word_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "clinician_word" ADD CONSTRAINT "clinician_word_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "clinician_word" ADD CONSTRAINT "clinician_word_team_id_by_id_fkey" FOREIGN KEY ("team_id", "by_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "absence" ADD CONSTRAINT "absence_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "absence" ADD CONSTRAINT "absence_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "private_note" ADD CONSTRAINT "private_note_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "private_note" ADD CONSTRAINT "private_note_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "private_note" ADD CONSTRAINT "private_note_team_id_by_id_fkey" FOREIGN KEY ("team_id", "by_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "goal" ADD CONSTRAINT "goal_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "goal" ADD CONSTRAINT "goal_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "goal" ADD CONSTRAINT "goal_team_id_skill_id_fkey" FOREIGN KEY ("team_id", "skill_id") REFERENCES "skill"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "skill" ADD CONSTRAINT "skill_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "part" ADD CONSTRAINT "part_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "part" ADD CONSTRAINT "part_team_id_skill_id_fkey" FOREIGN KEY ("team_id", "skill_id") REFERENCES "skill"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ladder" ADD CONSTRAINT "ladder_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "ladder" ADD CONSTRAINT "ladder_team_id_part_id_fkey" FOREIGN KEY ("team_id", "part_id") REFERENCES "part"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "drill" ADD CONSTRAINT "drill_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "drill" ADD CONSTRAINT "drill_team_id_ladder_id_fkey" FOREIGN KEY ("team_id", "ladder_id") REFERENCES "ladder"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "rung" ADD CONSTRAINT "rung_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "rung" ADD CONSTRAINT "rung_team_id_ladder_id_fkey" FOREIGN KEY ("team_id", "ladder_id") REFERENCES "ladder"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "rung" ADD CONSTRAINT "rung_team_id_drill_id_fkey" FOREIGN KEY ("team_id", "drill_id") REFERENCES "drill"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "support_profile" ADD CONSTRAINT "support_profile_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "swap" ADD CONSTRAINT "swap_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "swap" ADD CONSTRAINT "swap_team_id_rung_id_fkey" FOREIGN KEY ("team_id", "rung_id") REFERENCES "rung"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "swap" ADD CONSTRAINT "swap_team_id_instead_id_fkey" FOREIGN KEY ("team_id", "instead_id") REFERENCES "rung"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "day_rollup" ADD CONSTRAINT "day_rollup_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "day_rollup" ADD CONSTRAINT "day_rollup_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "reason" ADD CONSTRAINT "reason_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "reason" ADD CONSTRAINT "reason_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "reason_event" ADD CONSTRAINT "reason_event_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "reason_event" ADD CONSTRAINT "reason_event_team_id_reason_id_fkey" FOREIGN KEY ("team_id", "reason_id") REFERENCES "reason"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "reason_event" ADD CONSTRAINT "reason_event_team_id_by_id_fkey" FOREIGN KEY ("team_id", "by_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "verdict" ADD CONSTRAINT "verdict_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "verdict" ADD CONSTRAINT "verdict_team_id_reason_id_fkey" FOREIGN KEY ("team_id", "reason_id") REFERENCES "reason"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "verdict" ADD CONSTRAINT "verdict_team_id_by_id_fkey" FOREIGN KEY ("team_id", "by_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "step_taken" ADD CONSTRAINT "step_taken_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "step_taken" ADD CONSTRAINT "step_taken_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "step_taken" ADD CONSTRAINT "step_taken_team_id_reason_id_fkey" FOREIGN KEY ("team_id", "reason_id") REFERENCES "reason"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "step_taken" ADD CONSTRAINT "step_taken_team_id_by_id_fkey" FOREIGN KEY ("team_id", "by_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "step_outcome" ADD CONSTRAINT "step_outcome_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "step_outcome" ADD CONSTRAINT "step_outcome_team_id_step_id_fkey" FOREIGN KEY ("team_id", "step_id") REFERENCES "step_taken"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "night_run" ADD CONSTRAINT "night_run_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "night_client" ADD CONSTRAINT "night_client_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "night_client" ADD CONSTRAINT "night_client_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "outbox" ADD CONSTRAINT "outbox_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "outbox" ADD CONSTRAINT "outbox_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "audit" ADD CONSTRAINT "audit_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "handover_pack" ADD CONSTRAINT "handover_pack_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "handover_pack" ADD CONSTRAINT "handover_pack_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "handover_pack" ADD CONSTRAINT "handover_pack_team_id_by_id_fkey" FOREIGN KEY ("team_id", "by_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "handover_link" ADD CONSTRAINT "handover_link_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "handover_link" ADD CONSTRAINT "handover_link_team_id_pack_id_fkey" FOREIGN KEY ("team_id", "pack_id") REFERENCES "handover_pack"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "erased" ADD CONSTRAINT "erased_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "plan" ADD CONSTRAINT "plan_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "plan" ADD CONSTRAINT "plan_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "plan" ADD CONSTRAINT "plan_team_id_by_id_fkey" FOREIGN KEY ("team_id", "by_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "plan_session" ADD CONSTRAINT "plan_session_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "plan_session" ADD CONSTRAINT "plan_session_team_id_plan_id_fkey" FOREIGN KEY ("team_id", "plan_id") REFERENCES "plan"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "plan_item" ADD CONSTRAINT "plan_item_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "plan_item" ADD CONSTRAINT "plan_item_team_id_session_id_fkey" FOREIGN KEY ("team_id", "session_id") REFERENCES "plan_session"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "plan_item" ADD CONSTRAINT "plan_item_team_id_rung_id_fkey" FOREIGN KEY ("team_id", "rung_id") REFERENCES "rung"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "plan_item" ADD CONSTRAINT "plan_item_team_id_paired_with_id_fkey" FOREIGN KEY ("team_id", "paired_with_id") REFERENCES "plan_item"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "plan_template" ADD CONSTRAINT "plan_template_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "placement" ADD CONSTRAINT "placement_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "placement" ADD CONSTRAINT "placement_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "placement" ADD CONSTRAINT "placement_team_id_ladder_id_fkey" FOREIGN KEY ("team_id", "ladder_id") REFERENCES "ladder"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "placement" ADD CONSTRAINT "placement_team_id_rung_id_fkey" FOREIGN KEY ("team_id", "rung_id") REFERENCES "rung"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "member" ADD CONSTRAINT "member_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "member" ADD CONSTRAINT "member_user_id_fkey" FOREIGN KEY ("user_id") REFERENCES "user"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "member_leave" ADD CONSTRAINT "member_leave_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "member_leave" ADD CONSTRAINT "member_leave_team_id_member_id_fkey" FOREIGN KEY ("team_id", "member_id") REFERENCES "member"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "approval" ADD CONSTRAINT "approval_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "approval" ADD CONSTRAINT "approval_team_id_prepared_by_id_fkey" FOREIGN KEY ("team_id", "prepared_by_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "approval" ADD CONSTRAINT "approval_team_id_decided_by_id_fkey" FOREIGN KEY ("team_id", "decided_by_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "approval" ADD CONSTRAINT "approval_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "cover" ADD CONSTRAINT "cover_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "cover" ADD CONSTRAINT "cover_team_id_member_id_fkey" FOREIGN KEY ("team_id", "member_id") REFERENCES "member"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "cover" ADD CONSTRAINT "cover_team_id_covered_by_id_fkey" FOREIGN KEY ("team_id", "covered_by_id") REFERENCES "member"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "team_settings" ADD CONSTRAINT "team_settings_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "team_settings" ADD CONSTRAINT "team_settings_team_id_client_id_fkey" FOREIGN KEY ("team_id", "client_id") REFERENCES "client"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "team_settings" ADD CONSTRAINT "team_settings_team_id_by_id_fkey" FOREIGN KEY ("team_id", "by_id") REFERENCES "member"("team_id", "id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "saved_view" ADD CONSTRAINT "saved_view_team_id_fkey" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "saved_view" ADD CONSTRAINT "saved_view_team_id_member_id_fkey" FOREIGN KEY ("team_id", "member_id") REFERENCES "member"("team_id", "id") ON DELETE CASCADE ON UPDATE CASCADE;
