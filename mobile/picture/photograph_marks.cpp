#include "mobile/picture/photograph_marks.h"

#include <QStringList>
#include <algorithm>
#include <array>

namespace kneerail {

namespace {

constexpr std::array<const char*, 6> shapes{"", "circle", "arrow", "line", "outline", "number"};
constexpr int whole = 10'000;

}  // namespace

QString marks_text(const std::vector<Mark>& marks) {
  QStringList lines;
  for (const Mark& mark : marks) {
    QString line = QString::fromLatin1(shapes[static_cast<std::size_t>(mark.shape)]);
    for (const MarkPoint& point : mark.points)
      line += QStringLiteral(" %1 %2").arg(point.x).arg(point.y);
    lines << line;
  }
  return lines.join('\n');
}

std::optional<Mark> mark_of_text(const QString& line) {
  const QStringList words = line.split(' ', Qt::SkipEmptyParts);
  if (words.size() < 3 || words.size() % 2 == 0) return {};
  const auto shape = std::find(shapes.begin() + 1, shapes.end(), words.front().toStdString());
  if (shape == shapes.end()) return {};
  Mark mark;
  mark.shape = static_cast<MarkShape>(shape - shapes.begin());
  for (qsizetype i = 1; i < words.size(); i += 2)
    mark.points.push_back(
        {std::clamp(words[i].toInt(), 0, whole), std::clamp(words[i + 1].toInt(), 0, whole)});
  if (mark.points.size() > mark_points_max) mark.points.resize(mark_points_max);
  return mark;
}

}  // namespace kneerail
