-- AlterTable
ALTER TABLE "api_token" ADD COLUMN     "created_by_name" TEXT NOT NULL DEFAULT '';

-- AlterTable
ALTER TABLE "log_entry" ADD COLUMN     "group_id" UUID;

-- AlterTable (the old price column goes below, when its figures have moved to "price")
ALTER TABLE "material"
ADD COLUMN     "low_below_m2" DOUBLE PRECISION,
ADD COLUMN     "out_life_h" DOUBLE PRECISION;

-- AlterTable
ALTER TABLE "mould" ADD COLUMN     "lifting_points" TEXT NOT NULL DEFAULT '';

-- AlterTable
ALTER TABLE "mould_set" ADD COLUMN     "assembly" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "backing" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "height_mm" DOUBLE PRECISION,
ADD COLUMN     "length_mm" DOUBLE PRECISION,
ADD COLUMN     "lifting_points" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "mass_kg" DOUBLE PRECISION,
ADD COLUMN     "part_id" UUID,
ADD COLUMN     "version" INTEGER NOT NULL DEFAULT 1,
ADD COLUMN     "width_mm" DOUBLE PRECISION;

-- AlterTable
ALTER TABLE "patch_plan" ADD COLUMN     "length_mm" DOUBLE PRECISION NOT NULL DEFAULT 0,
ADD COLUMN     "place" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "ply_count" INTEGER NOT NULL DEFAULT 0,
ADD COLUMN     "side" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "stop_count" INTEGER NOT NULL DEFAULT 0;

-- AlterTable
ALTER TABLE "pattern" ADD COLUMN     "height_mm" DOUBLE PRECISION,
ADD COLUMN     "length_mm" DOUBLE PRECISION,
ADD COLUMN     "made_of" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "mass_kg" DOUBLE PRECISION,
ADD COLUMN     "owner" TEXT NOT NULL DEFAULT '',
ADD COLUMN     "width_mm" DOUBLE PRECISION;

-- AlterTable
ALTER TABLE "thickness_reading" ADD COLUMN     "struck_at" TIMESTAMPTZ(3),
ADD COLUMN     "struck_because" TEXT,
ADD COLUMN     "struck_by_name" TEXT;

-- CreateTable
CREATE TABLE "set_hardware" (
    "set_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "kind" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "count" INTEGER NOT NULL DEFAULT 1,
    "size" TEXT NOT NULL DEFAULT '',
    "joins" TEXT NOT NULL DEFAULT '',
    "place" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "set_hardware_pkey" PRIMARY KEY ("set_id","position")
);

-- CreateTable
CREATE TABLE "built_part" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "serial" TEXT NOT NULL,
    "part_id" UUID,
    "cure" TEXT NOT NULL DEFAULT '',
    "where_now" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',
    "created_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "built_part_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "built_part_lot" (
    "built_part_id" UUID NOT NULL,
    "position" INTEGER NOT NULL,
    "lot_id" UUID,
    "material" TEXT NOT NULL,
    "lot" TEXT NOT NULL,

    CONSTRAINT "built_part_lot_pkey" PRIMARY KEY ("built_part_id","position")
);

-- CreateTable
CREATE TABLE "product" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "name" TEXT NOT NULL,
    "use" TEXT NOT NULL,
    "coats" INTEGER,
    "interval_min" DOUBLE PRECISION,
    "flash_min" DOUBLE PRECISION,
    "cure_min" DOUBLE PRECISION,
    "cure_c" DOUBLE PRECISION,
    "pot_life_min" DOUBLE PRECISION,
    "shelf_life_days" INTEGER,
    "open_life_days" INTEGER,
    "store_at" TEXT NOT NULL DEFAULT '',
    "heat_limit_c" DOUBLE PRECISION,
    "unit" TEXT NOT NULL DEFAULT 'l',
    "low_below" DOUBLE PRECISION,
    "cautions" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',
    "source_note" TEXT NOT NULL DEFAULT '',
    "retired_at" TIMESTAMPTZ(3),
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "product_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "stock_lot" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "material_id" UUID,
    "product_id" UUID,
    "lot" TEXT NOT NULL,
    "container" TEXT NOT NULL,
    "quantity" DOUBLE PRECISION NOT NULL,
    "received_on" DATE NOT NULL,
    "expires_on" DATE,
    "opened_on" DATE,
    "place" TEXT NOT NULL DEFAULT '',
    "note" TEXT NOT NULL DEFAULT '',
    "closed_on" DATE,
    "closed_why" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "stock_lot_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "lot_move" (
    "id" UUID NOT NULL,
    "lot_id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "amount" DOUBLE PRECISION NOT NULL,
    "done_on" DATE NOT NULL,
    "written_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "entry_id" UUID,
    "plan_id" UUID,
    "corrects_id" UUID,
    "by_id" UUID,
    "by_name" TEXT NOT NULL,
    "note" TEXT NOT NULL DEFAULT '',

    CONSTRAINT "lot_move_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "price" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "material_id" UUID,
    "product_id" UUID,
    "minor_per_unit" INTEGER NOT NULL,
    "unit" TEXT NOT NULL,
    "currency" TEXT NOT NULL,
    "from_on" DATE NOT NULL,
    "source_note" TEXT NOT NULL DEFAULT '',
    "by_name" TEXT NOT NULL,
    "written_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "price_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "rate" (
    "id" UUID NOT NULL DEFAULT gen_random_uuid(),
    "operation" TEXT NOT NULL,
    "basis" TEXT NOT NULL,
    "hours" DOUBLE PRECISION,
    "minor_per_basis" INTEGER,
    "currency" TEXT NOT NULL,
    "from_on" DATE NOT NULL,
    "source_note" TEXT NOT NULL DEFAULT '',
    "by_name" TEXT NOT NULL,
    "written_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,

    CONSTRAINT "rate_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "picture" (
    "id" UUID NOT NULL,
    "kind" TEXT NOT NULL,
    "mime_type" TEXT NOT NULL,
    "width_px" INTEGER,
    "height_px" INTEGER,
    "size_bytes" INTEGER NOT NULL,
    "taken_on" DATE NOT NULL,
    "caption" TEXT NOT NULL DEFAULT '',
    "view" TEXT NOT NULL DEFAULT '',
    "mould_id" UUID,
    "pattern_id" UUID,
    "set_id" UUID,
    "built_part_id" UUID,
    "entry_id" UUID,
    "by_id" UUID,
    "by_name" TEXT NOT NULL,
    "written_at" TIMESTAMPTZ(3) NOT NULL DEFAULT CURRENT_TIMESTAMP,
    "content_hash" TEXT NOT NULL,
    "put_away_at" TIMESTAMPTZ(3),
    "put_away_because" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,

    CONSTRAINT "picture_pkey" PRIMARY KEY ("id")
);

