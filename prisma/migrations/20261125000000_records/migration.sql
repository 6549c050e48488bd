
-- CreateTable
CREATE TABLE "person" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "name" TEXT NOT NULL,
    "initials" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "email_verified" BOOLEAN NOT NULL DEFAULT false,
    "image" TEXT,
    "role" TEXT NOT NULL,
    "ended_at" TIMESTAMPTZ(3),
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "updated_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "person_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "session" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "token" TEXT NOT NULL,
    "person_id" UUID NOT NULL,
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
    "account_id" TEXT NOT NULL,
    "provider_id" TEXT NOT NULL,
    "person_id" UUID NOT NULL,
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
CREATE TABLE "api_token" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "name" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "token_hash" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "last_used_at" TIMESTAMPTZ(3),
    "ended_at" TIMESTAMPTZ(3),

    CONSTRAINT "api_token_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "shop" (
    "id" INTEGER NOT NULL DEFAULT 1,
    "name" TEXT NOT NULL,
    "time_zone" TEXT NOT NULL,
    "currency" TEXT NOT NULL,
    "address" TEXT NOT NULL DEFAULT '',
    "rules" JSONB NOT NULL,
    "is_demo" BOOLEAN NOT NULL DEFAULT false,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "shop_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "season" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "name" TEXT NOT NULL,
    "starts_on" DATE NOT NULL,
    "ends_on" DATE NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "season_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "audit" (
    "id" BIGSERIAL NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "by_id" UUID,
    "by_name" TEXT NOT NULL,
    "act" TEXT NOT NULL,
    "record_kind" TEXT NOT NULL,
    "record_id" UUID NOT NULL,
    "before" JSONB,
    "after" JSONB,

    CONSTRAINT "audit_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "creation" (
    "id" UUID NOT NULL,
    "record_kind" TEXT NOT NULL,
    "content_hash" TEXT NOT NULL,
    "at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "creation_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "part" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "part_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "pattern" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "condition" TEXT NOT NULL DEFAULT '',
    "place" TEXT NOT NULL DEFAULT '',
    "available" BOOLEAN NOT NULL DEFAULT true,
    "can_be_made_again" BOOLEAN NOT NULL DEFAULT true,
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "pattern_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "mould_set" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "mould_set_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "mould" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "part_id" UUID,
    "pattern_id" UUID,
    "set_id" UUID,
    "piece_no" INTEGER,
    "stack_id" UUID,
    "hand" TEXT NOT NULL DEFAULT 'none',
    "made_when" TEXT NOT NULL DEFAULT '',
    "pattern_state" TEXT NOT NULL DEFAULT '',
    "owner" TEXT NOT NULL DEFAULT '',
    "mass_kg" DOUBLE PRECISION,
    "length_mm" DOUBLE PRECISION,
    "width_mm" DOUBLE PRECISION,
    "height_mm" DOUBLE PRECISION,
    "backing" TEXT NOT NULL DEFAULT '',
    "heat_in_use_c" DOUBLE PRECISION,
    "heat_free_c" DOUBLE PRECISION,
    "heat_bonded_c" DOUBLE PRECISION,
    "tg_dry_c" DOUBLE PRECISION,
    "tg_wet_c" DOUBLE PRECISION,
    "tg_note" TEXT NOT NULL DEFAULT '',
    "part_cure_c" DOUBLE PRECISION,
    "can_be_made_again" BOOLEAN NOT NULL DEFAULT true,
    "demoulding" TEXT NOT NULL DEFAULT '',
    "do_nots" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "mould_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "face_area" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "mould_id" UUID NOT NULL,
    "name" TEXT NOT NULL,
    "origin_mm" DOUBLE PRECISION[],
    "u_axis" DOUBLE PRECISION[],
    "v_axis" DOUBLE PRECISION[],
    "curvature" TEXT NOT NULL DEFAULT 'flat',
    "boundary" JSONB NOT NULL,
    "lines" JSONB NOT NULL DEFAULT '[]',
    "keep_outs" JSONB NOT NULL DEFAULT '[]',
    "grid_origin_mm" DOUBLE PRECISION[],
    "grid_cell_mm" DOUBLE PRECISION NOT NULL DEFAULT 50,
    "stack_id" UUID,
    "position" INTEGER NOT NULL DEFAULT 1,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "face_area_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "thickness_reading" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "area_id" UUID NOT NULL,
    "u_mm" DOUBLE PRECISION NOT NULL,
    "v_mm" DOUBLE PRECISION NOT NULL,
    "thickness_mm" DOUBLE PRECISION NOT NULL,
    "measured_on" DATE NOT NULL,
    "by_id" UUID,
    "by_name" TEXT NOT NULL,

    CONSTRAINT "thickness_reading_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "locating_table" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "number" INTEGER NOT NULL,
    "name" TEXT NOT NULL,
    "issued_on" DATE NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "by_id" UUID,
    "by_name" TEXT NOT NULL,
    "written_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "locating_table_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "locating_point" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "table_id" UUID NOT NULL,
    "mould_id" UUID NOT NULL,
    "area_id" UUID,
    "tag" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "u_mm" DOUBLE PRECISION NOT NULL,
    "v_mm" DOUBLE PRECISION NOT NULL,
    "diameter_mm" DOUBLE PRECISION NOT NULL,
    "bush_diameter_mm" DOUBLE PRECISION,
    "through" BOOLEAN NOT NULL DEFAULT false,
    "is_datum" BOOLEAN NOT NULL DEFAULT false,
    "tolerance_mm" DOUBLE PRECISION,
    "not_yet_fixed" BOOLEAN NOT NULL DEFAULT false,
    "position" INTEGER NOT NULL,

    CONSTRAINT "locating_point_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "material" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "role" TEXT NOT NULL,
    "fibre_areal_weight_gsm" DOUBLE PRECISION NOT NULL,
    "fibre_density_g_cm3" DOUBLE PRECISION NOT NULL,
    "fibre_volume_fraction" DOUBLE PRECISION,
    "resin_mass_fraction" DOUBLE PRECISION,
    "resin_density_g_cm3" DOUBLE PRECISION,
    "roll_width_mm" DOUBLE PRECISION NOT NULL,
    "thickest_cure_mm" DOUBLE PRECISION,
    "cure" JSONB,
    "post_cure" JSONB,
    "price_minor_per_m2" INTEGER,
    "source_note" TEXT NOT NULL DEFAULT '',
    "retired_at" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "material_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "stack" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "code" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "stack_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "stack_ply" (
    "stack_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "material_id" UUID NOT NULL,
    "direction_deg" DOUBLE PRECISION NOT NULL,

    CONSTRAINT "stack_ply_pkey" PRIMARY KEY ("stack_id","position")
);

