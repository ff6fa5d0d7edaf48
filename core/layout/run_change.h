#pragma once

// A change in a run that stands: a post comes in between two, one is moved or taken out, a bay gets
// a gate, rails or a gap. What is taken out is retired, never rewritten, and what comes in has
// identifiers of its own, so that no reading gets another meaning.

#include <cstdint>
#include <string>
#include <vector>

#include "core/base/id.h"
#include "core/base/result.h"
#include "core/records/entities.h"

namespace kneerail::layout {

struct StandingPost {
  Uuid id;
  std::string label;
  std::int64_t chainage_mm = 0;
  std::int64_t order = 0;
};
/// Places of posts; `from` before `to`.
struct StandingBay {
  Uuid id;
  int from = 0;
  int to = 0;
  BayKind kind = BayKind::rails;
  int rails = 0;
};
struct StandingPart {
  Uuid id;
  int post = -1;  ///< its post; -1: it is in a bay
  int bay = -1;
  Role role = Role::fitting;
  Uuid type;
  std::int64_t along_mm = 0;  ///< from its post, or from the post before its bay
  std::int64_t up_mm = 0;
  int screws = 0;
  Uuid part_of;  ///< the welded section it belongs to; zero: none
};
struct StandingRun {
  std::vector<StandingPost> posts;  ///< along the run
  std::vector<StandingBay> bays;    ///< by the post they begin at
  std::vector<StandingPart> parts;
};

/// What comes of a change. New things refer to posts that stand by their identifiers, and to a new
/// post by its place in `posts`.
struct RunChange {
  struct Post {
    std::string label;
    std::int64_t chainage_mm = 0;
    std::int64_t order = 0;
    Uuid like;  ///< the post whose height and base it takes
  };
  struct End {
    Uuid there;     ///< a post that stands
    int made = -1;  ///< else place in `posts`
  };
  struct Bay {
    End from;
    End to;
    BayKind kind = BayKind::rails;
    int rails = 0;
  };
  struct Part {
    int post = -1;   ///< place in `posts`
    int bay = -1;    ///< place in `bays`
    Uuid bay_there;  ///< else a bay that stands
    Role role = Role::fitting;
    Uuid type;  ///< zero: a gate's leaf, of the type that the register has for one
    std::int64_t along_mm = 0;
    std::int64_t up_mm = 0;
    int screws = 0;
  };
  struct Moved {
    Uuid post;
    std::int64_t chainage_mm = 0;
  };
  struct Replaced {
    Uuid part;
    std::int64_t along_mm = 0;
    std::int64_t up_mm = 0;
  };
  struct Kind {
    Uuid bay;
    BayKind kind = BayKind::rails;
    int rails = 0;
  };
  std::vector<Uuid> retired;
  std::vector<Post> posts;
  std::vector<Bay> bays;
  std::vector<Part> parts;
  std::vector<Moved> moved;
  std::vector<Replaced> placed_anew;  ///< parts of a bay whose length changed
  std::vector<Kind> kinds;
};

/// "31A" between 31 and 32; "31B" where there is a 31A. `taken`: labels of the site. Errors:
/// invalid_input, when all letters are used up.
Result<std::string> label_between(const std::string& before, const std::vector<std::string>& taken);

/// A post in that bay, so far from the post before it; the rails are cut there. Errors:
/// invalid_input (nearer than 0.10 m to a post; a welded section; no label).
Result<RunChange> insert_post(const StandingRun& run, int bay, std::int64_t from_post_mm,
                              const std::vector<std::string>& taken_labels);
/// Errors: invalid_input (not between its neighbours).
Result<RunChange> move_post(const StandingRun& run, int post, std::int64_t chainage_mm);
/// The bays at its sides become one. Errors: invalid_input (the first or the last post; a welded
/// section).
Result<RunChange> retire_post(const StandingRun& run, int post);
/// Errors: invalid_input (it is that already; a welded section; no bay to take rails from).
Result<RunChange> change_bay(const StandingRun& run, int bay, BayKind kind);

}  // namespace kneerail::layout
