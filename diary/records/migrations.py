"""The history of the database's schema: released migrations are never edited, only followed.

*Precious* tables hold what only the breeder can give: recordings, the register, corrections.
*Derived* tables can be dropped and made again from the recordings, and carry the versions
of what made them. Corrections and the register's log refuse to be changed or deleted.
"""

from sqlite_utils import Database, Migrations

MIGRATIONS = Migrations("diary")

PRECIOUS = (
    "recordings",
    "seedlings",
    "status_history",
    "crosses",
    "names",
    "corrections",
    "register_log",
    "preferences",
)
DERIVED = (
    "blocks",
    "transcripts",
    "utterances",
    "readings",
    "clips",
    "records",
    "plant_keys",
    "placements",
)
APPEND_ONLY = ("corrections", "register_log")


def _run(db: Database, script: str) -> None:
    # one by one: executescript would commit the migration's own transaction
    for statement in script.split(";\n\n"):
        db.execute(statement)


@MIGRATIONS()
def m001_precious(db: Database) -> None:
    """What the breeder gives."""
    _run(
        db,
        """
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

CREATE TABLE status_history (
    id INTEGER PRIMARY KEY,
    seedling INTEGER NOT NULL REFERENCES seedlings(id),
    status TEXT NOT NULL,
    day TEXT,
    reason TEXT,
    made_at TEXT NOT NULL
) STRICT;

CREATE INDEX status_history_seedling ON status_history(seedling);

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

CREATE INDEX corrections_recording ON corrections(recording);

CREATE TABLE register_log (
    id INTEGER PRIMARY KEY,
    made_at TEXT NOT NULL,
    entry TEXT NOT NULL,
    field TEXT NOT NULL,
    before TEXT,
    after TEXT
) STRICT;

CREATE TABLE preferences (
    key TEXT PRIMARY KEY,
    value TEXT NOT NULL
) STRICT""",
    )
    make_append_only(db)


@MIGRATIONS()
def m002_derived(db: Database) -> None:
    """What can be made again."""
    _run(
        db,
        """
CREATE TABLE blocks (
    recording TEXT NOT NULL REFERENCES recordings(id),
    position INTEGER NOT NULL,
    end_ms INTEGER NOT NULL,
    settings TEXT NOT NULL,
    hints TEXT NOT NULL,
    body TEXT NOT NULL,
    PRIMARY KEY (recording, position)
) STRICT;

CREATE TABLE transcripts (
    recording TEXT PRIMARY KEY REFERENCES recordings(id),
    words_from TEXT NOT NULL,
    made_at TEXT NOT NULL,
    body TEXT NOT NULL
) STRICT;

CREATE TABLE utterances (
    id INTEGER PRIMARY KEY,
    recording TEXT NOT NULL REFERENCES recordings(id),
    start_ms INTEGER NOT NULL,
    end_ms INTEGER NOT NULL,
    text TEXT NOT NULL
) STRICT;

CREATE INDEX utterances_recording ON utterances(recording, start_ms);

CREATE VIRTUAL TABLE utterances_fts USING fts5(
    text, content='utterances', content_rowid='id',
    tokenize="porter unicode61 remove_diacritics 2"
);

CREATE TRIGGER utterances_added AFTER INSERT ON utterances BEGIN
    INSERT INTO utterances_fts(rowid, text) VALUES (new.id, new.text);
END;

CREATE TRIGGER utterances_gone AFTER DELETE ON utterances BEGIN
    INSERT INTO utterances_fts(utterances_fts, rowid, text) VALUES ('delete', old.id, old.text);
END;

CREATE TABLE readings (
    recording TEXT PRIMARY KEY REFERENCES recordings(id),
    reader TEXT NOT NULL,
    words_from TEXT NOT NULL,
    made_at TEXT NOT NULL,
    body TEXT NOT NULL,
    suggestions TEXT NOT NULL
) STRICT;

CREATE TABLE clips (
    id INTEGER PRIMARY KEY,
    recording TEXT NOT NULL REFERENCES recordings(id),
    reader TEXT NOT NULL,
    own_key TEXT NOT NULL,
    own_kind TEXT NOT NULL,
    start_ms INTEGER NOT NULL,
    end_ms INTEGER NOT NULL,
    day TEXT,
    text TEXT NOT NULL,
    confidence REAL NOT NULL,
    band TEXT NOT NULL,
    origin TEXT NOT NULL,
    heard_plant TEXT,
    evidence TEXT NOT NULL,
    corrections TEXT NOT NULL
) STRICT;

CREATE INDEX clips_recording ON clips(recording, start_ms);

CREATE INDEX clips_own_key ON clips(own_key);

CREATE TABLE records (
    id INTEGER PRIMARY KEY,
    clip INTEGER NOT NULL REFERENCES clips(id) ON DELETE CASCADE,
    recording TEXT NOT NULL REFERENCES recordings(id),
    proposal INTEGER NOT NULL,
    trait TEXT NOT NULL,
    part TEXT,
    value ANY NOT NULL,
    unit TEXT,
    modifiers TEXT NOT NULL,
    petals TEXT NOT NULL,
    day TEXT,
    start_ms INTEGER NOT NULL,
    end_ms INTEGER NOT NULL,
    text TEXT NOT NULL,
    hedged INTEGER NOT NULL,
    negated INTEGER NOT NULL,
    confidence REAL NOT NULL,
    band TEXT NOT NULL,
    origin TEXT NOT NULL,
    heard TEXT NOT NULL,
    evidence TEXT NOT NULL,
    corrections TEXT NOT NULL,
    doubtful INTEGER NOT NULL
) STRICT;

CREATE INDEX records_clip ON records(clip);

CREATE INDEX records_trait ON records(trait, part, value);

CREATE TABLE plant_keys (
    own_key TEXT PRIMARY KEY,
    key TEXT NOT NULL,
    kind TEXT NOT NULL,
    title TEXT NOT NULL
) STRICT;

CREATE INDEX plant_keys_key ON plant_keys(key);

CREATE TABLE placements (
    correction TEXT PRIMARY KEY,
    recording TEXT,
    state TEXT NOT NULL
) STRICT""",
    )


def make_append_only(db: Database) -> None:
    """Triggers that refuse change and deletion; to be made again after any `transform`."""
    for table in APPEND_ONLY:
        for verb in ("UPDATE", "DELETE"):
            db.execute(
                f"CREATE TRIGGER IF NOT EXISTS {table}_no_{verb.lower()} BEFORE {verb} ON {table} "
                f"BEGIN SELECT RAISE(ABORT, '{table} are only ever added to'); END"
            )
        # INSERT OR REPLACE deletes without firing the delete trigger
        db.execute(
            f"CREATE TRIGGER IF NOT EXISTS {table}_no_replace BEFORE INSERT ON {table} "
            f"WHEN EXISTS (SELECT 1 FROM {table} WHERE id = new.id) "
            f"BEGIN SELECT RAISE(ABORT, '{table} are only ever added to'); END"
        )
