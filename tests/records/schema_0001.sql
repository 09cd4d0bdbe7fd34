BEGIN TRANSACTION;
CREATE TABLE "_sqlite_migrations" (
   "id" INTEGER PRIMARY KEY,
   "migration_set" TEXT,
   "name" TEXT,
   "applied_at" TEXT
);
INSERT INTO "_sqlite_migrations" VALUES(1,'diary','m001_precious','2026-11-25 13:11:57.534199+00:00');
CREATE TABLE corrections (
    id TEXT PRIMARY KEY,
    made_at TEXT NOT NULL,
    made_by TEXT NOT NULL,
    recording TEXT,
    start_ms INTEGER,
    end_ms INTEGER,
    kind TEXT NOT NULL,
    change TEXT NOT NULL,
    seen TEXT NOT NULL
) STRICT;
INSERT INTO "corrections" VALUES('018d00000001-aaaaaaaaaa','2031-06-03T10:00:00.000+00:00','breeder','ffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff',2000,4000,'SetValue','{"value":45,"modifiers":null}','{"trait":"bloom_diameter","value":80,"part":null,"plant":"23-04"}');
INSERT INTO "corrections" VALUES('018d00000002-aaaaaaaaaa','2031-06-03T10:01:00.000+00:00','breeder',NULL,NULL,NULL,'Renumber','{"number":"23-04","to":"24-01"}','{"trait":null,"value":null,"part":null,"plant":null}');
CREATE TABLE crosses (
    id INTEGER PRIMARY KEY,
    code TEXT NOT NULL UNIQUE,
    seed_parent TEXT,
    pollen_parent TEXT,
    day TEXT,
    seeds_sown INTEGER,
    germinated INTEGER,
    note TEXT,
    extra TEXT NOT NULL DEFAULT '[]'
) STRICT;
CREATE TABLE names (
    id INTEGER PRIMARY KEY,
    name TEXT NOT NULL UNIQUE,
    synonyms TEXT NOT NULL DEFAULT '[]',
    mishearings TEXT NOT NULL DEFAULT '[]',
    seed_parent TEXT,
    pollen_parent TEXT,
    note TEXT,
    extra TEXT NOT NULL DEFAULT '[]'
) STRICT;
CREATE TABLE preferences (
    key TEXT PRIMARY KEY,
    value TEXT NOT NULL
) STRICT;
CREATE TABLE recordings (
    id TEXT PRIMARY KEY,
    name TEXT NOT NULL UNIQUE,
    title TEXT NOT NULL,
    path TEXT NOT NULL,
    bytes INTEGER NOT NULL,
    kind TEXT NOT NULL,
    duration_ms INTEGER,
    recorded TEXT,
    recorded_from TEXT,
    plant_group TEXT,
    joins TEXT REFERENCES recordings(id),
    added_at TEXT NOT NULL,
    removed_at TEXT
) STRICT;
INSERT INTO "recordings" VALUES('ffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffffff','bench-walk','bench-walk','bench-walk.mp4',1000,'video',20000,'2031-06-02','container',NULL,NULL,'2031-06-02T18:00:00.000+00:00',NULL);
CREATE TABLE register_log (
    id INTEGER PRIMARY KEY,
    made_at TEXT NOT NULL,
    entry TEXT NOT NULL,
    field TEXT NOT NULL,
    before TEXT,
    after TEXT
) STRICT;
INSERT INTO "register_log" VALUES(1,'2031-06-02T18:00:00.000+00:00','seedlings/23-04','number',NULL,'23-04');
CREATE TABLE seedlings (
    id INTEGER PRIMARY KEY,
    number TEXT NOT NULL UNIQUE,
    cross_code TEXT,
    seed_parent TEXT,
    pollen_parent TEXT,
    sown TEXT,
    pricked_out TEXT,
    first_flower TEXT,
    place TEXT,
    name TEXT,
    note TEXT,
    extra TEXT NOT NULL DEFAULT '[]'
) STRICT;
INSERT INTO "seedlings" VALUES(1,'23-04',NULL,'Fenmarsh Lad',NULL,NULL,NULL,NULL,NULL,NULL,NULL,'[]');
CREATE TABLE status_history (
    id INTEGER PRIMARY KEY,
    seedling INTEGER NOT NULL REFERENCES seedlings(id),
    status TEXT NOT NULL,
    day TEXT,
    reason TEXT,
    made_at TEXT NOT NULL
) STRICT;
CREATE UNIQUE INDEX "idx__sqlite_migrations_migration_set_name"
    ON "_sqlite_migrations" ("migration_set", "name");
CREATE INDEX status_history_seedling ON status_history(seedling);
CREATE INDEX corrections_recording ON corrections(recording);
CREATE TRIGGER corrections_no_update BEFORE UPDATE ON corrections BEGIN SELECT RAISE(ABORT, 'corrections are only ever added to'); END;
CREATE TRIGGER corrections_no_delete BEFORE DELETE ON corrections BEGIN SELECT RAISE(ABORT, 'corrections are only ever added to'); END;
CREATE TRIGGER corrections_no_replace BEFORE INSERT ON corrections WHEN EXISTS (SELECT 1 FROM corrections WHERE id = new.id) BEGIN SELECT RAISE(ABORT, 'corrections are only ever added to'); END;
CREATE TRIGGER register_log_no_update BEFORE UPDATE ON register_log BEGIN SELECT RAISE(ABORT, 'register_log are only ever added to'); END;
CREATE TRIGGER register_log_no_delete BEFORE DELETE ON register_log BEGIN SELECT RAISE(ABORT, 'register_log are only ever added to'); END;
CREATE TRIGGER register_log_no_replace BEFORE INSERT ON register_log WHEN EXISTS (SELECT 1 FROM register_log WHERE id = new.id) BEGIN SELECT RAISE(ABORT, 'register_log are only ever added to'); END;
COMMIT;
