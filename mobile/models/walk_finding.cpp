// The findings of the Walk room.

#include <QCoreApplication>

#include "mobile/models/finding_pen.h"
#include "mobile/models/walk_model.h"

using kneerail::Uuid;

void WalkModel::listen_to_finding() {
  connect(finding_.get(), &FindingPen::changed, this, &WalkModel::undoChanged);
  connect(finding_.get(), &FindingPen::changed, this, &WalkModel::messageChanged);
  connect(finding_.get(), &FindingPen::pictureLost, this, &WalkModel::say);
  connect(finding_.get(), &FindingPen::kept, this, [this](const Uuid& about, bool cannot_wait) {
    emit felt(cannot_wait ? QStringLiteral("cannotWait") : QStringLiteral("kept"));
    walk_on_from(about);
  });
}

/// Where the hand is still at what was found, it goes on to the next part; a post or a bay stays.
void WalkModel::walk_on_from(const Uuid& about) {
  if (pad_ != FindingPad || finding_->about() != about || finding_->begun()) return;
  if (part_chosen()) return nextPart();
  set_pad(plain_pad());
}

void WalkModel::end() {
  if (finding_->reads_picture()) {
    finding_->finish_pictures();
    store_.settle();
    QCoreApplication::sendPostedEvents(&store_, QEvent::MetaCall);
  }
  leave();
}

void WalkModel::leaveFinding() {
  if (pad_ == FindingPad) set_pad(plain_pad());
}