-- CreateTable
CREATE TABLE "picture_bytes" (
    "picture_id" UUID NOT NULL,
    "size" TEXT NOT NULL,
    "bytes" BYTEA NOT NULL,

    CONSTRAINT "picture_bytes_pkey" PRIMARY KEY ("picture_id","size")
);

-- CreateTable
CREATE TABLE "mould_tally" (
    "mould_id" UUID NOT NULL,
    "code_key" TEXT NOT NULL DEFAULT '',
    "words" TEXT NOT NULL DEFAULT '',
    "dirty" BIGINT NOT NULL DEFAULT 1,
    "clean" BIGINT NOT NULL DEFAULT 0,
    "counts" JSONB,
    "edition" INTEGER NOT NULL DEFAULT 0,
    "state" TEXT NOT NULL DEFAULT '',
    "state_rank" INTEGER NOT NULL DEFAULT 99,
    "stops" INTEGER NOT NULL DEFAULT 0,
    "looks" INTEGER NOT NULL DEFAULT 0,
    "notes" INTEGER NOT NULL DEFAULT 0,
    "pulls" INTEGER NOT NULL DEFAULT 0,
    "since_coat" INTEGER NOT NULL DEFAULT 0,
    "last_leak_on" DATE,
    "place" TEXT NOT NULL DEFAULT '',
    "rules_version" INTEGER NOT NULL DEFAULT 0,
    "holds_through" DATE,
    "drying_until" TIMESTAMPTZ(3),

    CONSTRAINT "mould_tally_pkey" PRIMARY KEY ("mould_id")
);

-- CreateIndex
CREATE INDEX "built_part_lot_lot_id_idx" ON "built_part_lot"("lot_id");

-- CreateIndex
CREATE INDEX "stock_lot_material_id_idx" ON "stock_lot"("material_id");

-- CreateIndex
CREATE INDEX "stock_lot_product_id_idx" ON "stock_lot"("product_id");

-- CreateIndex
CREATE UNIQUE INDEX "lot_move_corrects_id_key" ON "lot_move"("corrects_id");

-- CreateIndex
CREATE INDEX "lot_move_lot_id_done_on_written_at_idx" ON "lot_move"("lot_id", "done_on", "written_at");

-- CreateIndex
CREATE INDEX "lot_move_entry_id_idx" ON "lot_move"("entry_id");

-- CreateIndex
CREATE INDEX "lot_move_plan_id_idx" ON "lot_move"("plan_id");

-- CreateIndex
CREATE INDEX "price_material_id_from_on_idx" ON "price"("material_id", "from_on");

-- CreateIndex
CREATE INDEX "price_product_id_from_on_idx" ON "price"("product_id", "from_on");

-- CreateIndex
CREATE INDEX "rate_operation_from_on_idx" ON "rate"("operation", "from_on");

-- CreateIndex
CREATE INDEX "picture_mould_id_view_taken_on_idx" ON "picture"("mould_id", "view", "taken_on");

-- CreateIndex
CREATE INDEX "picture_pattern_id_idx" ON "picture"("pattern_id");

-- CreateIndex
CREATE INDEX "picture_set_id_idx" ON "picture"("set_id");

-- CreateIndex
CREATE INDEX "picture_built_part_id_idx" ON "picture"("built_part_id");

-- CreateIndex
CREATE INDEX "picture_entry_id_idx" ON "picture"("entry_id");

-- CreateIndex
CREATE INDEX "log_entry_pattern_id_done_on_idx" ON "log_entry"("pattern_id", "done_on" DESC);

-- CreateIndex
CREATE INDEX "log_entry_group_id_idx" ON "log_entry"("group_id");

-- CreateIndex
CREATE INDEX "log_entry_written_at_id_idx" ON "log_entry"("written_at" DESC, "id" DESC);

