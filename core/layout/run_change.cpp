#include "core/layout/run_change.h"

#include <algorithm>
#include <cctype>
#include <cstdlib>

namespace kneerail::layout {
namespace {

constexpr std::int64_t nearest_mm = 100;

Error refused(std::string sentence) {
  return fail(Fault::invalid_input, std::move(sentence) + " Nothing was changed.");
}

const StandingPost& post_at(const StandingRun& run, int place) {
  return run.posts.at(static_cast<std::size_t>(place));
}
const StandingBay& bay_at(const StandingRun& run, int place) {
  return run.bays.at(static_cast<std::size_t>(place));
}

std::int64_t length_mm(const StandingRun& run, const StandingBay& bay) {
  return post_at(run, bay.to).chainage_mm - post_at(run, bay.from).chainage_mm;
}

bool has_rails(BayKind kind) {
  return kind == BayKind::rails || kind == BayKind::mesh_infill;
}

/// A welded section is one piece from post to post: cut and mended, never rearranged.
bool is_welded(const StandingRun& run, int bay) {
  const StandingBay& at = bay_at(run, bay);
  return std::any_of(run.parts.begin(), run.parts.end(), [&](const StandingPart& part) {
    return part.role == Role::welded_section && (part.bay == bay || part.post == at.from);
  });
}
constexpr const char* welded_words =
    "A welded section runs through here. It is cut out and welded in anew as work, not in the "
    "register.";

void retire_bay(const StandingRun& run, int bay, RunChange& change) {
  change.retired.push_back(bay_at(run, bay).id);
  for (const StandingPart& part : run.parts)
    if (part.bay == bay) change.retired.push_back(part.id);
}

/// What lies all along a bay, so long as the new one is.
void lay_like(const StandingRun& run, int bay, int new_bay, std::int64_t new_length_mm,
              RunChange& change) {
  for (const StandingPart& part : run.parts) {
    const bool along = part.role == Role::top_rail || part.role == Role::mid_rail ||
                       part.role == Role::rail_tube || part.role == Role::toe_board ||
                       part.role == Role::infill;
    if (part.bay != bay || !along) continue;
    RunChange::Part made;
    made.bay = new_bay;
    made.role = part.role;
    made.type = part.type;
    made.along_mm = new_length_mm / 2;
    made.up_mm = part.up_mm;
    made.screws = part.screws;
    change.parts.push_back(made);
  }
}

/// Its place; -1: there is none.
int bay_between(const StandingRun& run, int from, int to) {
  for (std::size_t i = 0; i < run.bays.size(); ++i)
    if (run.bays[i].from == from && run.bays[i].to == to) return static_cast<int>(i);
  return -1;
}

/// A post in the middle of rails, whose parts a new one gets: the nearest one.
int like_post(const StandingRun& run, int near) {
  int best = near;
  int best_distance = static_cast<int>(run.posts.size()) + 1;
  for (int post = 1; post + 1 < static_cast<int>(run.posts.size()); ++post) {
    const int before = bay_between(run, post - 1, post);
    const int after = bay_between(run, post, post + 1);
    const bool inner = before >= 0 && after >= 0 && has_rails(bay_at(run, before).kind) &&
                       has_rails(bay_at(run, after).kind);
    if (!inner || std::abs(post - near) >= best_distance) continue;
    best = post;
    best_distance = std::abs(post - near);
  }
  return best;
}

void post_like(const StandingRun& run, int like, RunChange& change) {
  for (const StandingPart& part : run.parts) {
    if (part.post != like) continue;
    RunChange::Part made;
    made.post = 0;
    made.role = part.role;
    made.type = part.type;
    made.along_mm = part.along_mm;
    made.up_mm = part.up_mm;
    made.screws = part.screws;
    change.parts.push_back(made);
  }
}

}  // namespace

Result<std::string> label_between(const std::string& before,
                                  const std::vector<std::string>& taken) {
  std::string stem = before;
  const bool lettered = stem.size() > 1 && std::isupper(static_cast<unsigned char>(stem.back())) &&
                        std::isdigit(static_cast<unsigned char>(stem[stem.size() - 2]));
  if (lettered) stem.pop_back();
  constexpr std::size_t most = 16;
  for (char letter = 'A'; letter <= 'Z' && stem.size() < most; ++letter) {
    const std::string label = stem + letter;
    if (std::find(taken.begin(), taken.end(), label) == taken.end()) return label;
  }
  return refused("No letter is left for a post after " + before + ".");
}

Result<RunChange> insert_post(const StandingRun& run, int bay, std::int64_t from_post_mm,
                              const std::vector<std::string>& taken_labels) {
  const StandingBay& cut = bay_at(run, bay);
  if (is_welded(run, bay)) return refused(welded_words);
  const std::int64_t rest_mm = length_mm(run, cut) - from_post_mm;
  if (from_post_mm < nearest_mm || rest_mm < nearest_mm)
    return refused("A post stands at least 0.10 m from the next one.");
  const StandingPost& before = post_at(run, cut.from);
  auto label = label_between(before.label, taken_labels);
  if (!label) return fail(label.error());
  const int like = like_post(run, cut.from);
  RunChange change;
  retire_bay(run, bay, change);
  // The same order as the post before and a longer way: it stands between the two.
  change.posts.push_back(
      {*label, before.chainage_mm + from_post_mm, before.order, post_at(run, like).id});
  post_like(run, like, change);
  change.bays.push_back({{before.id, -1}, {{}, 0}, cut.kind, cut.rails});
  change.bays.push_back({{{}, 0}, {post_at(run, cut.to).id, -1}, cut.kind, cut.rails});
  lay_like(run, bay, 0, from_post_mm, change);
  lay_like(run, bay, 1, rest_mm, change);
  return change;
}

Result<RunChange> move_post(const StandingRun& run, int post, std::int64_t chainage_mm) {
  const auto last = static_cast<int>(run.posts.size()) - 1;
  const bool after = post == 0 || chainage_mm >= post_at(run, post - 1).chainage_mm + nearest_mm;
  const bool before =
      post == last || chainage_mm + nearest_mm <= post_at(run, post + 1).chainage_mm;
  if (chainage_mm < 0 || !after || !before)
    return refused("Post " + post_at(run, post).label +
                   " stays between its neighbours, at least 0.10 m from each.");
  RunChange change;
  change.moved.push_back({post_at(run, post).id, chainage_mm});
  StandingRun then = run;
  then.posts[static_cast<std::size_t>(post)].chainage_mm = chainage_mm;
  for (const StandingPart& part : run.parts) {
    if (part.bay < 0) continue;
    const StandingBay& bay = bay_at(run, part.bay);
    const std::int64_t now_mm = length_mm(run, bay);
    const std::int64_t then_mm = length_mm(then, bay);
    if (now_mm == then_mm || now_mm <= 0) continue;
    change.placed_anew.push_back({part.id, part.along_mm * then_mm / now_mm, part.up_mm});
  }
  return change;
}

Result<RunChange> retire_post(const StandingRun& run, int post) {
  const int before = bay_between(run, post - 1, post);
  const int after = bay_between(run, post, post + 1);
  if (before < 0 || after < 0)
    return refused("Post " + post_at(run, post).label +
                   " ends the run. Only a post between two bays can be taken out.");
  if (is_welded(run, before) || is_welded(run, after)) return refused(welded_words);
  RunChange change;
  change.retired.push_back(post_at(run, post).id);
  for (const StandingPart& part : run.parts)
    if (part.post == post) change.retired.push_back(part.id);
  retire_bay(run, before, change);
  retire_bay(run, after, change);
  const int like = has_rails(bay_at(run, before).kind) ? before : after;
  const StandingBay& as = bay_at(run, like);
  const StandingPost& from = post_at(run, post - 1);
  const StandingPost& to = post_at(run, post + 1);
  const BayKind kind = as.kind == BayKind::gate ? BayKind::open_gap : as.kind;
  change.bays.push_back({{from.id, -1}, {to.id, -1}, kind, has_rails(kind) ? as.rails : 0});
  if (has_rails(kind)) lay_like(run, like, 0, to.chainage_mm - from.chainage_mm, change);
  return change;
}

Result<RunChange> change_bay(const StandingRun& run, int bay, BayKind kind) {
  const StandingBay& now = bay_at(run, bay);
  if (now.kind == kind) return refused("This bay is that already.");
  if (is_welded(run, bay)) return refused(welded_words);
  RunChange change;
  int like = -1;
  for (int other = 0; other < static_cast<int>(run.bays.size()) && has_rails(kind); ++other)
    if (bay_at(run, other).kind == kind && !is_welded(run, other) &&
        (like < 0 || std::abs(other - bay) < std::abs(like - bay)))
      like = other;
  if (has_rails(kind) && like < 0)
    return refused("No bay of this run has such rails: lay them out as a new run.");
  for (const StandingPart& part : run.parts)
    if (part.bay == bay) change.retired.push_back(part.id);
  change.kinds.push_back({now.id, kind, like < 0 ? 0 : bay_at(run, like).rails});
  const std::int64_t middle_mm = length_mm(run, now) / 2;
  if (kind == BayKind::gate) {
    RunChange::Part leaf;
    leaf.bay_there = now.id;
    leaf.role = Role::gate;
    leaf.along_mm = middle_mm;
    for (const StandingPart& part : run.parts)
      if (part.role == Role::gate) leaf.type = part.type;
    std::int64_t top_mm = 0;
    for (const StandingPart& part : run.parts) top_mm = std::max(top_mm, part.up_mm);
    leaf.up_mm = top_mm / 2;
    change.parts.push_back(leaf);
  }
  if (like < 0) return change;
  lay_like(run, like, -1, length_mm(run, now), change);
  for (RunChange::Part& part : change.parts) part.bay_there = now.id;
  return change;
}

}  // namespace kneerail::layout
