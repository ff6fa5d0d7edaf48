-- Step 1 of the journal and the other local tables. Never edited after release: what comes later is
-- a step of its own that only adds.

-- The records, exactly as they were written, in order of arrival here.
CREATE TABLE journal (
  lid    INTEGER PRIMARY KEY,                       -- order of arrival; never leaves this file
  feed   INTEGER NOT NULL,                          -- feed.n
  dev    INTEGER NOT NULL,                          -- device.n
  seq    INTEGER NOT NULL CHECK (seq >= 1),         -- place in the device's chain in this feed
  id     BLOB    NOT NULL CHECK (length(id) = 16),
  bytes  BLOB    NOT NULL CHECK (length(bytes) <= 65536),
  digest BLOB    NOT NULL CHECK (length(digest) = 32),  -- of the chain after this record
  hseq   INTEGER,                                   -- the hub's stamp; all three NULL while unsent
  recv   INTEGER,
  flags  INTEGER,
  UNIQUE (feed, dev, seq)
) STRICT;
-- Not unique: after a fork the same record stands in two chains.
CREATE INDEX journal_by_id ON journal (id);
CREATE INDEX journal_unsent ON journal (feed, dev, seq) WHERE hseq IS NULL;

CREATE TABLE feed (
  n       INTEGER PRIMARY KEY,
  id      BLOB    NOT NULL UNIQUE CHECK (length(id) = 16),
  cursor  INTEGER NOT NULL DEFAULT 0,               -- last hub sequence applied
  running BLOB    NOT NULL DEFAULT (zeroblob(32)),  -- running digest at the cursor
  l       INTEGER NOT NULL DEFAULT 0,               -- hybrid clock of this feed, ms since 1970 UTC
  c       INTEGER NOT NULL DEFAULT 0,
  segment INTEGER,                                  -- clock segment last told in this feed; NULL: none yet
  carried INTEGER NOT NULL DEFAULT 1                -- 1: this device follows the feed
) STRICT;

CREATE TABLE device (
  n   INTEGER PRIMARY KEY,
  id  BLOB NOT NULL UNIQUE CHECK (length(id) = 16),
  key BLOB                                          -- Ed25519 public key; NULL: not heard of yet
) STRICT;

-- An entry that is still being typed: one row a subject, kind and spot or screw.
CREATE TABLE draft (
  feed    BLOB    NOT NULL CHECK (length(feed) = 16),
  kind    INTEGER NOT NULL,
  subject BLOB    NOT NULL CHECK (length(subject) = 16),
  place   INTEGER NOT NULL,
  who     BLOB    NOT NULL CHECK (length(who) = 16),
  body    BLOB    NOT NULL,                         -- CBOR map, as the record's body
  PRIMARY KEY (feed, kind, subject, place)
) STRICT, WITHOUT ROWID;

-- This device's own: hand, theme, language, clock segment.
CREATE TABLE setting (
  name  TEXT NOT NULL PRIMARY KEY,
  value ANY  NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE unlock (
  person     BLOB    NOT NULL PRIMARY KEY CHECK (length(person) = 16),
  salt       BLOB    NOT NULL,
  pin_digest BLOB    NOT NULL,
  failed     INTEGER NOT NULL DEFAULT 0             -- wrong tries since the last right one
) STRICT, WITHOUT ROWID;

-- Forecasts are a cache: they can be deleted at any time and never travel.
CREATE TABLE fit (
  n         INTEGER PRIMARY KEY,
  as_of_day INTEGER NOT NULL,                       -- days since 1970-01-01
  made_from BLOB    NOT NULL,                       -- CBOR: sites, cursor and own sequence of each feed
  asked_for BLOB    NOT NULL,                       -- CBOR: sites asked for
  version   TEXT    NOT NULL,                       -- of the program
  constants BLOB    NOT NULL,                       -- CBOR: what the owner set
  shared    BLOB    NOT NULL                        -- the fit's shared effects
) STRICT;

CREATE TABLE forecast (
  component BLOB    NOT NULL CHECK (length(component) = 16),
  "limit"   INTEGER NOT NULL,
  fit       INTEGER NOT NULL,
  rows      BLOB    NOT NULL,                       -- quantiles, chances by date, words and flags
  stale     INTEGER NOT NULL DEFAULT 0 CHECK (stale IN (0, 1)),
  PRIMARY KEY (component, "limit")
) STRICT, WITHOUT ROWID;
