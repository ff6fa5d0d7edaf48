#pragma once

// The sentence of a run in words: its pieces, what each asks, and what the parts of the drawing can
// be made instead of the rule.

#include <QString>
#include <functional>
#include <optional>
#include <vector>

#include "schema/store/new_run.h"

namespace kneerail {

/// In the order they are read.
enum class RunPiece {
  name,
  zone,
  posts,
  first,
  spacing,
  height,
  rails,
  tube,
  made,
  base,
  joint,
  end,
  filling,
  sleeves,
  in_service,
  drop,
  behind,
  below
};
inline constexpr int run_pieces = static_cast<int>(RunPiece::below) + 1;

/// What is asked now: a piece of the sentence, or a place of the drawing.
struct RunAsk {
  enum class What { nothing, piece, joint, post, bay, length, rise, landmark };
  What what = What::nothing;
  RunPiece piece = RunPiece::name;
  int place = -1;  ///< of the post or bay
  int rail = 0;    ///< of a joint, from the top
  bool operator==(const RunAsk&) const = default;
};

struct RunOption {
  QString words;
  bool now = false;
  std::function<void(NewRun&)> set = {};  ///< empty: it asks for something else
  std::optional<RunAsk> asks = {};
};
struct RunChoices {
  QString caption;
  std::vector<RunOption> options;
};

/// A number that is typed, without a decimal key: lengths in centimetres.
struct RunNumber {
  QString caption;
  int digits = 4;      ///< at most
  bool signs = false;  ///< it may be under zero
  /// Puts it into the sentence. False: it is not whole yet (a day).
  std::function<bool(NewRun&, std::int64_t)> set;
};

struct PieceWords {
  QString text;
  QString under;
  bool said = true;  ///< false: nobody has said it yet
};

PieceWords piece_words(RunPiece piece, const NewRun& run, const RunSurroundings& around);
/// Whether a run of this rule has it: a welded one has no fittings at its ends.
bool has_piece(RunPiece piece, const NewRun& run);

QString ask_title(const RunAsk& ask, const NewRun& run);
std::vector<RunChoices> choices_of(const RunAsk& ask, const NewRun& run,
                                   const RunSurroundings& around, Date today);
std::optional<RunNumber> number_of(const RunAsk& ask, const NewRun& run);
/// The words to begin with where words are typed; nothing where none are.
std::optional<QString> words_of(const RunAsk& ask, const NewRun& run);
int words_most(const RunAsk& ask);  ///< characters that are kept of them
void say_words(const RunAsk& ask, NewRun& run, const QString& words);

/// "24 posts · 23 bays · 72 fittings · 69.0 m of rail tube".
QString count_words(const layout::LaidRun& laid);

}  // namespace kneerail