-- AddForeignKey
ALTER TABLE "mould_set" ADD CONSTRAINT "mould_set_part_id_fkey" FOREIGN KEY ("part_id") REFERENCES "part"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "set_hardware" ADD CONSTRAINT "set_hardware_set_id_fkey" FOREIGN KEY ("set_id") REFERENCES "mould_set"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "built_part" ADD CONSTRAINT "built_part_part_id_fkey" FOREIGN KEY ("part_id") REFERENCES "part"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "built_part_lot" ADD CONSTRAINT "built_part_lot_built_part_id_fkey" FOREIGN KEY ("built_part_id") REFERENCES "built_part"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "built_part_lot" ADD CONSTRAINT "built_part_lot_lot_id_fkey" FOREIGN KEY ("lot_id") REFERENCES "stock_lot"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "stock_lot" ADD CONSTRAINT "stock_lot_material_id_fkey" FOREIGN KEY ("material_id") REFERENCES "material"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "stock_lot" ADD CONSTRAINT "stock_lot_product_id_fkey" FOREIGN KEY ("product_id") REFERENCES "product"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "lot_move" ADD CONSTRAINT "lot_move_lot_id_fkey" FOREIGN KEY ("lot_id") REFERENCES "stock_lot"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "lot_move" ADD CONSTRAINT "lot_move_entry_id_fkey" FOREIGN KEY ("entry_id") REFERENCES "log_entry"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "lot_move" ADD CONSTRAINT "lot_move_plan_id_fkey" FOREIGN KEY ("plan_id") REFERENCES "patch_plan"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "lot_move" ADD CONSTRAINT "lot_move_corrects_id_fkey" FOREIGN KEY ("corrects_id") REFERENCES "lot_move"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "price" ADD CONSTRAINT "price_material_id_fkey" FOREIGN KEY ("material_id") REFERENCES "material"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "price" ADD CONSTRAINT "price_product_id_fkey" FOREIGN KEY ("product_id") REFERENCES "product"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "picture" ADD CONSTRAINT "picture_mould_id_fkey" FOREIGN KEY ("mould_id") REFERENCES "mould"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "picture" ADD CONSTRAINT "picture_pattern_id_fkey" FOREIGN KEY ("pattern_id") REFERENCES "pattern"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "picture" ADD CONSTRAINT "picture_set_id_fkey" FOREIGN KEY ("set_id") REFERENCES "mould_set"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "picture" ADD CONSTRAINT "picture_built_part_id_fkey" FOREIGN KEY ("built_part_id") REFERENCES "built_part"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "picture" ADD CONSTRAINT "picture_entry_id_fkey" FOREIGN KEY ("entry_id") REFERENCES "log_entry"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "picture_bytes" ADD CONSTRAINT "picture_bytes_picture_id_fkey" FOREIGN KEY ("picture_id") REFERENCES "picture"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "log_entry" ADD CONSTRAINT "log_entry_pattern_id_fkey" FOREIGN KEY ("pattern_id") REFERENCES "pattern"("id") ON DELETE RESTRICT ON UPDATE CASCADE;

-- AddForeignKey
ALTER TABLE "mould_tally" ADD CONSTRAINT "mould_tally_mould_id_fkey" FOREIGN KEY ("mould_id") REFERENCES "mould"("id") ON DELETE CASCADE ON UPDATE CASCADE;

-- CreateIndex
CREATE INDEX "mould_tally_code_key_idx" ON "mould_tally"("code_key");

-- CreateIndex
CREATE INDEX "mould_tally_edition_idx" ON "mould_tally"("edition");

-- CreateIndex
CREATE INDEX "mould_tally_rules_version_idx" ON "mould_tally"("rules_version");

-- CreateIndex
CREATE INDEX "mould_tally_holds_through_idx" ON "mould_tally"("holds_through");

-- CreateIndex
CREATE INDEX "mould_tally_drying_until_idx" ON "mould_tally"("drying_until");

-- From here on by hand: what the schema language can't say. Drift detection leaves these alone.

-- Prices without a date become dated ones.
INSERT INTO "price" ("material_id", "minor_per_unit", "unit", "currency", "from_on", "source_note", "by_name")
SELECT m."id", m."price_minor_per_m2", 'm2', COALESCE((SELECT s."currency" FROM "shop" s), 'EUR'), CURRENT_DATE,
  'as it stood before prices had dates', 'Mouldwright'
FROM "material" m WHERE m."price_minor_per_m2" IS NOT NULL;
ALTER TABLE "material" DROP CONSTRAINT "material_figures_check";
ALTER TABLE "material" DROP COLUMN "price_minor_per_m2";
ALTER TABLE "material"
  ADD CONSTRAINT "material_figures_check" CHECK ("fibre_areal_weight_gsm" > 0 AND "fibre_density_g_cm3" > 0 AND "roll_width_mm" > 0
    AND ("thickest_cure_mm" IS NULL OR "thickest_cure_mm" > 0) AND ("low_below_m2" IS NULL OR "low_below_m2" >= 0)
    AND ("out_life_h" IS NULL OR "out_life_h" > 0));

-- Codes and names for people are unique per shop, compared without case or outer blanks.
CREATE UNIQUE INDEX "built_part_serial_key" ON "built_part" (lower(btrim("serial")));
CREATE UNIQUE INDEX "product_name_key" ON "product" (lower(btrim("name")));
CREATE UNIQUE INDEX "stock_lot_material_lot_key" ON "stock_lot" ("material_id", lower(btrim("lot"))) WHERE "material_id" IS NOT NULL;
CREATE UNIQUE INDEX "stock_lot_product_lot_key" ON "stock_lot" ("product_id", lower(btrim("lot"))) WHERE "product_id" IS NOT NULL;
-- Before tokens were listed two living ones could have the same name; the later ones get a number.
UPDATE "api_token" t SET "name" = btrim(t."name") || ' (' || n."place" || ', ' || left(t."id"::text, 8) || ')'
FROM (SELECT "id", row_number() OVER (PARTITION BY lower(btrim("name")) ORDER BY "created_at", "id") AS "place"
  FROM "api_token" WHERE "ended_at" IS NULL) n
WHERE n."id" = t."id" AND n."place" > 1;
CREATE UNIQUE INDEX "api_token_name_key" ON "api_token" (lower(btrim("name"))) WHERE "ended_at" IS NULL;

UPDATE "mould_set" SET "name" = "code" WHERE btrim("name") = '';
ALTER TABLE "mould_set"
  ADD CONSTRAINT "mould_set_name_check" CHECK (btrim("name") <> ''),
  ADD CONSTRAINT "mould_set_size_check" CHECK ("mass_kg" > 0 AND "length_mm" > 0 AND "width_mm" > 0 AND "height_mm" > 0);
ALTER TABLE "pattern"
  ADD CONSTRAINT "pattern_size_check" CHECK ("mass_kg" > 0 AND "length_mm" > 0 AND "width_mm" > 0 AND "height_mm" > 0);