-- CreateTable
CREATE TABLE "log_entry" (
    "id" UUID NOT NULL,
    "mould_id" UUID,
    "pattern_id" UUID,
    "kind" TEXT NOT NULL,
    "done_on" DATE NOT NULL,
    "done_at" TIMESTAMPTZ(3),
    "precision" TEXT NOT NULL,
    "day_order" INTEGER NOT NULL,
    "written_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "stands_at" TIMESTAMPTZ(3),
    "by_id" UUID,
    "by_name" TEXT NOT NULL,
    "area_id" UUID,
    "patch_id" UUID,
    "corrects_id" UUID,
    "data" JSONB NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',
    "content_hash" TEXT NOT NULL,

    CONSTRAINT "log_entry_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "patch" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "mould_id" UUID NOT NULL,
    "area_id" UUID NOT NULL,
    "number" INTEGER NOT NULL,
    "title" TEXT NOT NULL,
    "reason" TEXT NOT NULL DEFAULT '',
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "patch_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "patch_plan" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "patch_id" UUID NOT NULL,
    "version_no" INTEGER NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'sketched',
    "opening" JSONB NOT NULL,
    "input" JSONB NOT NULL,
    "result" JSONB NOT NULL,
    "calculation_version" TEXT NOT NULL,
    "becauses" JSONB NOT NULL DEFAULT '{}',
    "note" TEXT NOT NULL DEFAULT '',
    "created_by_id" UUID,
    "created_by_name" TEXT NOT NULL,
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "signed_by_id" UUID,
    "signed_by_name" TEXT,
    "signed_at" TIMESTAMPTZ(3),
    "self_checked" BOOLEAN NOT NULL DEFAULT false,
    "bench_at" TIMESTAMPTZ(3),
    "laid_entry_id" UUID,
    "proved_entry_id" UUID,
    "put_by_at" TIMESTAMPTZ(3),
    "put_by_reason" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "patch_plan_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "job_line" (
    "plan_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "code" TEXT NOT NULL,
    "title" TEXT NOT NULL,
    "detail" TEXT NOT NULL,
    "cautions" TEXT[],
    "second_person" BOOLEAN NOT NULL,
    "ticked_by_id" UUID,
    "ticked_by_name" TEXT,
    "ticked_at" TIMESTAMPTZ(3),
    "tick_note" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "job_line_pkey" PRIMARY KEY ("plan_id","position")
);

-- CreateIndex
CREATE UNIQUE INDEX "person_email_key" ON "person"("email");

-- CreateIndex
CREATE UNIQUE INDEX "session_token_key" ON "session"("token");

-- CreateIndex
CREATE INDEX "session_person_id_idx" ON "session"("person_id");

-- CreateIndex
CREATE INDEX "account_person_id_idx" ON "account"("person_id");

-- CreateIndex
CREATE INDEX "verification_identifier_idx" ON "verification"("identifier");

-- CreateIndex
CREATE UNIQUE INDEX "api_token_token_hash_key" ON "api_token"("token_hash");

-- CreateIndex
CREATE UNIQUE INDEX "season_name_key" ON "season"("name");

