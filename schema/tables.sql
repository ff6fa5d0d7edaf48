-- The folded tables as they are now. All of it is made from the journal: nothing here is ever changed by a
-- script. To change a table, change core/fold/columns.h and this file together (a test compares them) and raise
-- the fold version: every register then drops its tables and folds its journal again.
--
-- Identifiers and digests are BLOB; NULL means not known or not said. Columns named rest, and others said
-- to be so, hold CBOR. No foreign keys: a record may arrive before the one it names, and then both are shown.
-- No local counter is a key: the same records and stamps give the same rows whatever the order of arrival.
-- Units are those of the records, named at the end of the column.

-- One record as it came. seen: the visit it belongs to; about: the second thing it names (a strike,
-- a finding, the other visit); hseq and recv absent while unsent.
CREATE TABLE fact (
  record BLOB NOT NULL, kind INTEGER NOT NULL, feed BLOB NOT NULL, dev BLOB NOT NULL,
  seq INTEGER NOT NULL, l INTEGER NOT NULL, c INTEGER NOT NULL, w INTEGER NOT NULL,
  g INTEGER NOT NULL, who BLOB NOT NULL, subject BLOB NOT NULL, about BLOB, visit BLOB,
  hseq INTEGER, recv INTEGER, flags INTEGER NOT NULL, body BLOB NOT NULL, PRIMARY KEY (record)
) STRICT, WITHOUT ROWID;
CREATE INDEX fact_by_subject ON fact (subject, kind);
CREATE INDEX fact_by_about ON fact (about, kind);
CREATE INDEX fact_by_visit ON fact (visit, subject);
CREATE INDEX fact_by_segment ON fact (dev, feed, g);

-- What corrections, voids and settlings say about one record. released: a held record that a
-- settling let through.
CREATE TABLE change (
  record BLOB NOT NULL, voided_by BLOB, corrected_by BLOB, corrected BLOB, released_by BLOB,
  PRIMARY KEY (record)
) STRICT, WITHOUT ROWID;

-- offset_ms is added to a record's raw wall clock. lower and upper: the contacts an assumed offset
-- has to stay between.
CREATE TABLE clock_segment (
  dev BLOB NOT NULL, feed BLOB NOT NULL, g INTEGER NOT NULL, offset_ms INTEGER NOT NULL,
  quality INTEGER NOT NULL, uncertainty_ms INTEGER, lower_ms INTEGER, upper_ms INTEGER,
  PRIMARY KEY (dev, feed, g)
) STRICT, WITHOUT ROWID;

-- Which visits have readings of a clock segment.
CREATE TABLE clock_use (
  dev BLOB NOT NULL, feed BLOB NOT NULL, g INTEGER NOT NULL, visit BLOB NOT NULL,
  PRIMARY KEY (dev, feed, g, visit)
) STRICT, WITHOUT ROWID;

-- type, made_by, role, life_state as the record's codes; life_state absent: nobody said. newer: a
-- program of later date wrote about it. rest: CBOR map {field: value} of the fields without a
-- column.
CREATE TABLE entity (
  id BLOB NOT NULL, type INTEGER NOT NULL, feed BLOB NOT NULL, parent BLOB,
  created_by BLOB NOT NULL, created_t INTEGER NOT NULL, import_reference TEXT, made_by INTEGER,
  life_state INTEGER, name TEXT, code TEXT, label TEXT, chainage_mm INTEGER, ord INTEGER,
  tag TEXT, role INTEGER, component_type BLOB, date_in_service INTEGER,
  coating_nominal_tenth_um INTEGER, part_of BLOB, retired_by BLOB, held INTEGER NOT NULL,
  voided_by BLOB, newer INTEGER NOT NULL, rest BLOB, PRIMARY KEY (id)
) STRICT, WITHOUT ROWID;
CREATE INDEX entity_by_parent ON entity (parent, type);
CREATE INDEX entity_by_tag ON entity (tag);
CREATE INDEX entity_by_component_type ON entity (component_type);
CREATE INDEX entity_by_part_of ON entity (part_of);
CREATE INDEX entity_by_import_reference ON entity (import_reference);

