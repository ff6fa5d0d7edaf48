#include "mobile/elevation/visible_parts.h"

#include <algorithm>
#include <utility>

#include "mobile/models/part_words.h"

using kneerail::RunSheet;
using kneerail::SheetPart;
using kneerail::elevation::RunView;

namespace {

constexpr std::size_t most_rows = 60;

bool is_tube(const SheetPart& part) {
  using kneerail::Role;
  switch (part.role) {
    case Role::fitting:
    case Role::weld:
    case Role::base_fixing:
    case Role::cut_edge:
      return false;
    default:
      return true;
  }
}

QRectF part_rect(const RunSheet& sheet, int part, const RunView& view) {
  const double half = kneerail::elevation::reach_mm * view.pixels_per_mm;
  const auto place = kneerail::elevation::part_place(sheet, part, view.denominator);
  return {place.along_mm * view.scale() - half, -place.up_mm * view.scale() - half, 2 * half,
          2 * half};
}

}  // namespace

void VisibleParts::show(std::shared_ptr<const RunSheet> sheet, const RunView& view,
                        const std::vector<int>& marked) {
  sheet_ = std::move(sheet);
  std::vector<Row> rows = rows_in(view, marked);
  if (rows == rows_) return;
  const bool other_count = rows.size() != rows_.size();
  if (!other_count) {
    rows_ = std::move(rows);
    emit dataChanged(index(0), index(count() - 1));
    return;
  }
  beginResetModel();
  rows_ = std::move(rows);
  endResetModel();
  emit countChanged();
}

std::vector<VisibleParts::Row> VisibleParts::rows_in(const RunView& view,
                                                     const std::vector<int>& marked) const {
  std::vector<int> parts;
  for (std::size_t i = 0; i < sheet_->parts.size(); ++i) {
    const auto along_mm = static_cast<double>(sheet_->parts[i].along_mm);
    if (along_mm < view.left_mm() || along_mm > view.right_mm()) continue;
    parts.push_back(static_cast<int>(i));
  }
  const auto part_at = [&](int i) -> const SheetPart& {
    return sheet_->parts[static_cast<std::size_t>(i)];
  };
  if (parts.size() > most_rows) std::erase_if(parts, [&](int i) { return is_tube(part_at(i)); });
  if (parts.size() > most_rows) {  // those in the middle
    const auto off = [&](int i) {
      return std::abs(static_cast<double>(part_at(i).along_mm) - view.centre_mm);
    };
    std::nth_element(parts.begin(), parts.begin() + most_rows, parts.end(),
                     [&](int a, int b) { return off(a) < off(b); });
    parts.resize(most_rows);
    std::sort(parts.begin(), parts.end());
  }
  std::vector<Row> rows;
  for (const int i : parts) {
    QString name = kneerail::spoken_part(*sheet_, i);
    if (std::binary_search(marked.begin(), marked.end(), i))
      name = tr("%1, chosen to be measured").arg(name);
    rows.push_back({i, part_rect(*sheet_, i, view), std::move(name)});
  }
  return rows;
}

int VisibleParts::rowCount(const QModelIndex& parent) const {
  return parent.isValid() ? 0 : count();
}

QVariant VisibleParts::data(const QModelIndex& index, int role) const {
  if (!checkIndex(index, CheckIndexOption::IndexIsValid)) return {};
  const Row& row = rows_[static_cast<std::size_t>(index.row())];
  switch (role) {
    case part_role:
      return row.part;
    case rect_role:
      return row.rect;
    case Qt::DisplayRole:
    case name_role:
      return row.name;
    default:
      return {};
  }
}

QHash<int, QByteArray> VisibleParts::roleNames() const {
  return {{part_role, "part"}, {rect_role, "rect"}, {name_role, "name"}};
}