-- CreateIndex
CREATE INDEX "audit_record_kind_record_id_at_idx" ON "audit"("record_kind", "record_id", "at");

-- CreateIndex
CREATE INDEX "mould_part_id_idx" ON "mould"("part_id");

-- CreateIndex
CREATE INDEX "mould_pattern_id_idx" ON "mould"("pattern_id");

-- CreateIndex
CREATE UNIQUE INDEX "face_area_mould_id_position_key" ON "face_area"("mould_id", "position");

-- CreateIndex
CREATE INDEX "thickness_reading_area_id_idx" ON "thickness_reading"("area_id");

-- CreateIndex
CREATE UNIQUE INDEX "locating_table_number_key" ON "locating_table"("number");

-- CreateIndex
CREATE INDEX "locating_point_mould_id_table_id_idx" ON "locating_point"("mould_id", "table_id");

-- CreateIndex
CREATE UNIQUE INDEX "log_entry_corrects_id_key" ON "log_entry"("corrects_id");

-- CreateIndex
CREATE INDEX "log_entry_mould_id_kind_done_on_day_order_written_at_id_idx" ON "log_entry"("mould_id", "kind", "done_on" DESC, "day_order" DESC, "written_at" DESC, "id" DESC);

-- CreateIndex
CREATE INDEX "log_entry_mould_id_done_on_day_order_written_at_id_idx" ON "log_entry"("mould_id", "done_on" DESC, "day_order" DESC, "written_at" DESC, "id" DESC);

-- CreateIndex
CREATE UNIQUE INDEX "patch_mould_id_number_key" ON "patch"("mould_id", "number");

-- CreateIndex
CREATE INDEX "patch_plan_state_idx" ON "patch_plan"("state");

-- CreateIndex
CREATE UNIQUE INDEX "patch_plan_patch_id_version_no_key" ON "patch_plan"("patch_id", "version_no");

-- AddForeignKey
ALTER TABLE "session" ADD CONSTRAINT "session_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "account" ADD CONSTRAINT "account_person_id_fkey" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "mould" ADD CONSTRAINT "mould_part_id_fkey" FOREIGN KEY ("part_id") REFERENCES "part"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "mould" ADD CONSTRAINT "mould_pattern_id_fkey" FOREIGN KEY ("pattern_id") REFERENCES "pattern"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "mould" ADD CONSTRAINT "mould_set_id_fkey" FOREIGN KEY ("set_id") REFERENCES "mould_set"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "mould" ADD CONSTRAINT "mould_stack_id_fkey" FOREIGN KEY ("stack_id") REFERENCES "stack"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "face_area" ADD CONSTRAINT "face_area_mould_id_fkey" FOREIGN KEY ("mould_id") REFERENCES "mould"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "face_area" ADD CONSTRAINT "face_area_stack_id_fkey" FOREIGN KEY ("stack_id") REFERENCES "stack"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "thickness_reading" ADD CONSTRAINT "thickness_reading_area_id_fkey" FOREIGN KEY ("area_id") REFERENCES "face_area"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "locating_point" ADD CONSTRAINT "locating_point_table_id_fkey" FOREIGN KEY ("table_id") REFERENCES "locating_table"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "locating_point" ADD CONSTRAINT "locating_point_mould_id_fkey" FOREIGN KEY ("mould_id") REFERENCES "mould"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "locating_point" ADD CONSTRAINT "locating_point_area_id_fkey" FOREIGN KEY ("area_id") REFERENCES "face_area"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "stack_ply" ADD CONSTRAINT "stack_ply_stack_id_fkey" FOREIGN KEY ("stack_id") REFERENCES "stack"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "stack_ply" ADD CONSTRAINT "stack_ply_material_id_fkey" FOREIGN KEY ("material_id") REFERENCES "material"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "log_entry" ADD CONSTRAINT "log_entry_mould_id_fkey" FOREIGN KEY ("mould_id") REFERENCES "mould"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "log_entry" ADD CONSTRAINT "log_entry_by_id_fkey" FOREIGN KEY ("by_id") REFERENCES "person"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "log_entry" ADD CONSTRAINT "log_entry_area_id_fkey" FOREIGN KEY ("area_id") REFERENCES "face_area"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "log_entry" ADD CONSTRAINT "log_entry_patch_id_fkey" FOREIGN KEY ("patch_id") REFERENCES "patch"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "log_entry" ADD CONSTRAINT "log_entry_corrects_id_fkey" FOREIGN KEY ("corrects_id") REFERENCES "log_entry"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "patch" ADD CONSTRAINT "patch_mould_id_fkey" FOREIGN KEY ("mould_id") REFERENCES "mould"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "patch" ADD CONSTRAINT "patch_area_id_fkey" FOREIGN KEY ("area_id") REFERENCES "face_area"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "patch_plan" ADD CONSTRAINT "patch_plan_patch_id_fkey" FOREIGN KEY ("patch_id") REFERENCES "patch"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "job_line" ADD CONSTRAINT "job_line_plan_id_fkey" FOREIGN KEY ("plan_id") REFERENCES "patch_plan"("id") ON DELETE CASCADE ON UPDATE CASCADE;