-- One value that one record gave to one field. superseded: another record that counts names this
-- one as seen.
CREATE TABLE field_edit (
  record BLOB NOT NULL, field INTEGER NOT NULL, entity BLOB NOT NULL, value BLOB NOT NULL,
  eff INTEGER NOT NULL, l INTEGER NOT NULL, c INTEGER NOT NULL, dev BLOB NOT NULL,
  who BLOB NOT NULL, t INTEGER NOT NULL, superseded INTEGER NOT NULL, counts INTEGER NOT NULL,
  PRIMARY KEY (record, field)
) STRICT, WITHOUT ROWID;
CREATE INDEX field_edit_by_entity ON field_edit (entity, field);

-- what: see Disagreement in rules.h. records: CBOR array of record ids, ascending. winner: what is
-- shown meanwhile. decision: the settling's code where it named no record.
CREATE TABLE disagreement (
  subject BLOB NOT NULL, what INTEGER NOT NULL, detail INTEGER NOT NULL, feed BLOB NOT NULL,
  records BLOB NOT NULL, winner BLOB, settled_by BLOB, decision INTEGER,
  PRIMARY KEY (subject, what, detail)
) STRICT, WITHOUT ROWID;

-- Things retired, by themselves or by what they stand in.
CREATE TABLE retirement (
  entity BLOB NOT NULL, retired BLOB NOT NULL, set_by BLOB NOT NULL, t INTEGER NOT NULL,
  PRIMARY KEY (entity)
) STRICT, WITHOUT ROWID;

-- complete: everybody who joined has sealed; sealed_t: when the last of them did. first_t, last_t:
-- the span of all records of the visit, whatever was said about them.
CREATE TABLE visit (
  record BLOB NOT NULL, kind INTEGER NOT NULL, feed BLOB NOT NULL, subject BLOB NOT NULL,
  who BLOB NOT NULL, dev BLOB NOT NULL, t INTEGER NOT NULL, t_quality INTEGER NOT NULL,
  held INTEGER NOT NULL, voided_by BLOB, corrected_by BLOB, kind_of_visit INTEGER, name TEXT,
  runs BLOB, conditions BLOB, event BLOB, merged_into BLOB, complete INTEGER NOT NULL,
  first_t INTEGER NOT NULL, last_t INTEGER NOT NULL, sealed_t INTEGER, rest BLOB,
  PRIMARY KEY (record)
) STRICT, WITHOUT ROWID;
CREATE INDEX visit_by_subject ON visit (subject);

-- Visits that are said to be one, with the one that stands for all.
CREATE TABLE visit_group (
  visit BLOB NOT NULL, one BLOB NOT NULL, PRIMARY KEY (visit)
) STRICT, WITHOUT ROWID;

-- One person's part of one visit on one device. opened: the record (10 or 11) it began with.
-- last_seq: what its seal covers. after_seal: records of it with a higher sequence.
CREATE TABLE visit_part (
  visit BLOB NOT NULL, person BLOB NOT NULL, dev BLOB NOT NULL, feed BLOB NOT NULL, opened BLOB,
  joined_t INTEGER, task BLOB, aboard_site INTEGER, aboard_organisation INTEGER, program TEXT,
  sealed BLOB, last_seq INTEGER, sealed_t INTEGER, sealed_again INTEGER NOT NULL, after_seal INTEGER NOT NULL,
  PRIMARY KEY (visit, person, dev)
) STRICT, WITHOUT ROWID;

CREATE TABLE not_reached (
  record BLOB NOT NULL, kind INTEGER NOT NULL, feed BLOB NOT NULL, subject BLOB NOT NULL,
  who BLOB NOT NULL, dev BLOB NOT NULL, t INTEGER NOT NULL, t_quality INTEGER NOT NULL,
  held INTEGER NOT NULL, voided_by BLOB, corrected_by BLOB, visit BLOB, reason INTEGER, note TEXT,
  rest BLOB, PRIMARY KEY (record)
) STRICT, WITHOUT ROWID;
CREATE INDEX not_reached_by_subject ON not_reached (subject);

-- The bays that begin at a post.
CREATE TABLE bay_after (
  post BLOB NOT NULL, bay BLOB NOT NULL, PRIMARY KEY (post, bay)
) STRICT, WITHOUT ROWID;