ALTER TABLE "set_hardware"
  ADD CONSTRAINT "set_hardware_kind_check" CHECK ("kind" IN ('flange', 'pin', 'bolt', 'loose block', 'seal', 'lifting', 'other')),
  ADD CONSTRAINT "set_hardware_check" CHECK ("position" >= 1 AND "count" >= 1 AND btrim("name") <> '');
ALTER TABLE "built_part" ADD CONSTRAINT "built_part_serial_check" CHECK (btrim("serial") <> '');
ALTER TABLE "built_part_lot"
  ADD CONSTRAINT "built_part_lot_check" CHECK ("position" >= 1 AND btrim("material") <> '' AND btrim("lot") <> '');
ALTER TABLE "product"
  ADD CONSTRAINT "product_name_check" CHECK (btrim("name") <> ''),
  ADD CONSTRAINT "product_use_check" CHECK ("use" IN ('stripper', 'cleaner', 'sealer', 'release', 'resin', 'adhesive', 'filler', 'consumable', 'other')),
  ADD CONSTRAINT "product_unit_check" CHECK ("unit" IN ('l', 'kg', 'piece', 'm', 'm2')),
  ADD CONSTRAINT "product_figures_check" CHECK (("coats" IS NULL OR "coats" >= 0) AND ("interval_min" IS NULL OR "interval_min" >= 0)
    AND ("flash_min" IS NULL OR "flash_min" >= 0) AND ("cure_min" IS NULL OR "cure_min" >= 0) AND ("pot_life_min" IS NULL OR "pot_life_min" > 0)
    AND ("shelf_life_days" IS NULL OR "shelf_life_days" > 0) AND ("open_life_days" IS NULL OR "open_life_days" > 0)
    AND ("low_below" IS NULL OR "low_below" >= 0));
ALTER TABLE "stock_lot"
  ADD CONSTRAINT "stock_lot_subject_check" CHECK (num_nonnulls("material_id", "product_id") = 1),
  ADD CONSTRAINT "stock_lot_check" CHECK (btrim("lot") <> '' AND "quantity" > 0 AND ("expires_on" IS NULL OR "expires_on" >= "received_on" - 3650)),
  ADD CONSTRAINT "stock_lot_container_check" CHECK ("container" IN ('roll', 'tin', 'drum', 'bag', 'box', 'other')),
  ADD CONSTRAINT "stock_lot_closed_check" CHECK (("closed_on" IS NULL) = ("closed_why" IS NULL));
ALTER TABLE "lot_move"
  ADD CONSTRAINT "lot_move_kind_check" CHECK ("kind" IN ('used', 'counted', 'out of freezer', 'correction')),
  ADD CONSTRAINT "lot_move_amount_check" CHECK ("amount" >= 0 AND ("kind" NOT IN ('used', 'out of freezer') OR "amount" > 0)),
  ADD CONSTRAINT "lot_move_correction_check" CHECK ("kind" <> 'correction' OR "corrects_id" IS NOT NULL);
ALTER TABLE "price"
  ADD CONSTRAINT "price_subject_check" CHECK (num_nonnulls("material_id", "product_id") = 1),
  ADD CONSTRAINT "price_check" CHECK ("minor_per_unit" >= 0 AND "currency" ~ '^[A-Z]{3}$');
ALTER TABLE "rate"
  ADD CONSTRAINT "rate_check" CHECK (btrim("operation") <> '' AND "basis" IN ('hour', 'm2', 'ply m2', 'm', 'piece', 'run')
    AND ("hours" IS NULL OR "hours" > 0) AND ("minor_per_basis" IS NULL OR "minor_per_basis" >= 0) AND "currency" ~ '^[A-Z]{3}$');
ALTER TABLE "picture"
  ADD CONSTRAINT "picture_kind_check" CHECK ("kind" IN ('photo', 'drawing')),
  ADD CONSTRAINT "picture_type_check" CHECK ("mime_type" IN ('image/jpeg', 'image/png', 'application/pdf')),
  ADD CONSTRAINT "picture_subject_check" CHECK (num_nonnulls("mould_id", "pattern_id", "set_id", "built_part_id") = 1),
  ADD CONSTRAINT "picture_size_check" CHECK ("size_bytes" > 0 AND ("mime_type" = 'application/pdf') = ("width_px" IS NULL)
    AND ("width_px" IS NULL) = ("height_px" IS NULL)),
  ADD CONSTRAINT "picture_put_away_check" CHECK (("put_away_at" IS NULL) = ("put_away_because" IS NULL));
ALTER TABLE "picture_bytes" ADD CONSTRAINT "picture_bytes_size_check" CHECK ("size" IN ('full', 'small'));
ALTER TABLE "thickness_reading"
  ADD CONSTRAINT "thickness_reading_struck_check" CHECK (("struck_at" IS NULL) = ("struck_by_name" IS NULL) AND ("struck_at" IS NULL) = ("struck_because" IS NULL));

ALTER TABLE "log_entry" DROP CONSTRAINT "log_entry_kind_check";
ALTER TABLE "log_entry"
  ADD CONSTRAINT "log_entry_kind_check" CHECK ("kind" IN ('cleared', 'pull', 'strip', 'clean', 'seal', 'coat', 'tape-test', 'test-patch',
    'leak-check', 'inspection', 'damage', 'repair', 'dowel-changed', 're-machined', 'heat', 'pins', 'measured', 'moved', 'state',
    'patch-laid', 'proved', 'before-book', 'matter', 'settled', 'note', 'correction')),
  ADD CONSTRAINT "log_entry_pattern_kind_check" CHECK ("pattern_id" IS NULL OR "kind" IN ('clean', 'seal', 'coat', 'inspection', 'damage',
    'repair', 're-machined', 'measured', 'moved', 'before-book', 'matter', 'settled', 'note', 'correction'));