-- From here on by hand: what the schema language can't say. Drift detection leaves these alone.

-- Codes for people are unique per shop, compared without case or outer blanks.
CREATE UNIQUE INDEX "mould_code_key" ON "mould" (lower(btrim("code")));
CREATE UNIQUE INDEX "part_code_key" ON "part" (lower(btrim("code")));
CREATE UNIQUE INDEX "pattern_code_key" ON "pattern" (lower(btrim("code")));
CREATE UNIQUE INDEX "mould_set_code_key" ON "mould_set" (lower(btrim("code")));
CREATE UNIQUE INDEX "material_code_key" ON "material" (lower(btrim("code")));
CREATE UNIQUE INDEX "stack_code_key" ON "stack" (lower(btrim("code")));
CREATE UNIQUE INDEX "face_area_name_key" ON "face_area" ("mould_id", lower(btrim("name")));
CREATE UNIQUE INDEX "locating_point_tag_key" ON "locating_point" ("table_id", "mould_id", lower(btrim("tag")));
CREATE UNIQUE INDEX "mould_set_piece_key" ON "mould" ("set_id", "piece_no");
CREATE UNIQUE INDEX "person_email_lower_key" ON "person" (lower("email"));

ALTER TABLE "person"
  ADD CONSTRAINT "person_role_check" CHECK ("role" IN ('lead', 'laminator', 'viewer')),
  ADD CONSTRAINT "person_name_check" CHECK (btrim("name") <> '' AND btrim("initials") <> '');
ALTER TABLE "api_token"
  ADD CONSTRAINT "api_token_role_check" CHECK ("role" IN ('lead', 'laminator', 'viewer'));
ALTER TABLE "shop"
  ADD CONSTRAINT "shop_one_row_check" CHECK ("id" = 1),
  ADD CONSTRAINT "shop_currency_check" CHECK ("currency" ~ '^[A-Z]{3}$'),
  ADD CONSTRAINT "shop_name_check" CHECK (btrim("name") <> '');
ALTER TABLE "season"
  ADD CONSTRAINT "season_dates_check" CHECK ("ends_on" > "starts_on");
ALTER TABLE "part" ADD CONSTRAINT "part_code_check" CHECK ("code" ~ '^[[:alnum:]][[:alnum:]._-]*$');
ALTER TABLE "pattern" ADD CONSTRAINT "pattern_code_check" CHECK ("code" ~ '^[[:alnum:]][[:alnum:]._-]*$');
ALTER TABLE "mould_set" ADD CONSTRAINT "mould_set_code_check" CHECK ("code" ~ '^[[:alnum:]][[:alnum:]._-]*$');
ALTER TABLE "mould"
  ADD CONSTRAINT "mould_code_check" CHECK ("code" ~ '^[[:alnum:]][[:alnum:]._-]*$'),
  ADD CONSTRAINT "mould_name_check" CHECK (btrim("name") <> ''),
  ADD CONSTRAINT "mould_hand_check" CHECK ("hand" IN ('none', 'port', 'starboard')),
  ADD CONSTRAINT "mould_piece_check" CHECK (("set_id" IS NULL) = ("piece_no" IS NULL) AND ("piece_no" IS NULL OR "piece_no" >= 1)),
  ADD CONSTRAINT "mould_size_check" CHECK ("mass_kg" > 0 AND "length_mm" > 0 AND "width_mm" > 0 AND "height_mm" > 0),
  ADD CONSTRAINT "mould_heat_check" CHECK ("heat_in_use_c" BETWEEN 20 AND 400 AND "heat_free_c" BETWEEN 20 AND 400
    AND "heat_bonded_c" BETWEEN 20 AND 400 AND "tg_dry_c" BETWEEN 20 AND 400 AND "tg_wet_c" BETWEEN 20 AND 400
    AND "part_cure_c" BETWEEN 10 AND 400);
ALTER TABLE "face_area"
  ADD CONSTRAINT "face_area_name_check" CHECK (btrim("name") <> ''),
  ADD CONSTRAINT "face_area_frame_check" CHECK (COALESCE(cardinality("origin_mm"), 0) = 3
    AND COALESCE(cardinality("u_axis"), 0) = 3 AND COALESCE(cardinality("v_axis"), 0) = 3
    AND COALESCE(cardinality("grid_origin_mm"), 0) = 2),
  ADD CONSTRAINT "face_area_grid_check" CHECK ("grid_cell_mm" BETWEEN 5 AND 1000),
  ADD CONSTRAINT "face_area_curvature_check" CHECK ("curvature" IN ('flat')),
  ADD CONSTRAINT "face_area_boundary_check" CHECK (jsonb_typeof("boundary") = 'array' AND jsonb_array_length("boundary") >= 3);