-- What one visit has of one post: the post itself, its parts, the bays after it and their parts.
-- Only where the visit has something: a post without a row is open. Joined visits are one, under
-- the one that stands for all. first_t, last_t: of the records that count. parts: those in service,
-- as the register stood when the visit was sealed, and any that was looked at all the same. A look
-- is a grade, a hand load or a finding, by a person. parts_far: those looked at only from afar or
-- from a picture. bays_pushed: those with a hand load that was not "not pushed". done: every part
-- and bay has a look. skipped: not done, and all that is missing was said to be not reached.
-- grades to works: how many records. since_fresh: CBOR array of [component, visits], for each part
-- without a fresh look in this visit the visits that came by the post since it had one, this one
-- counted; a look as last time is not fresh.
CREATE TABLE coverage (
  visit BLOB NOT NULL, post BLOB NOT NULL, feed BLOB NOT NULL, first_t INTEGER NOT NULL,
  last_t INTEGER NOT NULL, parts INTEGER NOT NULL, parts_seen INTEGER NOT NULL,
  parts_far INTEGER NOT NULL, bays INTEGER NOT NULL, bays_seen INTEGER NOT NULL,
  bays_pushed INTEGER NOT NULL, done INTEGER NOT NULL, skipped INTEGER NOT NULL,
  not_reached INTEGER NOT NULL, grades INTEGER NOT NULL, coatings INTEGER NOT NULL,
  torques INTEGER NOT NULL, walls INTEGER NOT NULL, hand_loads INTEGER NOT NULL,
  geometries INTEGER NOT NULL, gate_checks INTEGER NOT NULL, findings INTEGER NOT NULL,
  photographs INTEGER NOT NULL, works INTEGER NOT NULL, since_fresh BLOB,
  since_fresh_max INTEGER NOT NULL, looks BLOB, PRIMARY KEY (visit, post)
) STRICT, WITHOUT ROWID;
CREATE INDEX coverage_by_post ON coverage (post);

CREATE TABLE event (
  record BLOB NOT NULL, kind INTEGER NOT NULL, feed BLOB NOT NULL, subject BLOB NOT NULL,
  who BLOB NOT NULL, dev BLOB NOT NULL, t INTEGER NOT NULL, t_quality INTEGER NOT NULL,
  held INTEGER NOT NULL, voided_by BLOB, corrected_by BLOB, what INTEGER, from_ms INTEGER,
  until_ms INTEGER, note TEXT, told BLOB, rest BLOB, PRIMARY KEY (record)
) STRICT, WITHOUT ROWID;
CREATE INDEX event_by_subject ON event (subject);

-- The time one part spends in one place. The first life has the component's id. start_action: 0
-- first, 3 replace, 4 cut out and weld in, 19 came back from elsewhere or nobody knows. same_as:
-- the life that is current for two replacements of one.
CREATE TABLE life (
  component BLOB NOT NULL, life BLOB NOT NULL, feed BLOB NOT NULL, started_t INTEGER,
  start_action INTEGER NOT NULL, ended_t INTEGER, life_before BLOB, same_as BLOB,
  component_type BLOB, coating_nominal_tenth_um INTEGER, doubtful INTEGER NOT NULL,
  PRIMARY KEY (component, life)
) STRICT, WITHOUT ROWID;

-- v1, v2: grade and degree of rusting (20); sum and count of replicates (21, 23); torque as found
-- and as left, 0.1 N·m (22); load N and deflection 0.1 mm (24); measure and its limit, mm (25);
-- latches and opens away from the drop (26). what: felt (24), what is measured (25), closes by
-- itself (26). original: the body as first written, CBOR, only where a correction shows.
CREATE TABLE reading (
  record BLOB NOT NULL, kind INTEGER NOT NULL, subject BLOB NOT NULL, visit BLOB, life BLOB,
  who BLOB NOT NULL, instrument BLOB, feed BLOB NOT NULL, dev BLOB NOT NULL, seq INTEGER NOT NULL,
  t INTEGER NOT NULL, t_quality INTEGER NOT NULL, v1 INTEGER, v2 INTEGER, replicates BLOB,
  spot INTEGER, screw INTEGER, what INTEGER, censoring INTEGER, method INTEGER,
  wrench_set_tenth_nm INTEGER, how INTEGER, layer INTEGER, under_probe INTEGER,
  carried INTEGER NOT NULL, seen_at INTEGER, copied_from INTEGER, held INTEGER NOT NULL,
  voided_by BLOB, corrected_by BLOB, l INTEGER NOT NULL, c INTEGER NOT NULL, w INTEGER NOT NULL,
  g INTEGER NOT NULL, hseq INTEGER, recv INTEGER, flags INTEGER NOT NULL, rest BLOB,
  original BLOB, PRIMARY KEY (record)
) STRICT, WITHOUT ROWID;
CREATE INDEX reading_by_subject ON reading (subject, kind, t);
CREATE INDEX reading_by_visit ON reading (visit, subject);