CREATE TRIGGER "lot_move_append_only" BEFORE UPDATE OR DELETE ON "lot_move" FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER "price_append_only" BEFORE UPDATE OR DELETE ON "price" FOR EACH ROW EXECUTE FUNCTION refuse_change();
CREATE TRIGGER "rate_append_only" BEFORE UPDATE OR DELETE ON "rate" FOR EACH ROW EXECUTE FUNCTION refuse_change();

-- The entry that a picture stands beside is of the same mould or pattern.
CREATE FUNCTION check_picture() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF NEW.entry_id IS NOT NULL AND NOT EXISTS (SELECT 1 FROM log_entry e WHERE e.id = NEW.entry_id
      AND e.mould_id IS NOT DISTINCT FROM NEW.mould_id AND e.pattern_id IS NOT DISTINCT FROM NEW.pattern_id) THEN
    RAISE EXCEPTION 'the entry is of another mould or pattern' USING ERRCODE = 'check_violation', CONSTRAINT = 'picture_entry_belongs';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER "picture_belongs" BEFORE INSERT OR UPDATE ON "picture" FOR EACH ROW EXECUTE FUNCTION check_picture();

-- A move that is corrected belongs to the same lot.
CREATE FUNCTION check_lot_move() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  IF NEW.corrects_id IS NOT NULL AND NOT EXISTS (SELECT 1 FROM lot_move m WHERE m.id = NEW.corrects_id AND m.lot_id = NEW.lot_id) THEN
    RAISE EXCEPTION 'the corrected move is of another lot' USING ERRCODE = 'check_violation', CONSTRAINT = 'lot_move_correction_of_lot';
  END IF;
  RETURN NEW;
END $$;
CREATE TRIGGER "lot_move_belongs" BEFORE INSERT ON "lot_move" FOR EACH ROW EXECUTE FUNCTION check_lot_move();

-- What counts, with the group that it was entered in.
CREATE OR REPLACE VIEW "effective_entry" AS
SELECT e.id, e.mould_id, e.pattern_id, e.kind, e.done_on, e.done_at, e.precision, e.day_order,
  COALESCE(e.stands_at, e.written_at) AS written_at, e.by_id, e.by_name, e.area_id, e.patch_id, e.corrects_id, e.data, e.note, e.group_id
FROM log_entry e
WHERE e.kind <> 'correction' AND NOT EXISTS (SELECT 1 FROM log_entry c WHERE c.corrects_id = e.id);

-- Damage that stops a mould, stuck parts, pulls that damaged it, and inspections that found it not sound, which no later
-- inspection of the same ground has found sound.
CREATE OR REPLACE VIEW "open_damage" AS
SELECT d.id, d.mould_id, d.pattern_id, d.kind, d.done_on, d.done_at, d.precision, d.day_order, d.written_at, d.by_id, d.by_name,
  d.area_id, d.patch_id, d.corrects_id, d.data, d.note
FROM effective_entry d
WHERE ((d.kind = 'damage' AND d.data ->> 'weight' = 'stop')
    OR (d.kind = 'pull' AND (d.data ->> 'went' = 'stuck' OR d.data ->> 'mouldFate' = 'damaged'))
    OR (d.kind = 'inspection' AND d.data ->> 'verdict' = 'not sound'))
  AND NOT EXISTS (SELECT 1 FROM effective_entry i WHERE i.kind = 'inspection' AND i.data ->> 'verdict' = 'sound'
    AND (i.mould_id = d.mould_id OR i.pattern_id = d.pattern_id)
    AND (i.area_id IS NULL OR i.area_id = d.area_id)
    AND (i.done_on, i.day_order, i.written_at, i.id) > (d.done_on, d.day_order, d.written_at, d.id));

-- Where a pattern is: what its last move says.
CREATE VIEW "pattern_place" AS
SELECT DISTINCT ON (e.pattern_id) e.pattern_id, e.data ->> 'place' AS place, e.done_on
FROM effective_entry e WHERE e.kind = 'moved' AND e.pattern_id IS NOT NULL
ORDER BY e.pattern_id, e.done_on DESC, e.day_order DESC, e.written_at DESC, e.id DESC;

-- Pulls that name a part by its serial.
CREATE VIEW "part_pull" AS
SELECT e.id, e.mould_id, e.done_on, e.done_at, e.day_order, e.written_at, e.by_name, e.data, e.note, e.group_id,
  lower(btrim(e.data ->> 'serial')) AS serial_key
FROM effective_entry e WHERE e.kind = 'pull' AND btrim(COALESCE(e.data ->> 'serial', '')) <> '';
CREATE INDEX "log_entry_serial_idx" ON "log_entry" (lower(btrim("data" ->> 'serial'))) WHERE "kind" = 'pull';
INSERT INTO "built_part" ("serial", "part_id")
SELECT DISTINCT ON (p.serial_key) btrim(p.data ->> 'serial'), m.part_id
FROM part_pull p JOIN mould m ON m.id = p.mould_id ORDER BY p.serial_key, p.done_on;

-- Matters that somebody has to see to: written as such, damage of that weight, and repairs for the time being. The last word
-- on each, or on the entry that it put right, closes it or carries it on with a new name and day (an entry "settled").
CREATE INDEX "log_entry_settles_idx" ON "log_entry" ((("data" ->> 'entryId')::uuid)) WHERE "kind" = 'settled';
CREATE VIEW "open_matter" AS
SELECT m.id AS entry_id, m.mould_id, m.pattern_id, m.area_id, m.kind, m.done_on, m.by_name, m.data ->> 'what' AS what,
  COALESCE(w.data ->> 'who', m.data ->> 'who') AS who,
  COALESCE(w.data ->> 'untilOn', m.data ->> 'untilOn')::date AS until_on,
  (w.id IS NOT NULL) AS carried