ALTER TABLE "thickness_reading"
  ADD CONSTRAINT "thickness_reading_check" CHECK ("thickness_mm" > 0 AND "thickness_mm" <= 100);
ALTER TABLE "locating_table" ADD CONSTRAINT "locating_table_number_check" CHECK ("number" >= 1);
ALTER TABLE "locating_point"
  ADD CONSTRAINT "locating_point_kind_check" CHECK ("kind" IN ('dowel', 'bush', 'insert', 'scribe', 'trim')),
  ADD CONSTRAINT "locating_point_size_check" CHECK ("diameter_mm" > 0 AND ("bush_diameter_mm" IS NULL OR "bush_diameter_mm" >= "diameter_mm")
    AND ("tolerance_mm" IS NULL OR "tolerance_mm" > 0)),
  ADD CONSTRAINT "locating_point_tag_check" CHECK (btrim("tag") <> '');
ALTER TABLE "material"
  ADD CONSTRAINT "material_code_check" CHECK ("code" ~ '^[[:alnum:]][[:alnum:]._-]*$'),
  ADD CONSTRAINT "material_role_check" CHECK ("role" IN ('surface', 'bulk')),
  ADD CONSTRAINT "material_figures_check" CHECK ("fibre_areal_weight_gsm" > 0 AND "fibre_density_g_cm3" > 0 AND "roll_width_mm" > 0
    AND ("thickest_cure_mm" IS NULL OR "thickest_cure_mm" > 0) AND ("price_minor_per_m2" IS NULL OR "price_minor_per_m2" >= 0)),
  ADD CONSTRAINT "material_fibre_check" CHECK (
    ("fibre_volume_fraction" IS NOT NULL AND "fibre_volume_fraction" > 0 AND "fibre_volume_fraction" < 1
      AND "resin_mass_fraction" IS NULL AND "resin_density_g_cm3" IS NULL)
    OR ("fibre_volume_fraction" IS NULL AND "resin_mass_fraction" IS NOT NULL AND "resin_density_g_cm3" IS NOT NULL
      AND "resin_mass_fraction" > 0 AND "resin_mass_fraction" < 1 AND "resin_density_g_cm3" > 0));
ALTER TABLE "stack" ADD CONSTRAINT "stack_code_check" CHECK ("code" ~ '^[[:alnum:]][[:alnum:]._-]*$');
ALTER TABLE "stack_ply"
  ADD CONSTRAINT "stack_ply_check" CHECK ("position" >= 1 AND "direction_deg" > -180 AND "direction_deg" <= 180);
ALTER TABLE "log_entry"
  ADD CONSTRAINT "log_entry_subject_check" CHECK (num_nonnulls("mould_id", "pattern_id") = 1),
  ADD CONSTRAINT "log_entry_kind_check" CHECK ("kind" IN ('cleared', 'pull', 'strip', 'clean', 'seal', 'coat', 'tape-test',
    'leak-check', 'inspection', 'damage', 'dowel-changed', 'moved', 'state', 'patch-laid', 'proved', 'note', 'correction')),
  ADD CONSTRAINT "log_entry_precision_check" CHECK ("precision" IN ('minute', 'day', 'month', 'year', 'before')
    AND (("precision" = 'minute') = ("done_at" IS NOT NULL))),
  ADD CONSTRAINT "log_entry_order_check" CHECK ("day_order" BETWEEN 0 AND 1559),
  ADD CONSTRAINT "log_entry_data_check" CHECK (jsonb_typeof("data") = 'object'),
  ADD CONSTRAINT "log_entry_correction_check" CHECK ("kind" <> 'correction' OR "corrects_id" IS NOT NULL);
ALTER TABLE "patch"
  ADD CONSTRAINT "patch_number_check" CHECK ("number" >= 1 AND btrim("title") <> '');
ALTER TABLE "patch_plan"
  ADD CONSTRAINT "patch_plan_version_check" CHECK ("version_no" >= 1),
  ADD CONSTRAINT "patch_plan_state_check" CHECK ("state" IN ('sketched', 'signed', 'on the bench', 'laid', 'proved', 'put by')),
  ADD CONSTRAINT "patch_plan_signed_check" CHECK (
    "state" IN ('sketched', 'put by') OR ("signed_at" IS NOT NULL AND "signed_by_name" IS NOT NULL)),
  ADD CONSTRAINT "patch_plan_bench_check" CHECK ("state" NOT IN ('on the bench', 'laid', 'proved') OR "bench_at" IS NOT NULL),
  ADD CONSTRAINT "patch_plan_laid_check" CHECK ("state" NOT IN ('laid', 'proved') OR "laid_entry_id" IS NOT NULL),
  ADD CONSTRAINT "patch_plan_proved_check" CHECK ("state" <> 'proved' OR "proved_entry_id" IS NOT NULL),
  ADD CONSTRAINT "patch_plan_put_by_check" CHECK (("state" = 'put by') = ("put_by_at" IS NOT NULL));