-- place: spot or screw, the thing measured for geometry, else 0. For grades: the one that counts.
CREATE TABLE latest (
  subject BLOB NOT NULL, kind INTEGER NOT NULL, place INTEGER NOT NULL, reading BLOB NOT NULL,
  t INTEGER NOT NULL, eff INTEGER NOT NULL, l INTEGER NOT NULL, c INTEGER NOT NULL,
  dev BLOB NOT NULL, PRIMARY KEY (subject, kind, place)
) STRICT, WITHOUT ROWID;

-- hazard_state: 0 none, 1 open, 2 made safe, 3 ended. measures: CBOR array of the codes of all that
-- count. not_made_safe: measures were taken but hold nobody, or the last look says gone.
CREATE TABLE finding (
  record BLOB NOT NULL, kind INTEGER NOT NULL, feed BLOB NOT NULL, subject BLOB NOT NULL,
  who BLOB NOT NULL, dev BLOB NOT NULL, t INTEGER NOT NULL, t_quality INTEGER NOT NULL,
  held INTEGER NOT NULL, voided_by BLOB, corrected_by BLOB, visit BLOB, life BLOB, what INTEGER,
  grade INTEGER, hazard INTEGER, text TEXT, place BLOB, number INTEGER, can_wait TEXT,
  hazard_state INTEGER NOT NULL, hazard_records BLOB, measures BLOB, stands_by BLOB,
  look_again_by_ms INTEGER, told_first_t INTEGER, next_record BLOB, next_step INTEGER,
  mend_by_day INTEGER, by_whom BLOB, by_whom_words TEXT, put_off INTEGER, ended_by BLOB,
  ended_how INTEGER, ended_on INTEGER, rest BLOB, PRIMARY KEY (record)
) STRICT, WITHOUT ROWID;
CREATE INDEX finding_by_subject ON finding (subject);
CREATE INDEX finding_by_writer ON finding (feed, who, number);

CREATE TABLE photograph (
  record BLOB NOT NULL, kind INTEGER NOT NULL, feed BLOB NOT NULL, subject BLOB NOT NULL,
  who BLOB NOT NULL, dev BLOB NOT NULL, t INTEGER NOT NULL, t_quality INTEGER NOT NULL,
  held INTEGER NOT NULL, voided_by BLOB, corrected_by BLOB, visit BLOB, sha BLOB,
  size_bytes INTEGER, media_type INTEGER, width INTEGER, height INTEGER, preview_sha BLOB,
  preview_bytes INTEGER, marks BLOB, taken_ms INTEGER, caption TEXT, photograph_flags INTEGER,
  marks_by BLOB, rest BLOB, PRIMARY KEY (record)
) STRICT, WITHOUT ROWID;
CREATE INDEX photograph_by_subject ON photograph (subject);

CREATE TABLE told (
  record BLOB NOT NULL, kind INTEGER NOT NULL, feed BLOB NOT NULL, subject BLOB NOT NULL,
  who BLOB NOT NULL, dev BLOB NOT NULL, t INTEGER NOT NULL, t_quality INTEGER NOT NULL,
  held INTEGER NOT NULL, voided_by BLOB, corrected_by BLOB, at_ms INTEGER, by_whom INTEGER,
  said TEXT, how INTEGER, place TEXT, moves INTEGER, picture BLOB, open INTEGER NOT NULL,
  answered_by BLOB, rest BLOB, PRIMARY KEY (record)
) STRICT, WITHOUT ROWID;
CREATE INDEX told_by_subject ON told (subject);

