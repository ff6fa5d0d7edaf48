#include "mobile/models/sentence_lists.h"

#include <algorithm>
#include <utility>

namespace {

constexpr qsizetype short_name_most = 16;  // characters on a key of a third of the pad

}  // namespace

void SentencePieces::show(std::vector<Piece> pieces) {
  if (pieces == pieces_) return;
  const bool same = pieces.size() == pieces_.size();
  if (!same) beginResetModel();
  pieces_ = std::move(pieces);
  if (!same)
    endResetModel();
  else
    emit dataChanged(index(0), index(rowCount() - 1));
}

int SentencePieces::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(pieces_.size());
}

QVariant SentencePieces::data(const QModelIndex& index, int role) const {
  const auto row = static_cast<std::size_t>(index.row());
  if (!index.isValid() || row >= pieces_.size()) return {};
  const Piece& piece = pieces_[row];
  switch (role) {
    case TextRole:
      return piece.text;
    case UnderRole:
      return piece.under;
    case SaidRole:
      return piece.said;
    case HereRole:
      return piece.here;
    case OddRole:
      return piece.odd;
    case UsedRole:
      return piece.used;
    default:
      return {};
  }
}

QHash<int, QByteArray> SentencePieces::roleNames() const {
  return {{TextRole, "words"}, {UnderRole, "under"}, {SaidRole, "said"},
          {HereRole, "here"},  {OddRole, "odd"},     {UsedRole, "used"}};
}

void SentenceChoices::show(std::vector<Group> groups) {
  if (groups == groups_) return;
  const bool same = std::equal(
      groups.begin(), groups.end(), groups_.begin(), groups_.end(),
      [](const Group& a, const Group& b) { return a.caption == b.caption && a.names == b.names; });
  if (!same) beginResetModel();
  groups_ = std::move(groups);
  if (!same)
    endResetModel();
  else
    emit dataChanged(index(0), index(rowCount() - 1), {NowRole});
}

int SentenceChoices::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : static_cast<int>(groups_.size());
}

QVariant SentenceChoices::data(const QModelIndex& index, int role) const {
  const auto row = static_cast<std::size_t>(index.row());
  if (!index.isValid() || row >= groups_.size()) return {};
  switch (role) {
    case CaptionRole:
      return groups_[row].caption;
    case NamesRole:
      return groups_[row].names;
    case NowRole:
      return groups_[row].now;
    case WideRole:
      return std::any_of(groups_[row].names.begin(), groups_[row].names.end(),
                         [](const QString& name) { return name.size() > short_name_most; });
    default:
      return {};
  }
}

QHash<int, QByteArray> SentenceChoices::roleNames() const {
  return {{CaptionRole, "caption"}, {NamesRole, "names"}, {NowRole, "now"}, {WideRole, "wide"}};
}