-- At most one plan of a patch is in work.
CREATE UNIQUE INDEX "patch_plan_in_work_key" ON "patch_plan" ("patch_id") WHERE "state" IN ('on the bench', 'laid', 'proved');
ALTER TABLE "job_line"
  ADD CONSTRAINT "job_line_tick_check" CHECK (("ticked_at" IS NULL) = ("ticked_by_name" IS NULL));

-- What is written stays written.
CREATE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION '% is never changed; write a new record', TG_TABLE_NAME USING ERRCODE = 'restrict_violation';
END $$;
CREATE TRIGGER "log_entry_append_only" BEFORE UPDATE OR DELETE ON "log_entry" FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER "locating_point_append_only" BEFORE UPDATE OR DELETE ON "locating_point" FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER "locating_table_append_only" BEFORE UPDATE OR DELETE ON "locating_table" FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER "audit_append_only" BEFORE UPDATE OR DELETE ON "audit" FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER "creation_append_only" BEFORE UPDATE OR DELETE ON "creation" FOR EACH ROW EXECUTE FUNCTION refuse_change();

-- An entry's area, patch and corrected entry belong to the same mould.
CREATE FUNCTION check_log_entry() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF NEW.area_id IS NOT NULL AND NOT EXISTS (SELECT 1 FROM face_area a WHERE a.id = NEW.area_id AND a.mould_id = NEW.mould_id) THEN
    RAISE EXCEPTION 'the area is not of this mould' USING ERRCODE = 'check_violation', CONSTRAINT = 'log_entry_area_of_mould';
  END IF;
  IF NEW.patch_id IS NOT NULL AND NOT EXISTS (SELECT 1 FROM patch p WHERE p.id = NEW.patch_id AND p.mould_id = NEW.mould_id) THEN
    RAISE EXCEPTION 'the patch is not of this mould' USING ERRCODE = 'check_violation', CONSTRAINT = 'log_entry_patch_of_mould';
  END IF;
  IF NEW.corrects_id IS NOT NULL AND NOT EXISTS (SELECT 1 FROM log_entry e WHERE e.id = NEW.corrects_id
      AND e.mould_id IS NOT DISTINCT FROM NEW.mould_id AND e.pattern_id IS NOT DISTINCT FROM NEW.pattern_id) THEN
    RAISE EXCEPTION 'the corrected entry is not of this mould' USING ERRCODE = 'check_violation', CONSTRAINT = 'log_entry_correction_of_mould';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER "log_entry_belongs" BEFORE INSERT ON "log_entry" FOR EACH ROW EXECUTE FUNCTION check_log_entry();

-- A signed plan doesn't change: a new version does. States move forward only.
CREATE FUNCTION check_patch_plan() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'DELETE' THEN
    RAISE EXCEPTION 'a plan is put by, never deleted' USING ERRCODE = 'restrict_violation';
  END IF;
  IF OLD.state <> 'sketched' AND (NEW.input, NEW.result, NEW.opening, NEW.becauses, NEW.calculation_version, NEW.note, NEW.version_no,
      NEW.patch_id, NEW.signed_at, NEW.signed_by_id, NEW.signed_by_name, NEW.self_checked)
    IS DISTINCT FROM (OLD.input, OLD.result, OLD.opening, OLD.becauses, OLD.calculation_version, OLD.note, OLD.version_no,
      OLD.patch_id, OLD.signed_at, OLD.signed_by_id, OLD.signed_by_name, OLD.self_checked) THEN
    RAISE EXCEPTION 'a signed plan is never changed' USING ERRCODE = 'restrict_violation', CONSTRAINT = 'patch_plan_signed_stays';
  END IF;
  IF NOT (NEW.state = OLD.state
      OR (OLD.state, NEW.state) IN (('sketched', 'signed'), ('signed', 'on the bench'), ('on the bench', 'laid'), ('laid', 'proved'))
      OR (NEW.state = 'put by' AND OLD.state IN ('sketched', 'signed', 'on the bench'))) THEN
    RAISE EXCEPTION 'a plan that is % can not become %', OLD.state, NEW.state USING ERRCODE = 'check_violation', CONSTRAINT = 'patch_plan_state_order';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER "patch_plan_guard" BEFORE UPDATE OR DELETE ON "patch_plan" FOR EACH ROW EXECUTE FUNCTION check_patch_plan();

-- The text of a job line stays as it was planned; only its tick comes and goes.
CREATE FUNCTION check_job_line() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF TG_OP = 'DELETE' OR (NEW.plan_id, NEW.position, NEW.code, NEW.title, NEW.detail, NEW.cautions, NEW.second_person)
    IS DISTINCT FROM (OLD.plan_id, OLD.position, OLD.code, OLD.title, OLD.detail, OLD.cautions, OLD.second_person) THEN
    RAISE EXCEPTION 'a job line is never changed; a new version of the plan brings new lines' USING ERRCODE = 'restrict_violation',
      CONSTRAINT = 'job_line_stays';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER "job_line_guard" BEFORE UPDATE OR DELETE ON "job_line" FOR EACH ROW EXECUTE FUNCTION check_job_line();