-- standing: no opening ended it. barrier: it stands, is more than a sign, and was not last seen
-- gone.
CREATE TABLE closure (
  record BLOB NOT NULL, kind INTEGER NOT NULL, feed BLOB NOT NULL, subject BLOB NOT NULL,
  who BLOB NOT NULL, dev BLOB NOT NULL, t INTEGER NOT NULL, t_quality INTEGER NOT NULL,
  held INTEGER NOT NULL, voided_by BLOB, corrected_by BLOB, why INTEGER, from_ms INTEGER,
  until_ms INTEGER, by_what INTEGER, about BLOB, look_again_by_ms INTEGER,
  standing INTEGER NOT NULL, barrier INTEGER NOT NULL, last_look BLOB, opened_by BLOB, rest BLOB,
  PRIMARY KEY (record)
) STRICT, WITHOUT ROWID;
CREATE INDEX closure_by_subject ON closure (subject);

CREATE TABLE closure_look (
  record BLOB NOT NULL, kind INTEGER NOT NULL, feed BLOB NOT NULL, subject BLOB NOT NULL,
  who BLOB NOT NULL, dev BLOB NOT NULL, t INTEGER NOT NULL, t_quality INTEGER NOT NULL,
  held INTEGER NOT NULL, voided_by BLOB, corrected_by BLOB, how INTEGER, look_again_by_ms INTEGER,
  note TEXT, rest BLOB, PRIMARY KEY (record)
) STRICT, WITHOUT ROWID;
CREATE INDEX closure_look_by_subject ON closure_look (subject);

-- same_as: the one record that stands for all that are said to be one job.
CREATE TABLE work (
  record BLOB NOT NULL, kind INTEGER NOT NULL, feed BLOB NOT NULL, subject BLOB NOT NULL,
  who BLOB NOT NULL, dev BLOB NOT NULL, t INTEGER NOT NULL, t_quality INTEGER NOT NULL,
  held INTEGER NOT NULL, voided_by BLOB, corrected_by BLOB, visit BLOB, action INTEGER,
  life_before BLOB, as_left_tenth_nm INTEGER, instrument BLOB, new_component_type BLOB,
  new_coating_nominal_tenth_um INTEGER, day INTEGER, cost_hundredth INTEGER, screw INTEGER,
  people INTEGER, minutes INTEGER, finding BLOB, depot BLOB, done_by TEXT, same_part INTEGER,
  same_as BLOB, rest BLOB, PRIMARY KEY (record)
) STRICT, WITHOUT ROWID;
CREATE INDEX work_by_subject ON work (subject);

-- state: 1 down, 2 opened early, 3 open. missing: CBOR array of [subject, step, screw] still to do.
-- open_bays: CBOR array of bays that are down with nothing that closes them.
CREATE TABLE strike (
  record BLOB NOT NULL, kind INTEGER NOT NULL, feed BLOB NOT NULL, subject BLOB NOT NULL,
  who BLOB NOT NULL, dev BLOB NOT NULL, t INTEGER NOT NULL, t_quality INTEGER NOT NULL,
  held INTEGER NOT NULL, voided_by BLOB, corrected_by BLOB, reason INTEGER,
  re_erect_by_day INTEGER, gap_closed_by BLOB, components BLOB, state INTEGER NOT NULL,
  missing BLOB NOT NULL, missing_count INTEGER NOT NULL, open_bays BLOB NOT NULL, opened_by BLOB,
  rest BLOB, PRIMARY KEY (record)
) STRICT, WITHOUT ROWID;
CREATE INDEX strike_by_subject ON strike (subject);

CREATE TABLE strike_part (
  component BLOB NOT NULL, strike BLOB NOT NULL, PRIMARY KEY (component, strike)
) STRICT, WITHOUT ROWID;

CREATE TABLE strike_step (
  record BLOB NOT NULL, kind INTEGER NOT NULL, feed BLOB NOT NULL, subject BLOB NOT NULL,
  who BLOB NOT NULL, dev BLOB NOT NULL, t INTEGER NOT NULL, t_quality INTEGER NOT NULL,
  held INTEGER NOT NULL, voided_by BLOB, corrected_by BLOB, strike BLOB, step INTEGER,
  as_left_tenth_nm INTEGER, instrument BLOB, screw INTEGER, stored_at TEXT, how INTEGER,
  same_part INTEGER, rest BLOB, PRIMARY KEY (record)
) STRICT, WITHOUT ROWID;
CREATE INDEX strike_step_by_subject ON strike_step (subject);

