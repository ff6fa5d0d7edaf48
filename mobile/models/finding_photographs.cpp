// The photographs of a finding.

#include <QLocale>
#include <QPointer>
#include <algorithm>
#include <utility>

#include "mobile/models/finding_pen.h"
#include "mobile/picture/photograph_marks.h"

using kneerail::Draft;
using kneerail::Photograph;
using kneerail::Result;
using kneerail::Uuid;

int FindingPen::photograph() const {
  return std::min(shown_, photographs() - 1);
}

QUrl FindingPen::photograph_source() const {
  if (photograph() < 0) return {};
  const Photo& photo = said_.photographs[static_cast<std::size_t>(photograph())];
  return QUrl::fromLocalFile(QString::fromStdString(pen_.object_place(photo.fields.sha256)));
}

QString FindingPen::marks() const {
  if (photograph() < 0) return {};
  return kneerail::marks_text(said_.photographs[static_cast<std::size_t>(photograph())].marks);
}

QString FindingPen::photograph_caption() const {
  if (photograph() < 0) return {};
  return tr("Photo %1 of %2").arg(photograph() + 1).arg(photographs());
}

QString FindingPen::photograph_words() const {
  if (photograph() < 0) return {};
  const Photograph& fields = said_.photographs[static_cast<std::size_t>(photograph())].fields;
  return tr("whole, %1")
      .arg(QLocale().formattedDataSize(fields.size_bytes, 1, QLocale::DataSizeSIFormat));
}

void FindingPen::showPhotograph(int place) {
  if (place < 0 || place >= photographs() || place == shown_) return;
  shown_ = place;
  emit changed();
}

void FindingPen::say_of_picture(const QString& words) {
  picture_trouble_ = words;
  emit changed();
}

void FindingPen::takePicture(const QUrl& file) {
  if (!writes()) return;
  say_of_picture({});
  const Wanted wanted{id_, about_->id, about_->words, pen_.hand()};
  intake_.take(file.toLocalFile(), [this, wanted](auto made) {
    if (made) return keep_picture(wanted, std::move(*made));
    picture_failed(wanted, QString::fromStdString(made.error().message));
    picture_done();
  });
}

bool FindingPen::is_here(const Wanted& wanted) const {
  return wanted.finding == id_ && wanted.hand == pen_.hand();
}

/// Said where the person is now.
void FindingPen::picture_failed(const Wanted& wanted, const QString& words) {
  if (open_ && is_here(wanted)) return say_of_picture(words);
  emit pictureLost(tr("Photograph of %1: %2").arg(wanted.words, words));
}

void FindingPen::picture_done() {
  if (!reads_picture()) kept_.clear();
  emit changed();
}

/// Its bytes first; only then is there a photograph that names them.
void FindingPen::keep_picture(const Wanted& wanted, kneerail::PreparedPicture made) {
  Photograph fields;
  fields.visit = wanted.hand.visit;
  fields.size_bytes = std::ssize(made.bytes);
  fields.media_type = made.media_type;
  fields.width_pixels = made.width_pixels;
  fields.height_pixels = made.height_pixels;
  fields.preview_bytes = std::ssize(made.preview);
  if (made.taken.isValid()) fields.taken = pen_.instant(made.taken);
  fields.flags = kneerail::location_removed;
  ++keeping_;
  const auto told = [self = QPointer<FindingPen>(this), wanted, fields,
                     before = made.megapixels_before](const auto& kept) {
    if (!self) return;
    --self->keeping_;
    if (kept) {
      Photograph whole = fields;
      whole.sha256 = kept->front();
      whole.preview_sha256 = kept->back();
      if (before > 0 && self->is_here(wanted))
        self->say_of_picture(
            tr("Of %1 megapixels it was made smaller. The file stays as it is.").arg(before));
      self->add_photograph(wanted, std::move(whole));
    } else {
      self->picture_failed(wanted,
                           tr("Not kept: %1 The picture stays in its folder. Take it again.")
                               .arg(QString::fromStdString(kept.error().message)));
    }
    self->picture_done();
  };
  pen_.keep_objects({std::move(made.bytes), std::move(made.preview)}, told);
  emit changed();
}

/// Where the walk has gone on, it is a photograph of what it was taken for all the same, by whom
/// and in the visit it was taken in.
void FindingPen::add_photograph(const Wanted& wanted, Photograph fields) {
  if (is_here(wanted)) {
    Said said = said_;
    const int place = said.photographs.empty() ? 1 : said.photographs.back().place + 1;
    said.photographs.push_back({pen_.mint(), place, std::move(fields), {}});
    shown_ = static_cast<int>(said.photographs.size()) - 1;
    return say(std::move(said), tr("photograph"));
  }
  const bool kept = std::find(kept_.begin(), kept_.end(), wanted.finding) != kept_.end();
  WalkPen::Act act;
  act.words = tr("photograph");
  act.component = wanted.about;
  act.entries.push_back(pen_.entry_by(wanted.hand, Photograph::kind,
                                      kept ? wanted.finding : wanted.about, to_body(fields)));
  pen_.write_by(wanted.hand, std::move(act));
}

void FindingPen::mark(const QString& text) {
  const auto mark = kneerail::mark_of_text(text);
  if (!writes() || !mark || photograph() < 0) return;
  Said said = said_;
  auto& marks = said.photographs[static_cast<std::size_t>(photograph())].marks;
  if (static_cast<int>(marks.size()) >= kneerail::marks_max) return;
  marks.push_back(*mark);
  const bool arrow = mark->shape == kneerail::MarkShape::arrow;
  say(std::move(said), arrow ? tr("arrow") : tr("ring"));
}

/// Before there is a finding it is one of the part itself.
Draft FindingPen::photograph_draft(const Said& said, const Photo& photo) const {
  Photograph fields = photo.fields;
  if (!photo.marks.empty()) fields.marks = to_value(photo.marks);
  Draft draft{pen_.site(), Photograph::kind, is_finding(said) ? id_ : about_->id, photo.place,
              {},          to_body(fields)};
  draft.body.set(kneerail::draft_key_id, photo.id);
  return draft;
}