-- What counts: an entry that nobody has corrected. Sorted by (done_on, day_order, written_at, id); an entry that takes
-- the place of a wrong one on the same day stands where that one stood, so that a late correction doesn't undo what followed.
CREATE VIEW "effective_entry" AS
SELECT e.id, e.mould_id, e.pattern_id, e.kind, e.done_on, e.done_at, e.precision, e.day_order,
  COALESCE(e.stands_at, e.written_at) AS written_at, e.by_id, e.by_name, e.area_id, e.patch_id, e.corrects_id, e.data, e.note
FROM log_entry e
WHERE e.kind <> 'correction' AND NOT EXISTS (SELECT 1 FROM log_entry c WHERE c.corrects_id = e.id);

-- Pulls in order with their number, and whether the lay-up was cleared since the pull before.
CREATE VIEW "pull_entry" AS
SELECT s.*, row_number() OVER (PARTITION BY s.mould_id ORDER BY s.done_on, s.day_order, s.written_at, s.id)::int AS pull_no
FROM (
  SELECT e.*, COALESCE(lag(e.kind) OVER (PARTITION BY e.mould_id ORDER BY e.done_on, e.day_order, e.written_at, e.id) = 'cleared', false) AS cleared
  FROM effective_entry e WHERE e.kind IN ('pull', 'cleared')
) s
WHERE s.kind = 'pull';

-- What release is counted for: the whole face, each area, and the spot of each laid patch from the day it was laid.
CREATE VIEW "release_target" AS
SELECT m.id AS mould_id, 'face'::text AS target, NULL::uuid AS area_id, NULL::uuid AS patch_id, NULL::uuid AS laid_id,
  NULL::date AS laid_on, NULL::int AS laid_order, NULL::timestamptz AS laid_written
FROM mould m
UNION ALL
SELECT a.mould_id, 'area', a.id, NULL, NULL, NULL, NULL, NULL FROM face_area a
UNION ALL
SELECT p.mould_id, 'patch', p.area_id, p.id, l.id, l.done_on, l.day_order, l.written_at
FROM patch p
JOIN LATERAL (SELECT e.* FROM effective_entry e WHERE e.mould_id = p.mould_id AND e.kind = 'patch-laid' AND e.patch_id = p.id
  ORDER BY e.done_on DESC, e.day_order DESC, e.written_at DESC, e.id DESC LIMIT 1) l ON true;

-- For every target: the last strip, seal, coat and tape test that touched it, and the pulls since each. A typed 0 is
-- kept in the log, but no coat of it lies on the face.
CREATE VIEW "release_count" AS
SELECT t.mould_id, t.target, t.area_id, t.patch_id, t.laid_on,
  strip.done_on AS strip_on, seal.done_on AS seal_on, coat.done_on AS coat_on, coat.done_at AS coat_at,
  tape.done_on AS tape_on, tape.data ->> 'result' AS tape_result,
  seal.data ->> 'product' AS seal_product, seal.data ->> 'lot' AS seal_lot,
  coat.data ->> 'product' AS coat_product, coat.data ->> 'lot' AS coat_lot,
  COALESCE((seal.done_on, seal.day_order, seal.written_at, seal.id) > (strip.done_on, strip.day_order, strip.written_at, strip.id), seal.id IS NOT NULL) AS sealed_since_strip,
  COALESCE((tape.done_on, tape.day_order, tape.written_at, tape.id) > (coat.done_on, coat.day_order, coat.written_at, coat.id), tape.id IS NOT NULL) AS tape_since_coat,
  counts.coats_since_strip, counts.pulls, counts.pulls_since_strip, counts.pulls_since_seal, counts.pulls_since_coat
FROM release_target t
LEFT JOIN LATERAL (SELECT e.* FROM effective_entry e WHERE e.mould_id = t.mould_id AND e.kind = 'strip'
  AND (e.patch_id = t.patch_id OR (e.patch_id IS NULL AND (e.area_id IS NULL OR e.area_id = t.area_id)))
  AND (t.laid_id IS NULL OR (e.done_on, e.day_order, e.written_at, e.id) > (t.laid_on, t.laid_order, t.laid_written, t.laid_id))
  ORDER BY e.done_on DESC, e.day_order DESC, e.written_at DESC, e.id DESC LIMIT 1) strip ON true
LEFT JOIN LATERAL (SELECT e.* FROM effective_entry e WHERE e.mould_id = t.mould_id AND e.kind = 'seal' AND (e.data ->> 'coats')::numeric > 0
  AND (e.patch_id = t.patch_id OR (e.patch_id IS NULL AND (e.area_id IS NULL OR e.area_id = t.area_id)))
  AND (t.laid_id IS NULL OR (e.done_on, e.day_order, e.written_at, e.id) > (t.laid_on, t.laid_order, t.laid_written, t.laid_id))
  ORDER BY e.done_on DESC, e.day_order DESC, e.written_at DESC, e.id DESC LIMIT 1) seal ON true