CREATE TABLE strike_hours (
  record BLOB NOT NULL, kind INTEGER NOT NULL, feed BLOB NOT NULL, subject BLOB NOT NULL,
  who BLOB NOT NULL, dev BLOB NOT NULL, t INTEGER NOT NULL, t_quality INTEGER NOT NULL,
  held INTEGER NOT NULL, voided_by BLOB, corrected_by BLOB, people INTEGER, minutes INTEGER,
  task BLOB, day INTEGER, rest BLOB, PRIMARY KEY (record)
) STRICT, WITHOUT ROWID;
CREATE INDEX strike_hours_by_subject ON strike_hours (subject);

CREATE TABLE instrument_check (
  record BLOB NOT NULL, kind INTEGER NOT NULL, feed BLOB NOT NULL, subject BLOB NOT NULL,
  who BLOB NOT NULL, dev BLOB NOT NULL, t INTEGER NOT NULL, t_quality INTEGER NOT NULL,
  held INTEGER NOT NULL, voided_by BLOB, corrected_by BLOB, visit BLOB, what INTEGER,
  reference INTEGER, readings BLOB, in_order INTEGER, seen_at INTEGER, rest BLOB,
  PRIMARY KEY (record)
) STRICT, WITHOUT ROWID;
CREATE INDEX instrument_check_by_subject ON instrument_check (subject);

CREATE TABLE calibration (
  record BLOB NOT NULL, kind INTEGER NOT NULL, feed BLOB NOT NULL, subject BLOB NOT NULL,
  who BLOB NOT NULL, dev BLOB NOT NULL, t INTEGER NOT NULL, t_quality INTEGER NOT NULL,
  held INTEGER NOT NULL, voided_by BLOB, corrected_by BLOB, day INTEGER, valid_until_day INTEGER,
  certificate TEXT, certificate_picture BLOB, corrections BLOB, as_found BLOB, adjusted INTEGER,
  sent_day INTEGER, done_by TEXT, rest BLOB, PRIMARY KEY (record)
) STRICT, WITHOUT ROWID;
CREATE INDEX calibration_by_subject ON calibration (subject);

CREATE TABLE doubt (
  record BLOB NOT NULL, kind INTEGER NOT NULL, feed BLOB NOT NULL, subject BLOB NOT NULL,
  who BLOB NOT NULL, dev BLOB NOT NULL, t INTEGER NOT NULL, t_quality INTEGER NOT NULL,
  held INTEGER NOT NULL, voided_by BLOB, corrected_by BLOB, from_ms INTEGER, until_ms INTEGER,
  reason BLOB, suggested_shift INTEGER, rest BLOB, PRIMARY KEY (record)
) STRICT, WITHOUT ROWID;
CREATE INDEX doubt_by_subject ON doubt (subject);

-- count: the last counting and every movement after it.
CREATE TABLE stock (
  depot BLOB NOT NULL, component_type BLOB NOT NULL, feed BLOB NOT NULL, count INTEGER NOT NULL,
  counted_by BLOB, PRIMARY KEY (depot, component_type)
) STRICT, WITHOUT ROWID;

CREATE TABLE stock_move (
  record BLOB NOT NULL, kind INTEGER NOT NULL, feed BLOB NOT NULL, subject BLOB NOT NULL,
  who BLOB NOT NULL, dev BLOB NOT NULL, t INTEGER NOT NULL, t_quality INTEGER NOT NULL,
  held INTEGER NOT NULL, voided_by BLOB, corrected_by BLOB, component_type BLOB, count INTEGER,
  why INTEGER, work BLOB, day INTEGER, rest BLOB, PRIMARY KEY (record)
) STRICT, WITHOUT ROWID;
CREATE INDEX stock_move_by_subject ON stock_move (subject);

CREATE TABLE person_role (
  record BLOB NOT NULL, kind INTEGER NOT NULL, feed BLOB NOT NULL, subject BLOB NOT NULL,
  who BLOB NOT NULL, dev BLOB NOT NULL, t INTEGER NOT NULL, t_quality INTEGER NOT NULL,
  held INTEGER NOT NULL, voided_by BLOB, corrected_by BLOB, role INTEGER, sites BLOB,
  until_day INTEGER, taken_by BLOB, rest BLOB, PRIMARY KEY (record)
) STRICT, WITHOUT ROWID;
CREATE INDEX person_role_by_subject ON person_role (subject);