FROM effective_entry m
LEFT JOIN LATERAL (
  WITH RECURSIVE wording AS (
    SELECT m.id, m.corrects_id
    UNION ALL
    SELECT e.id, e.corrects_id FROM wording w JOIN log_entry e ON e.id = w.corrects_id
  )
  SELECT s.id, s.data FROM effective_entry s
  WHERE s.kind = 'settled' AND (s.data ->> 'entryId')::uuid IN (SELECT id FROM wording)
  ORDER BY s.done_on DESC, s.day_order DESC, s.written_at DESC, s.id DESC LIMIT 1
) w ON true
WHERE (m.kind = 'matter' OR (m.kind = 'damage' AND m.data ->> 'weight' = 'open matter')
    OR (m.kind = 'repair' AND (m.data ->> 'interim')::boolean))
  AND w.data ->> 'outcome' IS DISTINCT FROM 'closed'
  AND NOT (m.kind = 'damage' AND EXISTS (SELECT 1 FROM effective_entry i WHERE i.kind = 'inspection' AND i.data ->> 'verdict' = 'sound'
    AND (i.mould_id = m.mould_id OR i.pattern_id = m.pattern_id)
    AND (i.area_id IS NULL OR i.area_id = m.area_id)
    AND (i.done_on, i.day_order, i.written_at, i.id) > (m.done_on, m.day_order, m.written_at, m.id)));

-- A filled or re-surfaced spot is bare like a fresh patch: what was done to it since, and the pulls that it has seen.
CREATE VIEW "repair_count" AS
SELECT r.mould_id, r.id AS entry_id, r.area_id, r.done_on, r.data,
  count(*) FILTER (WHERE e.kind = 'pull')::int AS pulls_since,
  count(*) FILTER (WHERE e.kind = 'pull' AND e.data ->> 'went' = 'usual')::int AS usual_since,
  COALESCE(bool_or(e.kind = 'seal' AND (e.data ->> 'coats')::numeric > 0 AND (e.area_id IS NULL OR e.area_id = r.area_id)), false) AS sealed_since,
  COALESCE(sum((e.data ->> 'coats')::int) FILTER (WHERE e.kind = 'coat' AND (e.area_id IS NULL OR e.area_id = r.area_id)), 0)::int AS coats_since,
  COALESCE(bool_or(e.kind = 'tape-test' AND e.data ->> 'result' = 'slips' AND (e.area_id IS NULL OR e.area_id = r.area_id)), false) AS tape_slips_since,
  ((r.data ->> 'interim')::boolean AND NOT EXISTS (SELECT 1 FROM open_matter o WHERE o.entry_id = r.id)) AS closed
FROM effective_entry r
LEFT JOIN effective_entry e ON e.mould_id = r.mould_id AND e.patch_id IS NULL
  AND e.kind IN ('pull', 'seal', 'coat', 'tape-test')
  AND (e.done_on, e.day_order, e.written_at, e.id) > (r.done_on, r.day_order, r.written_at, r.id)
WHERE r.kind = 'repair' AND r.mould_id IS NOT NULL
GROUP BY r.mould_id, r.id, r.area_id, r.done_on, r.data;

-- Every heat that a mould has seen: written as such, or the cure that a pull names. What is hotter than a limit is judged elsewhere.
CREATE VIEW "heat_seen" AS
SELECT e.id, e.mould_id, e.done_on, e.day_order, e.written_at, (e.data ->> 'toC')::double precision AS to_c,
  (e.data ->> 'holdMin')::double precision AS hold_min, (e.data ->> 'withPart')::boolean AS with_part
FROM effective_entry e WHERE e.kind = 'heat' AND e.mould_id IS NOT NULL
UNION ALL
SELECT e.id, e.mould_id, e.done_on, e.day_order, e.written_at, (e.data ->> 'cureC')::double precision, NULL, true
FROM effective_entry e WHERE e.kind = 'pull' AND e.data ->> 'cureC' IS NOT NULL;

-- What is left of a lot: its last count, or its start, less what was taken since; and its hours out of the freezer. Moves that
-- were corrected, and moves of entries that were put right, don't count; what takes their place on the same day stands where
-- they stood, before or after a count.
CREATE VIEW "effective_move" AS
SELECT m.id, m.lot_id, m.kind, m.amount, m.done_on, COALESCE(w.stands_at, m.written_at) AS written_at, m.entry_id, m.plan_id
FROM lot_move m LEFT JOIN log_entry w ON w.id = m.entry_id
WHERE m.kind <> 'correction' AND NOT EXISTS (SELECT 1 FROM lot_move c WHERE c.corrects_id = m.id)
  AND (m.entry_id IS NULL OR NOT EXISTS (SELECT 1 FROM log_entry e WHERE e.corrects_id = m.entry_id));
CREATE VIEW "lot_state" AS
SELECT l.id AS lot_id, COALESCE(c.amount, l.quantity) - COALESCE(u.used, 0) AS remaining, COALESCE(u.out_hours, 0) AS out_hours,
  c.done_on AS counted_on
FROM stock_lot l
LEFT JOIN LATERAL (SELECT m.* FROM effective_move m WHERE m.lot_id = l.id AND m.kind = 'counted'
  ORDER BY m.done_on DESC, m.written_at DESC, m.id DESC LIMIT 1) c ON true
LEFT JOIN LATERAL (SELECT sum(m.amount) FILTER (WHERE m.kind = 'used'
    AND (c.id IS NULL OR (m.done_on, m.written_at, m.id) > (c.done_on, c.written_at, c.id))) AS used,
  sum(m.amount) FILTER (WHERE m.kind = 'out of freezer') AS out_hours
  FROM effective_move m WHERE m.lot_id = l.id) u ON true;