LEFT JOIN LATERAL (SELECT e.* FROM effective_entry e WHERE e.mould_id = t.mould_id AND e.kind = 'coat' AND (e.data ->> 'coats')::numeric > 0
  AND (e.patch_id = t.patch_id OR (e.patch_id IS NULL AND (e.area_id IS NULL OR e.area_id = t.area_id)))
  AND (t.laid_id IS NULL OR (e.done_on, e.day_order, e.written_at, e.id) > (t.laid_on, t.laid_order, t.laid_written, t.laid_id))
  ORDER BY e.done_on DESC, e.day_order DESC, e.written_at DESC, e.id DESC LIMIT 1) coat ON true
LEFT JOIN LATERAL (SELECT e.* FROM effective_entry e WHERE e.mould_id = t.mould_id AND e.kind = 'tape-test'
  AND (e.patch_id = t.patch_id OR (e.patch_id IS NULL AND (e.area_id IS NULL OR e.area_id = t.area_id)))
  AND (t.laid_id IS NULL OR (e.done_on, e.day_order, e.written_at, e.id) > (t.laid_on, t.laid_order, t.laid_written, t.laid_id))
  ORDER BY e.done_on DESC, e.day_order DESC, e.written_at DESC, e.id DESC LIMIT 1) tape ON true
LEFT JOIN LATERAL (SELECT
    COALESCE(sum((e.data ->> 'coats')::int) FILTER (WHERE e.kind = 'coat'
      AND (e.patch_id = t.patch_id OR (e.patch_id IS NULL AND (e.area_id IS NULL OR e.area_id = t.area_id)))
      AND (strip.id IS NULL OR (e.done_on, e.day_order, e.written_at, e.id) > (strip.done_on, strip.day_order, strip.written_at, strip.id))), 0)::int AS coats_since_strip,
    count(*) FILTER (WHERE e.kind = 'pull')::int AS pulls,
    count(*) FILTER (WHERE e.kind = 'pull' AND (e.done_on, e.day_order, e.written_at, e.id) > (strip.done_on, strip.day_order, strip.written_at, strip.id))::int AS pulls_since_strip,
    count(*) FILTER (WHERE e.kind = 'pull' AND (e.done_on, e.day_order, e.written_at, e.id) > (seal.done_on, seal.day_order, seal.written_at, seal.id))::int AS pulls_since_seal,
    count(*) FILTER (WHERE e.kind = 'pull' AND (e.done_on, e.day_order, e.written_at, e.id) > (coat.done_on, coat.day_order, coat.written_at, coat.id))::int AS pulls_since_coat
  FROM effective_entry e WHERE e.mould_id = t.mould_id AND e.kind IN ('pull', 'coat')
    AND (t.laid_id IS NULL OR (e.done_on, e.day_order, e.written_at, e.id) > (t.laid_on, t.laid_order, t.laid_written, t.laid_id))) counts ON true;

-- The last word on every state that is set by hand.
CREATE VIEW "mould_flag" AS
SELECT DISTINCT ON (e.mould_id, e.data ->> 'state') e.mould_id, e.data ->> 'state' AS state, (e.data ->> 'on')::boolean AS is_on,
  e.data ->> 'reason' AS reason, e.id AS entry_id, e.done_on, e.day_order, e.written_at
FROM effective_entry e WHERE e.kind = 'state'
ORDER BY e.mould_id, e.data ->> 'state', e.done_on DESC, e.day_order DESC, e.written_at DESC, e.id DESC;

-- Damage that stops a mould, stuck parts, and inspections that found it not sound, which no later inspection of the same
-- ground has found sound.
CREATE VIEW "open_damage" AS
SELECT d.* FROM effective_entry d
WHERE ((d.kind = 'damage' AND d.data ->> 'weight' = 'stop') OR (d.kind = 'pull' AND d.data ->> 'went' = 'stuck')
    OR (d.kind = 'inspection' AND d.data ->> 'verdict' = 'not sound'))
  AND NOT EXISTS (SELECT 1 FROM effective_entry i WHERE i.mould_id = d.mould_id AND i.kind = 'inspection' AND i.data ->> 'verdict' = 'sound'
    AND (i.area_id IS NULL OR i.area_id = d.area_id)
    AND (i.done_on, i.day_order, i.written_at, i.id) > (d.done_on, d.day_order, d.written_at, d.id));

-- Where a mould is: what its last move says.
CREATE VIEW "mould_place" AS
SELECT DISTINCT ON (e.mould_id) e.mould_id, e.data ->> 'place' AS place, e.done_on
FROM effective_entry e WHERE e.kind = 'moved'
ORDER BY e.mould_id, e.done_on DESC, e.day_order DESC, e.written_at DESC, e.id DESC;