CREATE TABLE competence (
  record BLOB NOT NULL, kind INTEGER NOT NULL, feed BLOB NOT NULL, subject BLOB NOT NULL,
  who BLOB NOT NULL, dev BLOB NOT NULL, t INTEGER NOT NULL, t_quality INTEGER NOT NULL,
  held INTEGER NOT NULL, voided_by BLOB, corrected_by BLOB, for_what TEXT, from_day INTEGER,
  valid_until_day INTEGER, certificate BLOB, rest BLOB, PRIMARY KEY (record)
) STRICT, WITHOUT ROWID;
CREATE INDEX competence_by_subject ON competence (subject);

CREATE TABLE read_by (
  record BLOB NOT NULL, kind INTEGER NOT NULL, feed BLOB NOT NULL, subject BLOB NOT NULL,
  who BLOB NOT NULL, dev BLOB NOT NULL, t INTEGER NOT NULL, t_quality INTEGER NOT NULL,
  held INTEGER NOT NULL, voided_by BLOB, corrected_by BLOB, shown BLOB, rest BLOB,
  PRIMARY KEY (record)
) STRICT, WITHOUT ROWID;
CREATE INDEX read_by_by_subject ON read_by (subject);

CREATE TABLE hold (
  record BLOB NOT NULL, kind INTEGER NOT NULL, feed BLOB NOT NULL, subject BLOB NOT NULL,
  who BLOB NOT NULL, dev BLOB NOT NULL, t INTEGER NOT NULL, t_quality INTEGER NOT NULL,
  held INTEGER NOT NULL, voided_by BLOB, corrected_by BLOB, why INTEGER, note TEXT,
  standing INTEGER NOT NULL, ended_by BLOB, rest BLOB, PRIMARY KEY (record)
) STRICT, WITHOUT ROWID;
CREATE INDEX hold_by_subject ON hold (subject);
CREATE INDEX hold_by_feed ON hold (feed);

-- current: the one agreement that counts for its site.
CREATE TABLE next_visit (
  record BLOB NOT NULL, kind INTEGER NOT NULL, feed BLOB NOT NULL, subject BLOB NOT NULL,
  who BLOB NOT NULL, dev BLOB NOT NULL, t INTEGER NOT NULL, t_quality INTEGER NOT NULL,
  held INTEGER NOT NULL, voided_by BLOB, corrected_by BLOB, day INTEGER, why INTEGER, note TEXT,
  proposed_day INTEGER, current INTEGER NOT NULL, rest BLOB, PRIMARY KEY (record)
) STRICT, WITHOUT ROWID;
CREATE INDEX next_visit_by_subject ON next_visit (subject);

CREATE TABLE report (
  record BLOB NOT NULL, kind INTEGER NOT NULL, feed BLOB NOT NULL, subject BLOB NOT NULL,
  who BLOB NOT NULL, dev BLOB NOT NULL, t INTEGER NOT NULL, t_quality INTEGER NOT NULL,
  held INTEGER NOT NULL, voided_by BLOB, corrected_by BLOB, visits BLOB, blocks BLOB, sha BLOB,
  day INTEGER, signed_copy BLOB, rest BLOB, PRIMARY KEY (record)
) STRICT, WITHOUT ROWID;
CREATE INDEX report_by_subject ON report (subject);

-- Objects are bytes kept beside the records under their SHA-256. One record that names one; kind, feed
-- and subject are the record's. Only ever added to.
CREATE TABLE object_use (
  sha BLOB NOT NULL, record BLOB NOT NULL, kind INTEGER NOT NULL, feed BLOB NOT NULL,
  subject BLOB NOT NULL, size_bytes INTEGER, PRIMARY KEY (sha, record)
) STRICT, WITHOUT ROWID;
CREATE INDEX object_use_by_kind ON object_use (kind);

-- kind: of the use with the smallest record id; NULL while only an erasure names it. erased_by with
-- kept_by NULL: out of sight, and its bytes go at erase_on_ms. With kept_by: the last erasure is
-- without effect, because that hold stood when the wait was over.
CREATE TABLE object_state (
  sha BLOB NOT NULL, kind INTEGER, size_bytes INTEGER, erased_by BLOB, erase_on_ms INTEGER,
  kept_by BLOB, PRIMARY KEY (sha)
) STRICT, WITHOUT ROWID;

-- People who have written in a feed.
CREATE TABLE feed_writer (
  person BLOB NOT NULL, feed BLOB NOT NULL, PRIMARY KEY (person, feed)
) STRICT, WITHOUT ROWID;
