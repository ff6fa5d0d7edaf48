#pragma once

// The columns of what a visit is, and of what it has of each post.

#include "core/fold/column_places.h"

namespace kneerail::fold {

/// complete: everybody who joined has sealed; sealed_t: when the last of them did. first_t, last_t:
/// the span of all records of the visit, whatever was said about them.
inline constexpr Column visit_own[] = {
    {"kind_of_visit", Type::number, true},
    {"name", Type::text, true},
    {"runs", Type::bytes, true},
    {"conditions", Type::bytes, true},
    {"event", Type::id, true},
    {"merged_into", Type::id, true},
    {"complete", Type::number},
    {"first_t", Type::number},
    {"last_t", Type::number},
    {"sealed_t", Type::number, true},
};
inline constexpr auto visit_columns = plain(visit_own);
/// Visits that are said to be one, with the one that stands for all.
inline constexpr Column visit_group_columns[] = {{"visit", Type::id}, {"one", Type::id}};
/// One person's part of one visit on one device. opened: the record (10 or 11) it began with.
/// last_seq: what its seal covers. after_seal: records of it with a higher sequence.
inline constexpr Column visit_part_columns[] = {
    {"visit", Type::id},
    {"person", Type::id},
    {"dev", Type::id},
    {"feed", Type::id},
    {"opened", Type::id, true},
    {"joined_t", Type::number, true},
    {"task", Type::bytes, true},
    {"aboard_site", Type::number, true},
    {"aboard_organisation", Type::number, true},
    {"program", Type::text, true},
    {"sealed", Type::id, true},
    {"last_seq", Type::number, true},
    {"sealed_t", Type::number, true},
    {"sealed_again", Type::number},
    {"after_seal", Type::number},
};
inline constexpr Column not_reached_own[] = {
    {"visit", Type::id, true}, {"reason", Type::number, true}, {"note", Type::text, true}};
inline constexpr auto not_reached_columns = plain(not_reached_own);
/// The bays that begin at a post.
inline constexpr Column bay_after_columns[] = {{"post", Type::id}, {"bay", Type::id}};
/// What one visit has of one post: the post itself, its parts, the bays after it and their parts.
/// Only where the visit has something: a post without a row is open. Joined visits are one, under
/// the one that stands for all. first_t, last_t: of the records that count. parts: those in
/// service, as the register stood when the visit was sealed, and any that was looked at all the
/// same. A look is a grade, a hand load or a finding, by a person. parts_far: those looked at only
/// from afar or from a picture. bays_pushed: those with a hand load that was not "not pushed".
/// done: every part and bay has a look. skipped: not done, and all that is missing was said to be
/// not reached. grades to works: how many records. since_fresh: CBOR array of [component, visits],
/// for each part without a fresh look in this visit the visits that came by the post since it had
/// one, this one counted; a look as last time is not fresh. looks: CBOR array of [thing, bits] for
/// what was seen of each, 1 looked at, 2 from near, 4 afresh, 8 pushed, 16 said to be not reached.
inline constexpr Column coverage_columns[] = {
    {"visit", Type::id},
    {"post", Type::id},
    {"feed", Type::id},
    {"first_t", Type::number},
    {"last_t", Type::number},
    {"parts", Type::number},
    {"parts_seen", Type::number},
    {"parts_far", Type::number},
    {"bays", Type::number},
    {"bays_seen", Type::number},
    {"bays_pushed", Type::number},
    {"done", Type::number},
    {"skipped", Type::number},
    {"not_reached", Type::number},
    {"grades", Type::number},
    {"coatings", Type::number},
    {"torques", Type::number},
    {"walls", Type::number},
    {"hand_loads", Type::number},
    {"geometries", Type::number},
    {"gate_checks", Type::number},
    {"findings", Type::number},
    {"photographs", Type::number},
    {"works", Type::number},
    {"since_fresh", Type::bytes, true},
    {"since_fresh_max", Type::number},
    {"looks", Type::bytes, true},
};
inline constexpr Column event_own[] = {
    {"what", Type::number, true}, {"from_ms", Type::number, true}, {"until_ms", Type::number, true},
    {"note", Type::text, true},   {"told", Type::id, true},
};
inline constexpr auto event_columns = plain(event_own);

}  // namespace kneerail::fold