-- What lists show of a plan.
CREATE FUNCTION summarise_plan() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  NEW.place := COALESCE(NEW.result -> 'value' ->> 'place', '');
  NEW.side := COALESCE(NEW.input ->> 'side', '');
  NEW.length_mm := COALESCE((NEW.result -> 'value' -> 'lengths' ->> 'lengthMm')::double precision, 0);
  NEW.ply_count := COALESCE(jsonb_array_length(NEW.result -> 'value' -> 'plies'), 0);
  NEW.stop_count := jsonb_array_length(jsonb_path_query_array(NEW.result, '$.findings[*] ? (@.severity == "stop")'));
  RETURN NEW;
END $$;
CREATE TRIGGER "patch_plan_summary" BEFORE INSERT OR UPDATE OF "input", "result" ON "patch_plan" FOR EACH ROW EXECUTE FUNCTION summarise_plan();
UPDATE "patch_plan" SET "place" = COALESCE("result" -> 'value' ->> 'place', ''), "side" = COALESCE("input" ->> 'side', ''),
  "length_mm" = COALESCE(("result" -> 'value' -> 'lengths' ->> 'lengthMm')::double precision, 0),
  "ply_count" = COALESCE(jsonb_array_length("result" -> 'value' -> 'plies'), 0),
  "stop_count" = jsonb_array_length(jsonb_path_query_array("result", '$.findings[*] ? (@.severity == "stop")'));

-- A tally for every mould, raised by whatever may change what the views say of it.
CREATE FUNCTION raise_tally(mould uuid) RETURNS void LANGUAGE sql AS $$
  INSERT INTO mould_tally (mould_id) SELECT mould WHERE mould IS NOT NULL
  ON CONFLICT (mould_id) DO UPDATE SET dirty = mould_tally.dirty + 1
$$;
CREATE FUNCTION raise_tally_of_mould() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN PERFORM raise_tally(NEW.id); RETURN NULL; END $$;
CREATE FUNCTION raise_tally_by_mould_id() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN PERFORM raise_tally(NEW.mould_id); RETURN NULL; END $$;
CREATE FUNCTION raise_tally_by_patch() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN PERFORM raise_tally((SELECT p.mould_id FROM patch p WHERE p.id = NEW.patch_id)); RETURN NULL; END $$;
CREATE TRIGGER "mould_tally_of_mould" AFTER INSERT OR UPDATE ON "mould" FOR EACH ROW EXECUTE FUNCTION raise_tally_of_mould();
-- Once a statement: an import of thousands of entries of one mould raises its tally once.
CREATE FUNCTION raise_tally_by_entries() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  INSERT INTO mould_tally (mould_id) SELECT DISTINCT mould_id FROM added WHERE mould_id IS NOT NULL ORDER BY mould_id
  ON CONFLICT (mould_id) DO UPDATE SET dirty = mould_tally.dirty + 1;
  RETURN NULL;
END $$;
CREATE TRIGGER "mould_tally_of_entry" AFTER INSERT ON "log_entry" REFERENCING NEW TABLE AS added
  FOR EACH STATEMENT EXECUTE FUNCTION raise_tally_by_entries();
CREATE TRIGGER "mould_tally_of_area" AFTER INSERT OR UPDATE ON "face_area" FOR EACH ROW EXECUTE FUNCTION raise_tally_by_mould_id();
CREATE TRIGGER "mould_tally_of_patch" AFTER INSERT OR UPDATE ON "patch" FOR EACH ROW EXECUTE FUNCTION raise_tally_by_mould_id();
CREATE TRIGGER "mould_tally_of_plan" AFTER INSERT OR UPDATE ON "patch_plan" FOR EACH ROW EXECUTE FUNCTION raise_tally_by_patch();
-- Names of what a mould belongs to stand in its tally as well. Several tallies are held in the order of their moulds, here and
-- by whoever writes on several moulds at once, so that nobody blocks each other.
CREATE FUNCTION raise_tally_by_name() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  WITH held AS (SELECT t.mould_id FROM mould_tally t WHERE t.mould_id IN
      (SELECT m.id FROM mould m WHERE m.part_id = NEW.id OR m.pattern_id = NEW.id OR m.set_id = NEW.id)
    ORDER BY t.mould_id FOR UPDATE)
  UPDATE mould_tally t SET dirty = t.dirty + 1 FROM held WHERE t.mould_id = held.mould_id;
  RETURN NULL;
END $$;
CREATE TRIGGER "mould_tally_of_part" AFTER UPDATE ON "part" FOR EACH ROW EXECUTE FUNCTION raise_tally_by_name();
CREATE TRIGGER "mould_tally_of_pattern" AFTER UPDATE ON "pattern" FOR EACH ROW EXECUTE FUNCTION raise_tally_by_name();
CREATE TRIGGER "mould_tally_of_set" AFTER UPDATE ON "mould_set" FOR EACH ROW EXECUTE FUNCTION raise_tally_by_name();
INSERT INTO mould_tally (mould_id) SELECT id FROM mould;

-- Codes in the order that people expect: LH-2 before LH-10.
CREATE FUNCTION natural_key(code text) RETURNS text LANGUAGE sql IMMUTABLE PARALLEL SAFE AS $$
  SELECT regexp_replace(regexp_replace(lower(btrim(code)), '([0-9]+)', '0000000000\1', 'g'), '[0-9]*([0-9]{10})', '\1', 'g')
$$;
CREATE INDEX "mould_tally_dirty_idx" ON "mould_tally" ("mould_id") WHERE "dirty" <> "clean";
-- Search that forgives typing errors. lib/core/search/fold.ts does to what is typed what plain_words does to what is stored;
-- a store test holds them together.
CREATE EXTENSION IF NOT EXISTS pg_trgm;
-- Small letters without accents.
CREATE FUNCTION plain_words(words text) RETURNS text LANGUAGE plpgsql IMMUTABLE STRICT PARALLEL SAFE COST 5 AS $$
BEGIN
  IF octet_length(words) = char_length(words) THEN RETURN lower(words); END IF;
  RETURN replace(replace(replace(replace(replace(replace(translate(lower(regexp_replace(normalize(words, NFKD), U&'[\0300-\036F]', '', 'g')),
    U&'\00F8\00D8\0142\0141\0111\0110\0131', 'oollddi'), U&'\00DF', 'ss'), U&'\1E9E', 'ss'), U&'\00E6', 'ae'), U&'\00C6', 'ae'), U&'\0153', 'oe'),
    U&'\0152', 'oe');
