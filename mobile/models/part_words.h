#pragma once

// What the parts of a run and their grades are called on the screen.

#include <QString>

#include "schema/store/run_store.h"

namespace kneerail {

/// "mid-rail cross", "top-rail tee", "base flange", "post tube": with the rail it stands at where a
/// post has several of a kind.
QString part_name(const RunSheet& sheet, int part);

/// "post 61, mid-rail cross"; of a bay's part the post before it.
QString post_and_part(const RunSheet& sheet, int part);
/// "post 118, mid-rail cross", "bay 118 to 119", "post 118"; empty for what is not on the sheet.
QString place_words(const RunSheet& sheet, const Uuid& thing);

/// "Rust begins"; of aluminium and stainless steel "Pits begin". Empty for no grade of 1 to 5.
QString grade_word(int grade, Finish finish);

/// "rust weeping"; empty for what has no word of its own.
QString finding_word(FindingKind what);

/// What a screen reader says of a part: "Post 118, mid-rail cross, grade 3, rust begins, finding
/// F-2, not yet graded this visit".
QString spoken_part(const RunSheet& sheet, int part);

/// "Post 118, open"; "Bay 118 to 119".
QString spoken_post(const RunSheet& sheet, int post);
QString spoken_bay(const RunSheet& sheet, int bay);

}  // namespace kneerail