END $$;
-- A code without the signs between: "LH-P2", "lh p2" and "lhp2" are one.
CREATE FUNCTION squeezed(code text) RETURNS text LANGUAGE sql IMMUTABLE STRICT PARALLEL SAFE
  RETURN regexp_replace(plain_words(code), '[^[:alnum:]]+', '', 'g');
-- Simple enough to be put in its place by the planner: called as a function it would cost five times as much an entry.
CREATE FUNCTION entry_words(note text, data jsonb) RETURNS text LANGUAGE sql IMMUTABLE PARALLEL SAFE
  RETURN plain_words(' ' || note || ' ' || COALESCE(data ->> 'what', '') || ' ' || COALESCE(data ->> 'reason', '') || ' ' || COALESCE(data ->> 'because', '')
    || ' ' || COALESCE(data ->> 'place', '') || ' ' || COALESCE(data ->> 'product', '') || ' ' || COALESCE(data ->> 'lot', '') || ' '
    || COALESCE(data ->> 'serial', '') || ' ' || COALESCE(data ->> 'tag', '') || ' ' || COALESCE(data ->> 'who', '') || ' ' ||
    COALESCE(data ->> 'how', '') || ' ' || COALESCE(data ->> 'instrument', '') || ' ' || COALESCE(data ->> 'agent', '') || ' ' ||
    COALESCE(data ->> 'sealer', ''));
CREATE INDEX "mould_words_idx" ON "mould" USING gin (plain_words(' ' || "code" || ' ' || "name" || ' ' || "owner" || ' ' || "note" || ' ' || "demoulding" || ' ' || "do_nots") gin_trgm_ops);
CREATE INDEX "mould_code_squeezed_idx" ON "mould" (squeezed("code") text_pattern_ops);
CREATE INDEX "log_entry_words_idx" ON "log_entry" USING gin (entry_words("note", "data") gin_trgm_ops);
CREATE INDEX "log_entry_by_idx" ON "log_entry" ("by_id", "written_at" DESC, "id" DESC);
CREATE INDEX "log_entry_kind_idx" ON "log_entry" ("kind", "written_at" DESC, "id" DESC);
CREATE INDEX "log_entry_spot_idx" ON "log_entry" ("area_id") WHERE "kind" IN ('damage', 'repair') AND "data" ->> 'uMm' IS NOT NULL;
CREATE INDEX "part_code_squeezed_idx" ON "part" (squeezed("code") text_pattern_ops);
CREATE INDEX "pattern_code_squeezed_idx" ON "pattern" (squeezed("code") text_pattern_ops);
CREATE INDEX "mould_set_code_squeezed_idx" ON "mould_set" (squeezed("code") text_pattern_ops);
CREATE INDEX "mould_tally_words_idx" ON "mould_tally" USING gin ("words" gin_trgm_ops);
CREATE INDEX "part_words_idx" ON "part" USING gin (plain_words(' ' || "code" || ' ' || "name" || ' ' || "note") gin_trgm_ops);
CREATE INDEX "pattern_words_idx" ON "pattern" USING gin (plain_words(' ' || "code" || ' ' || "name" || ' ' || "owner" || ' ' || "place" || ' ' || "note") gin_trgm_ops);
CREATE INDEX "mould_set_words_idx" ON "mould_set" USING gin (plain_words(' ' || "code" || ' ' || "name" || ' ' || "note") gin_trgm_ops);
CREATE INDEX "built_part_words_idx" ON "built_part" USING gin (plain_words(' ' || "serial" || ' ' || "where_now" || ' ' || "note") gin_trgm_ops);
CREATE INDEX "built_part_serial_squeezed_idx" ON "built_part" (squeezed("serial") text_pattern_ops);
CREATE INDEX "stock_lot_words_idx" ON "stock_lot" USING gin (plain_words(' ' || "lot" || ' ' || "place" || ' ' || "note") gin_trgm_ops);
CREATE INDEX "patch_words_idx" ON "patch" USING gin (plain_words(' ' || "title" || ' ' || "reason") gin_trgm_ops);
CREATE INDEX "locating_point_tag_idx" ON "locating_point" (plain_words("tag") text_pattern_ops);
CREATE INDEX "face_area_words_idx" ON "face_area" (plain_words("name") text_pattern_ops);
CREATE INDEX "picture_words_idx" ON "picture" USING gin (plain_words(' ' || "caption" || ' ' || "view") gin_trgm_ops);
-- Names without their figures: search takes the words that may have been meant from here.
CREATE INDEX "mould_plain_name_idx" ON "mould" (plain_words(translate("name", '0123456789', '')), "name");
CREATE INDEX "part_plain_name_idx" ON "part" (plain_words(translate("name", '0123456789', '')), "name");
CREATE INDEX "pattern_plain_name_idx" ON "pattern" (plain_words(translate("name", '0123456789', '')), "name");
CREATE INDEX "mould_set_plain_name_idx" ON "mould_set" (plain_words(translate("name", '0123456789', '')), "name");
CREATE INDEX "patch_plain_name_idx" ON "patch" (plain_words(translate("title", '0123456789', '')), "title");
CREATE INDEX "face_area_plain_name_idx" ON "face_area" (plain_words(translate("name", '0123456789', '')), "name");
CREATE INDEX "mould_tally_plain_name_idx" ON "mould_tally" (plain_words(translate("place", '0123456789', '')), "place");
CREATE INDEX "patch_plan_place_idx" ON "patch_plan" (plain_words("place") text_pattern_ops);
